//! The stage: paints `drawing`'s shapes on a canvas.

use drawing::shape::{Anchor, Group, Paint, Pen, Shape, Text, Tone};
use drawing::theme::{Role, Theme};
use kurbo::{Affine, BezPath, PathEl, Rect, Size};
use leptos::wasm_bindgen::JsCast;
use web_sys::js_sys::Array;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// The most device pixels for a CSS pixel that are painted: more is not seen, and costs time.
const FINEST: f64 = 3.0;

/// Paints shapes on a canvas, as large as its box and as fine as the screen.
pub(crate) struct Stage<'a> {
    context: CanvasRenderingContext2d,
    theme: &'a Theme,
}

impl<'a> Stage<'a> {
    /// Clears the canvas and paints the shapes, drawn for `size` CSS pixels. Does nothing where
    /// the browser gives no canvas.
    pub(crate) fn paint(
        canvas: &HtmlCanvasElement,
        size: Size,
        theme: &'a Theme,
        shapes: &[Shape],
    ) {
        let fine = web_sys::window()
            .map_or(1.0, |window| window.device_pixel_ratio())
            .clamp(1.0, FINEST);
        Self::paint_as_fine(canvas, size, fine, theme, shapes, None);
    }

    /// Paints the shapes on a canvas of no place on the page, `fine` pixels for each unit, on a
    /// ground of paper.
    pub(crate) fn paint_apart(
        canvas: &HtmlCanvasElement,
        size: Size,
        fine: f64,
        theme: &'a Theme,
        shapes: &[Shape],
    ) {
        Self::paint_as_fine(canvas, size, fine, theme, shapes, Some(Role::Paper));
    }

    fn paint_as_fine(
        canvas: &HtmlCanvasElement,
        size: Size,
        fine: f64,
        theme: &'a Theme,
        shapes: &[Shape],
        ground: Option<Role>,
    ) {
        let pixels = [size.width, size.height].map(|length| (length * fine).round() as u32);
        if pixels != [canvas.width(), canvas.height()] {
            canvas.set_width(pixels[0]);
            canvas.set_height(pixels[1]);
        }
        let Some(context) = canvas
            .get_context("2d")
            .ok()
            .flatten()
            .and_then(|context| context.dyn_into::<CanvasRenderingContext2d>().ok())
        else {
            return;
        };
        let stage = Self { context, theme };
        stage.set_transform(Affine::IDENTITY);
        stage.context.clear_rect(
            0.0,
            0.0,
            f64::from(canvas.width()),
            f64::from(canvas.height()),
        );
        if let Some(role) = ground {
            use kurbo::Shape as _;
            let whole = Rect::from_origin_size((0.0, 0.0), size * fine);
            stage.fill(&whole.to_path(0.1), &Paint::Flat(role.solid()), 1.0);
        }
        stage.context.set_line_cap("round");
        stage.context.set_line_join("round");
        stage.shapes(shapes, Affine::scale(fine), 1.0);
    }

    fn shapes(&self, shapes: &[Shape], transform: Affine, opacity: f64) {
        self.set_transform(transform);
        for shape in shapes {
            match shape {
                Shape::Fill { path, paint } => self.fill(path, paint, opacity),
                Shape::Stroke { path, pen } => self.stroke(path, pen, opacity),
                Shape::Text(text) => {
                    self.text(text, transform, opacity);
                    self.set_transform(transform);
                }
                Shape::Group(group) => {
                    self.group(group, transform, opacity);
                    self.set_transform(transform);
                }
            }
        }
    }

    /// Opacity is handed down to each shape of a group, so shapes of a faded group that overlap
    /// show through one another.
    fn group(&self, group: &Group, transform: Affine, opacity: f64) {
        let inner = transform * group.transform;
        self.context.save();
        if let Some(clip) = &group.clip {
            self.set_transform(inner);
            self.trace(clip);
            self.context.clip();
        }
        self.shapes(&group.shapes, inner, opacity * group.opacity);
        self.context.restore();
    }

