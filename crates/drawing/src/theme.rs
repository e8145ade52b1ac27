//! Roles of colour, and what each looks like by day and by night.
//!
//! Two hues mean two things everywhere: [`Role::Heading`] is where the aircraft is really
//! heading, [`Role::Compass`] is what the compass says. Everything else is one warm neutral
//! family by day and one slate family by night.

use std::borrow::Cow;

/// What a colour stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// The page that everything lies on.
    Paper,
    /// Words and strong lines on the page.
    Ink,
    /// Secondary words and scale marks on the page.
    FaintInk,
    /// Hairlines that part one thing from another; never the only carrier of a meaning.
    Rule,
    /// Where the aircraft is really heading.
    Heading,
    /// What the compass says.
    Compass,
    /// The side of the drum in full light.
    Card,
    /// The side of the drum in shade.
    CardShade,
    /// The drum from above.
    CardTop,
    /// The drum from below.
    CardUnder,
    /// Numerals and marks on the drum.
    CardInk,
    /// The liquid near its surface.
    Liquid,
    /// The liquid at the bottom of the bowl.
    LiquidDeep,
    /// The air above the liquid.
    Air,
    /// The surface of the liquid.
    Surface,
    /// Light on glass and rim.
    Glass,
    /// What lies in the shade of something.
    Shadow,
    /// The lubber line.
    Lubber,
    /// The quiet band on both sides of a line that crosses other things.
    Halo,
    /// What hides the compass when the presenter covers it.
    Cover,
}

impl Role {
    /// Every role once.
    pub const ALL: [Self; 20] = [
        Self::Paper,
        Self::Ink,
        Self::FaintInk,
        Self::Rule,
        Self::Heading,
        Self::Compass,
        Self::Card,
        Self::CardShade,
        Self::CardTop,
        Self::CardUnder,
        Self::CardInk,
        Self::Liquid,
        Self::LiquidDeep,
        Self::Air,
        Self::Surface,
        Self::Glass,
        Self::Shadow,
        Self::Lubber,
        Self::Halo,
        Self::Cover,
    ];
}

/// An opaque sRGB colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Colour {
    /// Red, green and blue, from 0 to 255.
    pub rgb: [u8; 3],
}

impl Colour {
    /// From the six figures of a web colour, as in `0xD55E00`.
    pub const fn from_hex(hex: u32) -> Self {
        let [_, r, g, b] = hex.to_be_bytes();
        Self { rgb: [r, g, b] }
    }

    /// As CSS and SVG write it, as in `#d55e00`.
    pub fn css(self) -> String {
        let [r, g, b] = self.rgb;
        format!("#{r:02x}{g:02x}{b:02x}")
    }
}

/// Day or night.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Light {
    /// Dark on warm off-white.
    Day,
    /// Light on deep slate.
    Night,
}

/// How roles look, and in which font words are set.
#[derive(Clone, Debug, PartialEq)]
pub struct Theme {
    /// Day or night.
    pub light: Light,
    /// The CSS `font-family` list.
    pub font: Cow<'static, str>,
    /// Whether colours stand further apart: for a screen that is seen from afar.
    pub strong: bool,
}

/// The open, highly legible family of the page, then what comes nearest on most systems.
pub const DEFAULT_FONT: &str =
    "'Atkinson Hyperlegible Next', 'Atkinson Hyperlegible', Verdana, 'DejaVu Sans', sans-serif";

impl Theme {
    /// By day, in the default font.
    pub const fn day() -> Self {
        Self {
            light: Light::Day,
            font: Cow::Borrowed(DEFAULT_FONT),
            strong: false,
        }
    }

    /// By night, in the default font.
    pub const fn night() -> Self {
        Self {
            light: Light::Night,
            font: Cow::Borrowed(DEFAULT_FONT),
            strong: false,
        }
    }

    /// The same with colours further apart.
    #[must_use]
    pub fn strong(self) -> Self {
        Self {
            strong: true,
            ..self
        }
    }

    /// The colour of a role.
    ///
    /// Heading and compass are blue and vermilion by day, sky blue and orange by night, of the
    /// set for all eyes by M. Okabe and K. Ito, *Color Universal Design* (2008).
    pub const fn colour(&self, role: Role) -> Colour {
        if self.strong
            && let Some((day, night)) = strong(role)
        {
            return self.lit(day, night);
        }
        let (day, night) = match role {
            Role::Paper => (0xFAF6EE, 0x1B2026),
            Role::Ink => (0x2B2925, 0xEFE9DC),
            Role::FaintInk => (0x6B655B, 0xA9A497),
            Role::Rule => (0xD3C9B8, 0x3D454D),
            Role::Heading => (0x0072B2, 0x56B4E9),
            Role::Compass => (0xD55E00, 0xE69F00),
            Role::Card => (0xFFFDF8, 0x3B434C),
            Role::CardShade => (0xB3A78F, 0x14181D),
            Role::CardTop => (0xEAE2D3, 0x49525C),
            Role::CardUnder => (0xB7AC97, 0x0F1215),
            Role::CardInk => (0x1F1D1A, 0xFBF6EA),
            Role::Liquid => (0xF1EADD, 0x262D34),
            Role::LiquidDeep => (0xDFD5C3, 0x171B20),
            Role::Air => (0xF7F2E8, 0x2F373F),
            Role::Surface => (0xB5A88F, 0x65707B),
            Role::Glass => (0xFFFFFF, 0xC8D0D8),
            Role::Shadow => (0x3A2F1E, 0x000000),
            Role::Lubber => (0x2B2925, 0xEFE9DC),
            Role::Halo => (0xFFFDF8, 0x14181D),
            Role::Cover => (0xEFE8DA, 0x262D34),
        };
        self.lit(day, night)
    }

