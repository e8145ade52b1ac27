//! Shapes to a standalone SVG: for stills, hand-outs and snapshots.

use crate::shape::{Anchor, Group, Paint, Pen, Shape, Stop, Text, Tone};
use crate::theme::{Role, Theme};
use kurbo::{Affine, BezPath, PathEl, Point, Size};
use std::fmt::Write;

/// A picture and what is said of it in words.
#[derive(Clone, Copy, Debug)]
pub struct Picture<'a> {
    /// The size that the shapes were drawn for.
    pub size: Size,
    /// What it shows.
    pub shapes: &'a [Shape],
    /// Its colours and font.
    pub theme: &'a Theme,
    /// Begins every identifier in the SVG, so that several can stand in one page: letters,
    /// figures and hyphens, a letter first.
    pub id: &'a str,
    /// What the picture is, in a few words.
    pub title: &'a str,
    /// What it shows at this moment, for those who do not see it.
    pub description: &'a str,
    /// Whether the page's own colour is painted behind.
    pub ground: bool,
}

impl Picture<'_> {
    /// The SVG document. Lengths are rounded to a hundredth; there is no reference to anything
    /// outside the document.
    pub fn to_svg(&self) -> String {
        let mut writer = Writer {
            theme: self.theme,
            id: self.id,
            next: 0,
            out: String::with_capacity(16_384),
        };
        let (width, height) = (length(self.size.width), length(self.size.height));
        let id = escape(self.id);
        writer.put(format_args!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\" \
             aria-labelledby=\"{id}-title {id}-desc\" font-family=\"{}\" \
             stroke-linecap=\"round\" stroke-linejoin=\"round\">\n\
             <title id=\"{id}-title\">{}</title>\n<desc id=\"{id}-desc\">{}</desc>\n",
            escape(&self.theme.font),
            escape(self.title),
            escape(self.description),
        ));
        if self.ground {
            writer.put(format_args!(
                "<rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>\n",
                self.theme.colour(Role::Paper).css()
            ));
        }
        writer.shapes(self.shapes);
        writer.out.push_str("</svg>\n");
        writer.out
    }
}

struct Writer<'a> {
    theme: &'a Theme,
    id: &'a str,
    next: usize,
    out: String,
}

impl Writer<'_> {
    fn put(&mut self, what: std::fmt::Arguments<'_>) {
        // Writing to a string cannot fail.
        let _ = self.out.write_fmt(what);
    }

    fn fresh_id(&mut self) -> String {
        self.next += 1;
        format!("{}-{}", escape(self.id), self.next)
    }

    fn shapes(&mut self, shapes: &[Shape]) {
        for shape in shapes {
            match shape {
                Shape::Fill { path, paint } => self.fill(path, paint),
                Shape::Stroke { path, pen } => self.stroke(path, pen),
                Shape::Text(text) => self.text(text),
                Shape::Group(group) => self.group(group),
            }
        }
    }

    fn fill(&mut self, path: &BezPath, paint: &Paint) {
        match paint {
            Paint::Flat(tone) => {
                let tone = self.tone("fill", *tone);
                self.put(format_args!("<path d=\"{}\"{tone}/>\n", data(path)));
            }
            Paint::Linear { from, to, stops } => {
                let id = self.fresh_id();
                self.put(format_args!(
                    "<linearGradient id=\"{id}\" gradientUnits=\"userSpaceOnUse\" \
                     x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\">",
                    length(from.x),
                    length(from.y),
                    length(to.x),
                    length(to.y)
                ));
                for Stop { offset, tone } in stops {
                    let tone = self.tone("stop", *tone);
                    self.put(format_args!("<stop offset=\"{}\"{tone}/>", length(*offset)));
                }
                self.put(format_args!(
                    "</linearGradient>\n<path d=\"{}\" fill=\"url(#{id})\"/>\n",
                    data(path)
                ));
            }
        }
    }

    fn stroke(&mut self, path: &BezPath, pen: &Pen) {
        let tone = self.tone("stroke", pen.tone);
        let dash = match pen.dash {
            None => String::new(),
            Some([dash, gap]) => {
                format!(" stroke-dasharray=\"{} {}\"", length(dash), length(gap))
            }
        };
        self.put(format_args!(
            "<path d=\"{}\" fill=\"none\"{tone} stroke-width=\"{}\"{dash}/>\n",
            data(path),
            length(pen.width)
        ));
    }

    fn text(&mut self, text: &Text) {
        let anchor = match text.anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let tone = self.tone("fill", text.tone);
        self.put(format_args!(
            "<text transform=\"{}\" text-anchor=\"{anchor}\" font-size=\"{}\" \
             font-weight=\"{}\"{tone}>{}</text>\n",
            matrix(text.place),
            length(text.size),
            text.weight,
            escape(&text.content)
        ));
    }

    fn group(&mut self, group: &Group) {
        let mut attributes = String::new();
        if group.transform != Affine::IDENTITY {
            let _ = write!(attributes, " transform=\"{}\"", matrix(group.transform));
        }
        if group.opacity < 1.0 {
            let _ = write!(attributes, " opacity=\"{}\"", length(group.opacity));
        }
        if let Some(clip) = &group.clip {
            let id = self.fresh_id();
            self.put(format_args!(
                "<clipPath id=\"{id}\"><path d=\"{}\"/></clipPath>\n",
                data(clip)
            ));
            let _ = write!(attributes, " clip-path=\"url(#{id})\"");
        }
        self.put(format_args!("<g{attributes}>\n"));
        self.shapes(&group.shapes);
        self.out.push_str("</g>\n");
    }

    fn tone(&self, attribute: &str, tone: Tone) -> String {
        let colour = self.theme.colour(tone.role).css();
        let name = if attribute == "stop" {
            "stop-color"
        } else {
            attribute
        };
        if tone.alpha < 1.0 {
            format!(
                " {name}=\"{colour}\" {attribute}-opacity=\"{}\"",
                length(tone.alpha)
            )
        } else {
            format!(" {name}=\"{colour}\"")
        }
    }
}

