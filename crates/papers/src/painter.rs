//! Shapes of a picture on a page, told apart by hatch. Everything is drawn in the ink of the page on
//! its ground, so it is the same in a dark room, on the wall and out of a black-and-white printer.

use crate::refuse::Unprintable;
use crate::svg::{Page, Place, mm};
use load::geometry::{Outline, PER_MM, Point, Rect};
use load::picture::{Distance, Part, Picture, Role};
use std::fmt::Write;

/// Where a picture lies on a page and how large.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Painter<'a> {
    /// Begins the names of its hatches; no two drawings of a document share it.
    pub(crate) id: &'a str,
    /// Upper left corner of the frame on the page, mm.
    pub(crate) at: (f64, f64),
    /// Millimetres on the page for one in the picture.
    pub(crate) scale: f64,
    /// What lines, hatches and letters are measured in, mm on the page.
    pub(crate) unit: f64,
    /// The frame of the picture.
    pub(crate) frame: Rect,
    /// What is kept free left of the frame and below it for the distances along those edges, mm on
    /// the page.
    pub(crate) around: (f64, f64),
}

/// Does the distance run along the left or along the near edge of the frame, where a line would not
/// be seen?
pub(crate) fn on_edge(frame: Rect, distance: &Distance) -> (bool, bool) {
    let Distance { from, to } = distance;
    let left = from.x == frame.x && to.x == frame.x && from.y != to.y;
    let near = from.y == frame.y && to.y == frame.y && from.x != to.x;
    (left, near)
}

/// A hatch: parallel lines, turned, so far apart and so thick (in units), and whether other lines
/// cross them.
struct Hatch {
    role: Role,
    name: &'static str,
    degrees: i32,
    pitch: f64,
    thick: f64,
    crossed: bool,
}

/// Paper is finely ruled, film nearly plain and ruled the other way, what lies over is crossed, the
/// strip of the fold is striped. Pitch and thickness are an assumption, chosen by looking at a
/// print at 1 : 2 and a screen 320 pixels wide; that they differ in dots is a test.
const HATCHES: [Hatch; 4] = [
    Hatch { role: Role::Paper, name: "paper", degrees: 45, pitch: 1.5, thick: 0.2, crossed: false },
    Hatch { role: Role::Film, name: "film", degrees: -45, pitch: 8.0, thick: 0.2, crossed: false },
    Hatch { role: Role::Over, name: "over", degrees: 45, pitch: 1.7, thick: 0.28, crossed: true },
    Hatch { role: Role::Fold, name: "fold", degrees: 0, pitch: 2.0, thick: 0.45, crossed: false },
];

/// Writes the hatches of a page once; shapes call them by the page's `id`.
pub(crate) fn hatches(page: &mut Page, id: &str, unit: f64) {
    page.push(format_args!("<defs>"));
    for hatch in &HATCHES {
        let side = hatch.pitch * unit;
        let (half, side) = (mm(side / 2.0), mm(side));
        let across = if hatch.crossed { format!("M0 {half}h{side}") } else { String::new() };
        page.push(format_args!(
            "<pattern id=\"{id}-{}\" patternUnits=\"userSpaceOnUse\" width=\"{side}\" height=\"{side}\" patternTransform=\"rotate({})\"><path d=\"M{half} 0v{side}{across}\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"{}\"/></pattern>",
            hatch.name,
            hatch.degrees,
            mm(hatch.thick * unit)
        ));
    }
    page.push(format_args!("</defs>"));
}

/// Lets a name through that may begin the names of hatches.
pub(crate) fn name(id: &str) -> Result<&str, Unprintable> {
    let usual = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let begins = id.starts_with(|c: char| c.is_ascii_lowercase());
    if begins && id.len() <= 64 && id.chars().all(usual) {
        Ok(id)
    } else {
        Err(Unprintable::Name { name: id.chars().take(80).collect() })
    }
}

/// Lets a picture through that has a size and nothing outside its frame.
pub(crate) fn framed(picture: &Picture) -> Result<(), Unprintable> {
    let frame = picture.frame;
    let ends = picture.distances.iter().flat_map(|distance| [distance.from, distance.to]);
    let inside = picture.parts.iter().all(|part| frame.holds(&part.outline.bounds()))
        && ends.into_iter().all(|p| frame.holds(&Rect { x: p.x, y: p.y, width: 0, height: 0 }));
    if frame.width > 0 && frame.height > 0 && inside { Ok(()) } else { Err(Unprintable::Frame) }
}