    const fn lit(&self, day: u32, night: u32) -> Colour {
        match self.light {
            Light::Day => Colour::from_hex(day),
            Light::Night => Colour::from_hex(night),
        }
    }
}

/// By day and by night, the roles that strong contrast changes: black and white, darker lines, and
/// by day the two hues darker.
const fn strong(role: Role) -> Option<(u32, u32)> {
    Some(match role {
        Role::Paper => (0xFFFFFF, 0x000000),
        Role::Ink | Role::Lubber | Role::CardInk => (0x000000, 0xFFFFFF),
        Role::FaintInk => (0x33302B, 0xDDD9D0),
        Role::Rule => (0x6B655B, 0x8A9199),
        Role::Heading => (0x00578A, 0x6CC4F5),
        Role::Compass => (0xA84300, 0xFFB000),
        Role::Halo => (0xFFFFFF, 0x000000),
        _ => return None,
    })
}

impl Default for Theme {
    fn default() -> Self {
        Self::day()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::maths;

    /// Relative luminance of WCAG 2.2, from 0 (black) to 1 (white).
    fn luminance(colour: Colour) -> f64 {
        let [r, g, b] = colour.rgb.map(|part| {
            let part = f64::from(part) / 255.0;
            if part <= 0.04045 {
                part / 12.92
            } else {
                maths::pow((part + 0.055) / 1.055, 2.4)
            }
        });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    /// Contrast ratio of WCAG 2.2, from 1 to 21.
    fn contrast(a: Colour, b: Colour) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    fn themes() -> [Theme; 4] {
        let [day, night] = [Theme::day(), Theme::night()];
        [day.clone(), night.clone(), day.strong(), night.strong()]
    }

    #[test]
    fn strong_contrast_is_enhanced_for_all_that_is_read() {
        // WCAG 2.2, 1.4.6: text 7:1, large text 4.5:1.
        for theme in themes().into_iter().filter(|theme| theme.strong) {
            for (what, least) in [
                (Role::Ink, 7.0),
                (Role::FaintInk, 7.0),
                (Role::Heading, 4.5),
                (Role::Compass, 4.5),
            ] {
                let ratio = contrast(theme.colour(what), theme.colour(Role::Paper));
                assert!(ratio >= least, "{what:?} by {:?}: {ratio:.2}", theme.light);
            }
        }
    }

    #[test]
    fn contrast_is_that_of_wcag() {
        // WCAG 2.2, definition of contrast ratio: white on black is 21:1.
        let white = Colour::from_hex(0xFFFFFF);
        assert!((contrast(white, Colour::from_hex(0)) - 21.0).abs() < 1e-9);
        // #767676 is widely published as the lightest grey that passes 4.5:1 on white.
        assert!((contrast(white, Colour::from_hex(0x767676)) - 4.54).abs() < 0.005);
    }

    #[test]
    fn what_is_read_stands_out_from_what_it_stands_on() {
        // WCAG 2.2: text 4.5:1 (1.4.3); large text and graphical parts 3:1 (1.4.3, 1.4.11).
        let text = 4.5;
        let part = 3.0;
        let pairs = [
            (Role::Ink, Role::Paper, text),
            (Role::Ink, Role::Air, text),
            (Role::Ink, Role::Cover, text),
            (Role::FaintInk, Role::Paper, text),
            (Role::FaintInk, Role::Cover, text),
            (Role::Heading, Role::Paper, text),
            (Role::Compass, Role::Paper, part),
            (Role::Compass, Role::Halo, part),
            (Role::Heading, Role::Card, part),
            (Role::Compass, Role::Card, part),
            (Role::Ink, Role::Card, part),
            (Role::FaintInk, Role::Card, part),
            (Role::CardInk, Role::Card, text),
            (Role::CardInk, Role::CardShade, text),
            (Role::Lubber, Role::Halo, part),
            (Role::Lubber, Role::Card, part),
            (Role::Lubber, Role::CardShade, part),
            (Role::Lubber, Role::Liquid, part),
            (Role::Lubber, Role::LiquidDeep, part),
            (Role::Lubber, Role::Air, part),
            (Role::Lubber, Role::Cover, part),
        ];
        for theme in themes() {
            for (what, ground, least) in pairs {
                let ratio = contrast(theme.colour(what), theme.colour(ground));
                assert!(
                    ratio >= least,
                    "{what:?} on {ground:?} by {:?}, strong {}: {ratio:.2}",
                    theme.light,
                    theme.strong
                );
            }
        }
    }

    #[test]
    fn only_heading_and_compass_have_a_hue_of_their_own() {
        for theme in themes() {
            for role in Role::ALL {
                let [r, g, b] = theme.colour(role).rgb;
                let spread = r.max(g).max(b) - r.min(g).min(b);
                let own = matches!(role, Role::Heading | Role::Compass);
                assert_eq!(spread > 100, own, "{role:?} by {:?}", theme.light);
                assert!(own || spread <= 40, "{role:?} by {:?}", theme.light);
            }
        }
    }
}
