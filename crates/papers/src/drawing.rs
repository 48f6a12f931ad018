//! A picture for the screen: as wide as what holds it, true to scale, with its legend below.

use crate::fit::{BASE, LINE, Sizes, fit};
use crate::lettering::{PictureWords, letters};
use crate::painter::{Painter, framed, hatches, name, on_edge};
use crate::refuse::{Unprintable, wanted};
use crate::svg::{Page, Place, Weight};
use load::geometry::PER_MM;
use load::picture::{Picture, Role};

/// What a drawing is called, and the words in it.
#[derive(Clone, Copy)]
pub struct DrawingNames<'a> {
    /// Begins the names of its hatches: small letters, digits and hyphens, a letter first, at most
    /// 64. No two drawings of a page share it.
    pub id: &'a str,
    /// What it shows, for who cannot see it: "Tray 1 from the top".
    pub title: &'a str,
    /// The same at length: how many pouches, which side is up, how far from the wall.
    pub desc: &'a str,
    /// The words in it.
    pub words: PictureWords<'a>,
}

/// Draws a picture as one SVG element of class `drawing`, as wide as what holds it, its units
/// millimetres. Nothing in it is loaded from elsewhere.
///
/// It is ink on white by itself. A page may set `color` of `.drawing` and `fill` of
/// `.drawing .ground` in its style, for a dark room say.
///
/// # Errors
/// [`Unprintable`] when the picture is empty or a shape leaves its frame, when a name or a distance
/// does not fit, or when a word is missing or may not be printed.
pub fn drawing(picture: &Picture, names: &DrawingNames<'_>) -> Result<String, Unprintable> {
    framed(picture)?;
    let id = name(names.id)?;
    let about = (wanted(names.title, "the title")?, wanted(names.desc, "the description")?);
    let mm = |tenths: i32| f64::from(tenths) / f64::from(PER_MM);
    let (width, height) = (mm(picture.frame.width), mm(picture.frame.height));
    // A hundredth of the side of a square as large: 2.3 mm for a tray of 180 × 285 mm.
    let unit = (width * height).sqrt() / 100.0;
    let on_edges = |side: fn((bool, bool)) -> bool| {
        let any = picture.distances.iter().any(|it| side(on_edge(picture.frame, it)));
        if any { ASIDE * unit } else { 0.0 }
    };
    let around = (on_edges(|(left, _)| left), on_edges(|(_, near)| near));
    let (left, end) = (unit + around.0, unit + height + around.1);
    let painter = Painter { id, at: (left, unit), scale: 1.0, unit, frame: picture.frame, around };
    let written = letters(picture, &painter, &names.words)?;
    let legend = names.words.legend(std::iter::once(picture))?;
    let (below, high) = rows(&names.words, &legend, (left, end + 1.5 * unit, width), unit)?;
    let size = (left + width + unit, end + high + 2.5 * unit);
    let mut page = Page::scaling(size, id, about);
    hatches(&mut page, id, unit);
    painter.draw(&mut page, picture);
    for text in &written {
        text.draw(&mut page, unit);
    }
    for row in &below {
        row.draw(&mut page, &painter);
    }
    Ok(page.done())
}

/// Kept free beside the picture for a distance along its edge, units.
const ASIDE: f64 = 4.6;

/// A line below a picture, with the hatch it explains.
struct Row {
    sample: Option<(Role, Place)>,
    lines: Vec<String>,
    at: (f64, f64),
    size: f64,
}

/// Letters below a picture, and what they stand beside, units.
const BELOW: Sizes = Sizes { most: 3.2, least: 2.2 };
const SAMPLE: (f64, f64) = (8.0, 4.6);

/// The near side and the legend, beside each other where they fit; and how high they are together.
fn rows(
    words: &PictureWords<'_>,
    legend: &[(Role, &str)],
    (left, top, room): (f64, f64, f64),
    unit: f64,
) -> Result<(Vec<Row>, f64), Unprintable> {
    let sizes = Sizes { most: BELOW.most * unit, least: BELOW.least * unit };
    let (gap, side) = (1.5 * unit, SAMPLE.0 * unit);
    let (mut rows, mut y) = (Vec::new(), top);
    if let Some(near) = words.near {
        let near = wanted(near, "the near side")?;
        let fitted = fit(near, (room, 2.0 * LINE * sizes.most), sizes)?;
        let long = fitted.lines.iter().map(|line| crate::fit::width(line)).fold(0.0, f64::max);
        let at = (left + (room - long * fitted.size) / 2.0, y);
        let high = fitted.lines.len() as f64 * LINE * fitted.size;
        rows.push(Row { sample: None, lines: fitted.lines, at, size: fitted.size });
        y += high + gap;
    }
    let (mut x, mut row_high) = (left, 0.0_f64);
    for (role, word) in legend {
        let fitted = fit(word, (room - side - gap, 3.0 * LINE * sizes.most), sizes)?;
        let long = fitted.lines.iter().map(|line| crate::fit::width(line)).fold(0.0, f64::max);
        let whole = side + gap + long * fitted.size;
        if x > left && x + whole > left + room {
            (x, y, row_high) = (left, y + row_high + gap, 0.0);
        }
        let place = Place { x, y, width: side, height: SAMPLE.1 * unit };
        let high = (fitted.lines.len() as f64 * LINE * fitted.size).max(place.height);
        let down = (high - fitted.lines.len() as f64 * LINE * fitted.size) / 2.0;
        rows.push(Row {
            sample: Some((*role, place)),
            lines: fitted.lines,
            at: (x + side + gap, y + down),
            size: fitted.size,
        });
        row_high = row_high.max(high);
        x += whole + 3.0 * gap;
    }
    Ok((rows, y + row_high - top))
}

impl Row {
    fn draw(&self, page: &mut Page, painter: &Painter<'_>) {
        if let Some((role, place)) = self.sample {
            painter.sample(page, role, place);
        }
        for (number, line) in self.lines.iter().enumerate() {
            let base = self.at.1 + self.size * (BASE + LINE * number as f64);
            page.ink((self.at.0, base), self.size, Weight::Regular, line);
        }
    }
}