impl Painter<'_> {
    /// A point of the picture on the page. The door is below: what is farther away is higher up.
    pub(crate) fn point(&self, p: Point) -> (f64, f64) {
        let length = |tenths: i32| f64::from(tenths) / f64::from(PER_MM) * self.scale;
        (self.at.0 + length(p.x - self.frame.x), self.at.1 + length(self.frame.far() - p.y))
    }

    /// The ends of a distance on the page; along an edge they stand off, where there is room.
    pub(crate) fn ends(&self, distance: &Distance) -> ((f64, f64), (f64, f64)) {
        let (left, near) = on_edge(self.frame, distance);
        let aside = if left { -self.around.0 / 2.0 } else { 0.0 };
        let down = if near { self.around.1 / 2.0 } else { 0.0 };
        let (from, to) = (self.point(distance.from), self.point(distance.to));
        ((from.0 + aside, from.1 + down), (to.0 + aside, to.1 + down))
    }

    /// The frame on the page with what is kept free beside it.
    pub(crate) fn whole(&self) -> Place {
        let Place { x, y, width, height } = self.place(self.frame);
        let (left, below) = self.around;
        Place { x: x - left, y, width: width + left, height: height + below }
    }

    /// A rectangle of the picture on the page.
    pub(crate) fn place(&self, rect: Rect) -> Place {
        let (x, y) = self.point(Point { x: rect.x, y: rect.far() });
        let (right, low) = self.point(Point { x: rect.right(), y: rect.y });
        Place { x, y, width: right - x, height: low - y }
    }

    /// All shapes in their order, then the lines of the distances.
    pub(crate) fn draw(&self, page: &mut Page, picture: &Picture) {
        for Part { role, outline, .. } in &picture.parts {
            self.shape(page, *role, &self.path(outline));
        }
        for distance in &picture.distances {
            let (from, to) = self.ends(distance);
            self.line(page, from, to);
        }
    }

    /// A small rectangle that looks as a shape of this role does, for a legend.
    pub(crate) fn sample(&self, page: &mut Page, role: Role, place: Place) {
        // Hatches hang on the page, not on the shape: moved so that a line of the widest one runs
        // through the middle of the sample.
        let shift = 4.0 * self.unit;
        page.push(format_args!(
            "<g transform=\"translate({} {})\">",
            mm(place.x - shift),
            mm(place.y)
        ));
        let (w, h) = (mm(place.width), mm(place.height));
        self.shape(page, role, &format!("M{} 0h{w}v{h}h-{w}z", mm(shift)));
        page.push(format_args!("</g>"));
    }

    fn path(&self, outline: &Outline) -> String {
        let mut path = String::new();
        for (number, corner) in outline.corners().iter().enumerate() {
            let (x, y) = self.point(*corner);
            let step = if number == 0 { 'M' } else { 'L' };
            // Writing to a string never fails.
            let written = write!(path, "{step}{} {}", mm(x), mm(y));
            debug_assert!(written.is_ok(), "BUG: a string refused text");
        }
        path.push('z');
        path
    }

    fn shape(&self, page: &mut Page, role: Role, path: &str) {
        let unit = |share: f64| mm(share * self.unit);
        let hatch = HATCHES.iter().find(|hatch| hatch.role == role);
        let fill = match (role, hatch) {
            (_, Some(hatch)) => format!("fill=\"url(#{}-{})\"", self.id, hatch.name),
            (Role::Piece, _) => "fill=\"currentColor\" fill-opacity=\"0.2\"".to_owned(),
            _ => "fill=\"none\"".to_owned(),
        };
        let line = match role {
            Role::Tray => unit(0.55),
            Role::Free => unit(0.2),
            Role::Paper | Role::Film => unit(0.35),
            Role::Piece => unit(0.25),
            Role::Over | Role::Face | Role::Fold | Role::Place => unit(0.15),
        };
        let dashed = match role {
            Role::Free => format!(" stroke-dasharray=\"{} {}\"", unit(1.4), unit(0.9)),
            _ => String::new(),
        };
        // What lies over something else hides it.
        if hatch.is_some() || matches!(role, Role::Tray | Role::Piece) {
            page.push(format_args!("<path class=\"ground\" fill=\"#fff\" d=\"{path}\"/>"));
        }
        page.push(format_args!(
            "<path {fill} stroke=\"currentColor\" stroke-linejoin=\"round\" stroke-width=\"{line}\"{dashed} d=\"{path}\"/>"
        ));
    }

    /// A thin line with a dot at each end.
    fn line(&self, page: &mut Page, (ax, ay): (f64, f64), (bx, by): (f64, f64)) {
        page.push(format_args!(
            "<path fill=\"none\" stroke=\"currentColor\" stroke-width=\"{}\" d=\"M{} {}L{} {}\"/>",
            mm(0.25 * self.unit),
            mm(ax),
            mm(ay),
            mm(bx),
            mm(by)
        ));
        for (x, y) in [(ax, ay), (bx, by)] {
            page.push(format_args!(
                "<circle fill=\"currentColor\" cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
                mm(x),
                mm(y),
                mm(0.55 * self.unit)
            ));
        }
    }
}