/// A number rounded to a hundredth, without a sign on zero.
fn length(value: f64) -> f64 {
    rounded(value, 100.0)
}

fn rounded(value: f64, scale: f64) -> f64 {
    // Adding zero turns −0 into 0.
    (value * scale).round() / scale + 0.0
}

fn matrix(affine: Affine) -> String {
    let [a, b, c, d, x, y] = affine.as_coeffs();
    if [a, b, c, d] == [1.0, 0.0, 0.0, 1.0] {
        return format!("translate({} {})", length(x), length(y));
    }
    let turn = [a, b, c, d].map(|part| rounded(part, 1e5));
    format!(
        "matrix({} {} {} {} {} {})",
        turn[0],
        turn[1],
        turn[2],
        turn[3],
        length(x),
        length(y)
    )
}

fn data(path: &BezPath) -> String {
    let round = |p: Point| Point::new(length(p.x), length(p.y));
    path.iter()
        .map(|element| match element {
            PathEl::MoveTo(p) => PathEl::MoveTo(round(p)),
            PathEl::LineTo(p) => PathEl::LineTo(round(p)),
            PathEl::QuadTo(a, p) => PathEl::QuadTo(round(a), round(p)),
            PathEl::CurveTo(a, b, p) => PathEl::CurveTo(round(a), round(b), round(p)),
            PathEl::ClosePath => PathEl::ClosePath,
        })
        .collect::<BezPath>()
        .to_svg()
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // XML has no place for other control characters.
            c if c.is_control() && !matches!(c, '\t' | '\n' | '\r') => {}
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_cannot_break_out_of_the_document() {
        let theme = Theme::day();
        let svg = Picture {
            size: Size::new(10.0, 10.0),
            shapes: &[],
            theme: &theme,
            id: "a\"b",
            title: "<script>",
            description: "R & D \u{7}",
            ground: false,
        }
        .to_svg();
        assert!(svg.contains("&lt;script&gt;") && !svg.contains("<script"));
        assert!(svg.contains("R &amp; D <"));
        assert!(svg.contains("id=\"a&quot;b-title\""));
    }

    #[test]
    fn numbers_are_short_and_zero_has_no_sign() {
        assert_eq!(length(1.0 / 3.0), 0.33);
        assert!(length(-0.001).is_sign_positive());
        assert_eq!(matrix(Affine::translate((1.0, -0.0001))), "translate(1 0)");
    }
}