    fn fill(&self, path: &BezPath, paint: &Paint, opacity: f64) {
        match paint {
            Paint::Flat(tone) => {
                self.context.set_global_alpha(tone.alpha * opacity);
                let colour = self.theme.colour(tone.role).css();
                self.context.set_fill_style_str(&colour);
            }
            Paint::Linear { from, to, stops } => {
                let gradient = self
                    .context
                    .create_linear_gradient(from.x, from.y, to.x, to.y);
                for stop in stops {
                    // Only an offset outside 0 to 1 is refused, and that stop then left out.
                    let _ = gradient
                        .add_color_stop(stop.offset.clamp(0.0, 1.0) as f32, &self.css(stop.tone));
                }
                self.context.set_global_alpha(opacity);
                self.context.set_fill_style_canvas_gradient(&gradient);
            }
        }
        self.trace(path);
        self.context.fill();
    }

    fn stroke(&self, path: &BezPath, pen: &Pen, opacity: f64) {
        let context = &self.context;
        context.set_global_alpha(pen.tone.alpha * opacity);
        context.set_stroke_style_str(&self.theme.colour(pen.tone.role).css());
        context.set_line_width(pen.width);
        // What is no list of lengths leaves the line solid.
        if let Some([dash, gap]) = pen.dash {
            let _ = context.set_line_dash(&Array::of2(&dash.into(), &gap.into()));
        }
        self.trace(path);
        context.stroke();
        if pen.dash.is_some() {
            let _ = context.set_line_dash(&Array::new());
        }
    }

    fn text(&self, text: &Text, transform: Affine, opacity: f64) {
        let context = &self.context;
        self.set_transform(transform * text.place);
        context.set_global_alpha(text.tone.alpha * opacity);
        context.set_fill_style_str(&self.theme.colour(text.tone.role).css());
        context.set_text_align(match text.anchor {
            Anchor::Start => "left",
            Anchor::Middle => "center",
            Anchor::End => "right",
        });
        context.set_font(&format!(
            "{} {:.2}px {}",
            text.weight, text.size, self.theme.font
        ));
        // Text is refused only by a canvas that is gone.
        let _ = context.fill_text(&text.content, 0.0, 0.0);
    }

    fn trace(&self, path: &BezPath) {
        let context = &self.context;
        context.begin_path();
        for element in path {
            match element {
                PathEl::MoveTo(p) => context.move_to(p.x, p.y),
                PathEl::LineTo(p) => context.line_to(p.x, p.y),
                PathEl::QuadTo(a, p) => context.quadratic_curve_to(a.x, a.y, p.x, p.y),
                PathEl::CurveTo(a, b, p) => {
                    context.bezier_curve_to(a.x, a.y, b.x, b.y, p.x, p.y);
                }
                PathEl::ClosePath => context.close_path(),
            }
        }
    }

    fn set_transform(&self, transform: Affine) {
        let [a, b, c, d, x, y] = transform.as_coeffs();
        // Refused only where a coefficient is not finite; the last transform then stays.
        let _ = self.context.set_transform(a, b, c, d, x, y);
    }

    fn css(&self, tone: Tone) -> String {
        let [r, g, b] = self.theme.colour(tone.role).rgb;
        format!("rgba({r},{g},{b},{})", tone.alpha)
    }
}

#[cfg(test)]
mod tests {
    use drawing::theme::{Role, Theme};

    #[test]
    fn the_style_sheet_has_the_drawings_colours() {
        let style = include_str!("../../static/style.css");
        for (name, role) in [
            ("paper", Role::Paper),
            ("ink", Role::Ink),
            ("faint-ink", Role::FaintInk),
            ("rule", Role::Rule),
            ("heading", Role::Heading),
            ("compass", Role::Compass),
            ("cover", Role::Cover),
        ] {
            let [day, night] = [Theme::day(), Theme::night()].map(|theme| theme.colour(role).css());
            let line = format!("--{name}: light-dark({day}, {night});");
            assert!(style.contains(&line), "{line}");
        }
    }

    #[test]
    fn the_style_sheet_has_the_presenters_colours() {
        let style = include_str!("../../static/style/presenter.css");
        let (_, presenting) = style.split_once(":root[data-presenting] {").unwrap();
        let (presenting, _) = presenting.split_once('}').unwrap();
        for (name, role) in [
            ("paper", Role::Paper),
            ("ink", Role::Ink),
            ("faint-ink", Role::FaintInk),
            ("rule", Role::Rule),
            ("heading", Role::Heading),
            ("compass", Role::Compass),
        ] {
            let [day, night] =
                [Theme::day(), Theme::night()].map(|theme| theme.strong().colour(role).css());
            let line = format!("--{name}: light-dark({day}, {night});");
            assert!(presenting.contains(&line), "{line}");
        }
    }
}
