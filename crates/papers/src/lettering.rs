//! What is written on a picture: where each text lies, how large, upright or turned. No two texts
//! share a place, and each keeps to the part of its pouch that is seen.

use crate::fit::{BASE, LINE, Sizes, broken, width};
use crate::painter::{Painter, on_edge};
use crate::refuse::{Unprintable, plain, wanted};
use crate::spots::{middles, seen};
use crate::svg::{Page, Place, Weight, escape, mm};
use load::picture::{Distance, Picture, Role};

/// How much wider than regular letters bold ones are reckoned: in DejaVu Sans Bold 2.37 the widest in
/// proportion is the I, 0.372 over 0.295 (read from the `hmtx` tables with a script); for letters
/// with marks the bounds of [`crate::fit`] cover more.
const BOLD: f64 = 1.27;

/// What is written on a pouch or a piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caption {
    /// What it is called by: the shelf code, or a number for a piece. It has to fit.
    pub main: String,
    /// What it is, may be empty. Left out where there is no room, and on pieces.
    pub more: String,
}

/// The words in a picture, in the reader's language.
#[derive(Clone, Copy)]
pub struct PictureWords<'a> {
    /// On a pouch whose paper side is seen: "paper up", or "paper right" in a rack.
    pub paper: &'a str,
    /// On a pouch whose film side is seen.
    pub film: &'a str,
    /// That one lies over another, and by how much.
    pub over: &'a str,
    /// That the fold's strip is kept free.
    pub fold: &'a str,
    /// What is on the near side, below the picture: the door.
    pub near: Option<&'a str>,
    /// What a pouch ([`Role::Paper`], [`Role::Film`]) or a [`Role::Piece`] is called; `None`
    /// writes no name on it.
    pub caption: &'a dyn Fn(Role, usize) -> Option<Caption>,
    /// A distance in tenths of a millimetre, with its unit.
    pub distance: &'a dyn Fn(i32) -> String,
}

impl<'a> PictureWords<'a> {
    /// The hatches that occur in these pictures, each with its word. Paper and film are always
    /// told, so that who sees one knows the other.
    pub(crate) fn legend<'p>(
        &self,
        pictures: impl Iterator<Item = &'p Picture> + Clone,
    ) -> Result<Vec<(Role, &'a str)>, Unprintable> {
        let all = [
            (Role::Paper, self.paper, "the paper side"),
            (Role::Film, self.film, "the film side"),
            (Role::Over, self.over, "what lies over"),
            (Role::Fold, self.fold, "the strip of the fold"),
        ];
        let occurs = |role| {
            matches!(role, Role::Paper | Role::Film)
                || pictures
                    .clone()
                    .any(|picture| picture.parts.iter().any(|part| part.role == role))
        };
        let used = all.into_iter().filter(|(role, _, _)| occurs(*role));
        used.map(|(role, word, what)| Ok((role, wanted(word, what)?))).collect()
    }
}

/// A text in its place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Written {
    /// What it takes, mm on the page.
    pub(crate) place: Place,
    size: f64,
    lines: Vec<Line>,
    turned: bool,
    edged: bool,
}

/// Everything that is written on a picture.
pub(crate) fn letters(
    picture: &Picture,
    painter: &Painter<'_>,
    words: &PictureWords<'_>,
) -> Result<Vec<Written>, Unprintable> {
    let mut taken = Vec::new();
    for (number, part) in picture.parts.iter().enumerate() {
        let word = match part.role {
            Role::Paper => wanted(words.paper, "the paper side")?,
            Role::Film => wanted(words.film, "the film side")?,
            _ => continue,
        };
        let caption = part.names.and_then(|name| (words.caption)(part.role, name));
        let place = painter.place(seen(&picture.parts, number));
        taken.extend(on_pouch(place, painter.unit, caption.as_ref(), word)?);
    }
    for part in picture.parts.iter().filter(|part| part.role == Role::Piece) {
        let caption = part.names.and_then(|name| (words.caption)(part.role, name));
        if let Some(caption) = caption {
            let text = wanted(&caption.main, "a piece")?;
            let spots = middles(&part.outline);
            let spots = spots.iter().map(|p| painter.point(*p));
            taken.push(chip(painter, (text, false), spots, &taken)?.edged());
        }
    }
    for distance in &picture.distances {
        taken.push(number(painter, *distance, words, &taken)?);
    }
    Ok(taken)
}

/// The text of one pouch: name, kind and which side is seen, as much of it as fits. The name has to
/// fit; the side is told by the hatch and the legend too.
fn on_pouch(
    place: Place,
    unit: f64,
    caption: Option<&Caption>,
    word: &str,
) -> Result<Option<Written>, Unprintable> {
    let Some(caption) = caption else {
        return Ok(best(place, unit, &[(word, Weight::Regular)]));
    };
    let main = (wanted(&caption.main, "a pouch")?, Weight::Bold);
    let more = (plain(&caption.more)?, Weight::Regular);
    let side = (word, Weight::Regular);
    let ladder: [&[(&str, Weight)]; 3] = [&[main, more, side], &[main, side], &[main]];
    let from = usize::from(more.0.is_empty());
    let found = ladder[from..].iter().find_map(|texts| best(place, unit, texts));
    found.map(Some).ok_or_else(|| Unprintable::TooLong { text: main.0.to_owned() })
}

