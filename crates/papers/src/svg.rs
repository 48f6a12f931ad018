//! The few pieces of SVG that the papers are made of. One user unit is one millimetre.

use std::fmt::Write;

/// Sans-serif letters that carry Vietnamese; [`crate::fit`] reckons with the widest of them.
const FONTS: &str = "'Noto Sans','DejaVu Sans','Liberation Sans',Arial,Helvetica,sans-serif";

/// A rectangle on the page in millimetres from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Place {
    pub(crate) x: f64,
    pub(crate) y: f64,
    pub(crate) width: f64,
    pub(crate) height: f64,
}

impl Place {
    /// Whether `inner` lies within this place, to a thousandth of a millimetre.
    pub(crate) fn holds(&self, inner: &Self) -> bool {
        const LEAST: f64 = 0.001;
        inner.x >= self.x - LEAST
            && inner.y >= self.y - LEAST
            && inner.x + inner.width <= self.x + self.width + LEAST
            && inner.y + inner.height <= self.y + self.height + LEAST
    }

    /// Whether the two share more than an edge.
    pub(crate) fn meets(&self, other: &Self) -> bool {
        self.x < other.x + other.width
            && other.x < self.x + self.width
            && self.y < other.y + other.height
            && other.y < self.y + self.height
    }
}

/// How heavy the letters are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Weight {
    Regular,
    Bold,
}

/// Millimetres as SVG writes them, to a ten-thousandth (a dot at 600 dpi is 0.0423 mm).
pub(crate) fn mm(value: f64) -> String {
    let text = format!("{value:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The text with the characters that mean something in XML written out.
pub(crate) fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            _ => out.push(c),
        }
    }
    out
}

/// A page that is being drawn.
pub(crate) struct Page(String);

impl Page {
    /// An empty page of this size.
    pub(crate) fn new(width: f64, height: f64) -> Self {
        let (w, h) = (mm(width), mm(height));
        Self(format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" font-family=\"{FONTS}\">"
        ))
    }

    /// An empty drawing that is as wide as what holds it. Ink on white until a style says otherwise:
    /// `color` of the drawing for the ink, `fill` of its class `ground` for what lies below. `title`
    /// and `desc` are for who cannot see it.
    pub(crate) fn scaling(
        (width, height): (f64, f64),
        id: &str,
        (title, desc): (&str, &str),
    ) -> Self {
        let (w, h) = (mm(width), mm(height));
        let (title, desc) = (escape(title), escape(desc));
        Self(format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" width=\"100%\" viewBox=\"0 0 {w} {h}\" color=\"#16242b\" font-family=\"{FONTS}\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\"><title id=\"{id}-title\">{title}</title><desc id=\"{id}-desc\">{desc}</desc>"
        ))
    }

    /// One line of text whose letters stand on `y`.
    pub(crate) fn text(&mut self, (x, y): (f64, f64), size: f64, weight: Weight, text: &str) {
        let bold = match weight {
            Weight::Regular => "",
            Weight::Bold => " font-weight=\"700\"",
        };
        self.push(format_args!(
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{bold}>{}</text>",
            mm(x),
            mm(y),
            mm(size),
            escape(text)
        ));
    }

    /// The same in the ink of the drawing, whatever a style makes of it.
    pub(crate) fn ink(&mut self, (x, y): (f64, f64), size: f64, weight: Weight, text: &str) {
        self.push(format_args!("<g fill=\"currentColor\">"));
        self.text((x, y), size, weight, text);
        self.push(format_args!("</g>"));
    }

    /// A level line of this length, a quarter of a millimetre thick.
    pub(crate) fn rule(&mut self, x: f64, y: f64, length: f64) {
        self.push(format_args!(
            "<path d=\"M{} {}h{}\" stroke=\"#000\" stroke-width=\"0.25\"/>",
            mm(x),
            mm(y),
            mm(length)
        ));
    }

    /// A filled shape. Its edges are kept crisp, so that no dot of a code turns grey.
    pub(crate) fn shape(&mut self, (x, y): (f64, f64), path: &str) {
        self.push(format_args!(
            "<path transform=\"translate({} {})\" shape-rendering=\"crispEdges\" d=\"{path}\"/>",
            mm(x),
            mm(y)
        ));
    }

    /// The finished page.
    pub(crate) fn done(mut self) -> String {
        self.0.push_str("</svg>");
        self.0
    }

    /// Adds a piece that is already SVG.
    pub(crate) fn push(&mut self, piece: std::fmt::Arguments<'_>) {
        // Writing to a string never fails.
        if self.0.write_fmt(piece).is_err() {
            debug_assert!(false, "BUG: a string refused text");
        }
    }
}