/// The texts below each other or in one line, upright or turned, whichever is largest.
fn best(place: Place, unit: f64, texts: &[(&str, Weight)]) -> Option<Written> {
    let edge = 2.0 * EDGE * unit;
    let (w, h) = (place.width - edge, place.height - edge);
    let tries = [(false, (w, h)), (true, (h, w))];
    let stacked =
        tries.iter().filter_map(|(turned, room)| Some((set(texts, *room, unit)?, *turned)));
    let level =
        tries.iter().filter_map(|(turned, room)| Some((one_line(texts, *room, unit)?, *turned)));
    // What stands upright and below each other is read more easily: others must be clearly larger.
    let (setting, turned) = stacked
        .chain(level)
        .reduce(|best, next| if next.0.size > 1.15 * best.0.size { next } else { best })?;
    let middle = (place.x + place.width / 2.0, place.y + place.height / 2.0);
    Some(setting.around(middle, unit, turned))
}

/// One line, in bold letters first, then in regular ones.
#[derive(Debug, Clone, PartialEq)]
struct Line {
    bold: String,
    regular: String,
}

impl Line {
    fn new(text: String, weight: Weight) -> Self {
        match weight {
            Weight::Bold => Self { bold: text, regular: String::new() },
            Weight::Regular => Self { bold: String::new(), regular: text },
        }
    }

    /// Its width at size 1, at most.
    fn wide(&self) -> f64 {
        wide(&self.bold, Weight::Bold) + wide(&self.regular, Weight::Regular)
    }

    /// Its width at size 1 in the usual faces: a bold letter is a tenth wider than a regular one.
    fn usual(&self) -> f64 {
        1.1 * width(&self.bold) + width(&self.regular)
    }
}

/// Lines at a size, with what they take.
struct Setting {
    size: f64,
    lines: Vec<Line>,
    long: f64,
}

/// Left free around a text, units.
const EDGE: f64 = 0.5;

/// Letters on a picture, units: these are 9 and 5 mm of a tray of 180 × 285 mm, so 16 and 9 pixels
/// of a screen that is 320 wide.
const LETTERS: Sizes = Sizes { most: 4.0, least: 2.2 };

/// Letters of a number beside a line or on a piece, units.
const SMALL: f64 = 2.5;

/// How wide letters of this weight are reckoned over regular ones.
pub(crate) const fn factor(weight: Weight) -> f64 {
    match weight {
        Weight::Regular => 1.0,
        Weight::Bold => BOLD,
    }
}

/// Width of a text at size 1.
fn wide(text: &str, weight: Weight) -> f64 {
    width(text) * factor(weight)
}

/// Sizes to try, largest first, mm.
fn sizes(most: f64, unit: f64) -> impl Iterator<Item = f64> {
    const STEPS: u32 = 12;
    let share = |step| f64::from(step) / f64::from(STEPS);
    (0..=STEPS).map(move |step| unit * (most - (most - LETTERS.least) * share(step)))
}

/// The texts below each other at the largest size that fits the room.
fn set(texts: &[(&str, Weight)], (w, h): (f64, f64), unit: f64) -> Option<Setting> {
    sizes(LETTERS.most, unit).find_map(|size| {
        let setting = at_size(texts, w, size);
        let fits = setting.long <= w && setting.lines.len() as f64 * LINE * size <= h;
        fits.then_some(setting)
    })
}

/// The texts in one line, a little smaller, so that the hatch is still seen beside it where a pouch
/// stands on edge.
fn one_line(texts: &[(&str, Weight)], (w, h): (f64, f64), unit: f64) -> Option<Setting> {
    let [(main, weight), rest @ ..] = texts else { return None };
    let mut line = Line::new((*main).to_owned(), *weight);
    rest.iter().for_each(|(text, _)| line.regular.push_str(&format!(" · {text}")));
    let wide = line.wide();
    let size = sizes(0.8 * LETTERS.most, unit).find(|size| wide * size <= w && LINE * size <= h)?;
    Some(Setting { size, lines: vec![line], long: wide * size })
}

fn at_size(texts: &[(&str, Weight)], room: f64, size: f64) -> Setting {
    let mut lines = Vec::new();
    for (text, weight) in texts {
        let room = room / (size * factor(*weight));
        lines.extend(broken(text, room).into_iter().map(|line| Line::new(line, *weight)));
    }
    let long = lines.iter().map(|line| line.wide() * size).fold(0.0, f64::max);
    Setting { size, lines, long }
}

impl Setting {
    fn around(self, (x, y): (f64, f64), unit: f64, turned: bool) -> Written {
        let edge = 2.0 * EDGE * unit;
        let long = self.long + edge;
        let high = self.lines.len() as f64 * LINE * self.size + edge;
        let (width, height) = if turned { (high, long) } else { (long, high) };
        let place = Place { x: x - width / 2.0, y: y - height / 2.0, width, height };
        Written { place, size: self.size, lines: self.lines, turned, edged: false }
    }
}

/// A short text, upright or turned, at the first of these spots that is free and inside the frame.
fn chip(
    painter: &Painter<'_>,
    (text, turned): (&str, bool),
    spots: impl Iterator<Item = (f64, f64)>,
    taken: &[Written],
) -> Result<Written, Unprintable> {
    let whole = painter.whole();
    let unit = painter.unit;
    let mut chips = spots.map(|spot| {
        let setting = at_size(&[(text, Weight::Bold)], f64::MAX, SMALL * unit);
        setting.around(spot, unit, turned)
    });
    let free = chips.find(|chip| {
        whole.holds(&chip.place) && taken.iter().all(|other| !chip.place.meets(&other.place))
    });
    free.ok_or_else(|| Unprintable::TooLong { text: text.to_owned() })
}

/// The number of a distance: on its line where that is long, otherwise beside it.
fn number(
    painter: &Painter<'_>,
    distance: Distance,
    words: &PictureWords<'_>,
    taken: &[Written],
) -> Result<Written, Unprintable> {
    let Distance { from, to } = distance;
    let (dx, dy) = (f64::from(to.x - from.x), f64::from(to.y - from.y));
    let text = (words.distance)((dx * dx + dy * dy).sqrt().round() as i32);
    let text = wanted(&text, "a distance")?;
    let ((ax, ay), (bx, by)) = painter.ends(&distance);
    let (x, y) = ((ax + bx) / 2.0, (ay + by) / 2.0);
    let turned = on_edge(painter.frame, &distance).0 && painter.around.0 > 0.0;
    let (long, high) =
        (wide(text, Weight::Bold) * SMALL * painter.unit, SMALL * LINE * painter.unit);
    let (w, h) = if turned { (high, long) } else { (long, high) };
    let free = 2.0 * painter.unit;
    let fits = (bx - ax).abs() > w + 2.0 * free || (by - ay).abs() > h + 2.0 * free;
    let on_line = fits.then_some((x, y));
    let (across, along) = ((bx - ax).abs() / 2.0, (by - ay).abs() / 2.0);
    let ring = (0..12).flat_map(|step| {
        let more = free / 2.0 + f64::from(step) * painter.unit;
        let (rx, ry) = (w / 2.0 + across.min(w) + more, h / 2.0 + along.min(h) + more);
        let sides = [(1, 0), (-1, 0), (0, -1), (0, 1), (1, -1), (-1, -1), (1, 1), (-1, 1)];
        sides.map(|(sx, sy)| (x + f64::from(sx) * rx, y + f64::from(sy) * ry))
    });
    chip(painter, (text, turned), on_line.into_iter().chain(ring), taken)
}

impl Written {
    /// With a thin line around it.
    fn edged(self) -> Self {
        Self { edged: true, ..self }
    }

    /// Draws it on a plate of the ground, so that no hatch runs through the letters. The plate is
    /// as long as the letters usually are, so that much of the hatch is left.
    pub(crate) fn draw(&self, page: &mut Page, unit: f64) {
        let Place { x, y, width, height } = self.place;
        let (cx, cy) = (x + width / 2.0, y + height / 2.0);
        let high = self.lines.len() as f64 * LINE * self.size;
        let usual = self.lines.iter().map(|line| line.usual() * self.size).fold(0.0, f64::max);
        let (long, edge) = (usual + 2.0 * EDGE * unit, high + 2.0 * EDGE * unit);
        let turn = if self.turned {
            format!(" transform=\"rotate(-90 {} {})\"", mm(cx), mm(cy))
        } else {
            String::new()
        };
        let edged = if self.edged {
            format!(" stroke=\"currentColor\" stroke-width=\"{}\"", mm(0.15 * unit))
        } else {
            String::new()
        };
        page.push(format_args!(
            "<g{turn} text-anchor=\"middle\" font-size=\"{}\"><rect class=\"ground\" fill=\"#fff\"{edged} x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{}\"/>",
            mm(self.size),
            mm(cx - long / 2.0),
            mm(cy - edge / 2.0),
            mm(long),
            mm(edge),
            mm(EDGE * unit)
        ));
        for (number, line) in self.lines.iter().enumerate() {
            page.push(format_args!(
                "<text x=\"{}\" y=\"{}\" fill=\"currentColor\">",
                mm(cx),
                mm(cy - high / 2.0 + self.size * (BASE + LINE * number as f64))
            ));
            if !line.bold.is_empty() {
                page.push(format_args!(
                    "<tspan font-weight=\"700\">{}</tspan>",
                    escape(&line.bold)
                ));
            }
            page.push(format_args!("{}</text>", escape(&line.regular)));
        }
        page.push(format_args!("</g>"));
    }
}

#[cfg(test)]
mod tests;
