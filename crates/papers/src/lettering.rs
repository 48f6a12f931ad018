//! What is written on a picture: where each text lies, how large, upright or turned. No two texts
//! share a place, and each keeps to the part of its pouch that is seen.

use crate::fit::{BASE, LINE, Sizes, broken, width};
use crate::painter::Painter;
use crate::refuse::{Unprintable, plain, wanted};
use crate::svg::{Page, Place, Weight, escape, mm};
use load::geometry::{Outline, Point, Rect};
use load::picture::{Distance, Part, Picture, Role};

/// How much wider than regular letters bold ones are at most (see the test of `fit`).
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
            taken.push(chip(painter, text, spots, &taken)?);
        }
    }
    for distance in &picture.distances {
        taken.push(number(painter, *distance, words, &taken)?);
    }
    Ok(taken)
}

/// The largest rectangle of a pouch that nothing else covers.
fn seen(parts: &[Part], number: usize) -> Rect {
    let whole = parts[number].outline.bounds();
    let covers = |at: usize, role: Role| match role {
        Role::Over | Role::Fold | Role::Piece => true,
        Role::Paper | Role::Film => at > number,
        Role::Tray | Role::Free | Role::Face | Role::Place => false,
    };
    let parts = parts.iter().enumerate().filter(|(at, part)| covers(*at, part.role));
    let bounds = parts.map(|(_, part)| part.outline.bounds());
    let near: Vec<Rect> = bounds.filter(|cover| whole.nearer_than(cover, 0)).collect();
    free(whole, &near)
}

/// The largest rectangle of `whole` that meets none of `covers`: its left and right side each lie
/// on a side of one of them, so trying all pairs finds it. More than the first two dozen are not
/// tried in pairs, which would take long; it is then cut by each of the rest.
fn free(whole: Rect, covers: &[Rect]) -> Rect {
    const PAIRS: usize = 24;
    let (first, rest) = covers.split_at(covers.len().min(PAIRS));
    let inside = |x: i32| x.clamp(whole.x, whole.right());
    let mut sides = vec![whole.x, whole.right()];
    sides.extend(first.iter().flat_map(|cover| [inside(cover.x), inside(cover.right())]));
    sides.sort_unstable();
    sides.dedup();
    let mut best = Rect { width: 0, height: 0, ..whole };
    for (at, &left) in sides.iter().enumerate() {
        for &right in &sides[at + 1..] {
            let strip = Rect { x: left, width: right - left, ..whole };
            let tried = highest(strip, first);
            best = if tried.area() > best.area() { tried } else { best };
        }
    }
    rest.iter().fold(
        best,
        |left, cover| {
            if left.nearer_than(cover, 0) { without(left, *cover) } else { left }
        },
    )
}

/// The highest part of a strip, over its whole width, that meets none of `covers`.
fn highest(strip: Rect, covers: &[Rect]) -> Rect {
    let mut blocks: Vec<(i32, i32)> = covers
        .iter()
        .filter(|cover| strip.nearer_than(cover, 0))
        .map(|cover| (cover.y, cover.far()))
        .collect();
    blocks.push((strip.far(), strip.far()));
    blocks.sort_unstable();
    let mut best = Rect { height: 0, ..strip };
    let mut from = strip.y;
    for (near, far) in blocks {
        if near - from > best.height {
            best = Rect { y: from, height: near - from, ..strip };
        }
        from = from.max(far);
    }
    best
}

/// The largest rectangle of `whole` beside `cover`.
fn without(whole: Rect, cover: Rect) -> Rect {
    let span = |from: i32, to: i32| if to > from { to - from } else { 0 };
    let beside = [
        Rect { width: span(whole.x, cover.x), ..whole },
        Rect { x: cover.right(), width: span(cover.right(), whole.right()), ..whole },
        Rect { height: span(whole.y, cover.y), ..whole },
        Rect { y: cover.far(), height: span(cover.far(), whole.far()), ..whole },
    ];
    let [first, rest @ ..] = beside;
    rest.into_iter().fold(first, |best, next| if next.area() > best.area() { next } else { best })
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
    Some(setting.around(middle, unit, turned, false))
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
    fn around(self, (x, y): (f64, f64), unit: f64, turned: bool, edged: bool) -> Written {
        let edge = 2.0 * EDGE * unit;
        let long = self.long + edge;
        let high = self.lines.len() as f64 * LINE * self.size + edge;
        let (width, height) = if turned { (high, long) } else { (long, high) };
        let place = Place { x: x - width / 2.0, y: y - height / 2.0, width, height };
        Written { place, size: self.size, lines: self.lines, turned, edged }
    }
}

/// A short text at the first of these spots that is free and inside the frame.
fn chip(
    painter: &Painter<'_>,
    text: &str,
    spots: impl Iterator<Item = (f64, f64)>,
    taken: &[Written],
) -> Result<Written, Unprintable> {
    let frame = painter.place(painter.frame);
    let unit = painter.unit;
    let mut chips = spots.map(|spot| {
        let setting = at_size(&[(text, Weight::Bold)], f64::MAX, SMALL * unit);
        setting.around(spot, unit, false, true)
    });
    let free = chips.find(|chip| {
        frame.holds(&chip.place) && taken.iter().all(|other| !chip.place.meets(&other.place))
    });
    free.ok_or_else(|| Unprintable::TooLong { text: text.to_owned() })
}

/// Points inside a piece, the middle of it first, then towards its ends.
fn middles(outline: &Outline) -> Vec<Point> {
    let bounds = outline.bounds();
    let level = bounds.height >= bounds.width;
    [50, 40, 60, 30, 70, 20, 80, 10, 90]
        .into_iter()
        .filter_map(|share| {
            let at = |from: i32, long: i32| from + long * share / 100;
            let line = if level { at(bounds.y, bounds.height) } else { at(bounds.x, bounds.width) };
            let middle = middle_of_longest(outline, line, level)?;
            Some(if level { Point { x: middle, y: line } } else { Point { x: line, y: middle } })
        })
        .collect()
}

/// Where a level (or an upright) line runs longest through the outline: the middle of that way.
fn middle_of_longest(outline: &Outline, line: i32, level: bool) -> Option<i32> {
    let turned = |p: Point| if level { (p.x, p.y) } else { (p.y, p.x) };
    let mut cuts: Vec<i32> = outline
        .edges()
        .filter_map(|(a, b)| {
            let ((ax, ay), (bx, by)) = (turned(a), turned(b));
            let crosses = (ay > line) != (by > line);
            // At most four metres times four metres: this is why it is reckoned in 64 bits.
            let along = |rise: i64| i64::from(bx - ax) * i64::from(line - ay) / rise;
            crosses.then(|| ax + i32::try_from(along(i64::from(by - ay))).unwrap_or(0))
        })
        .collect();
    cuts.sort_unstable();
    let longest = cuts.chunks_exact(2).max_by_key(|pair| pair[1] - pair[0])?;
    Some(longest[0] + (longest[1] - longest[0]) / 2)
}

/// The number of a distance: on its line where that is long, otherwise beside it.
fn number(
    painter: &Painter<'_>,
    Distance { from, to }: Distance,
    words: &PictureWords<'_>,
    taken: &[Written],
) -> Result<Written, Unprintable> {
    let (dx, dy) = (f64::from(to.x - from.x), f64::from(to.y - from.y));
    let text = (words.distance)((dx * dx + dy * dy).sqrt().round() as i32);
    let text = wanted(&text, "a distance")?;
    let ((ax, ay), (bx, by)) = (painter.point(from), painter.point(to));
    let (x, y) = ((ax + bx) / 2.0, (ay + by) / 2.0);
    let (w, h) = (wide(text, Weight::Bold) * SMALL * painter.unit, SMALL * LINE * painter.unit);
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
    let mut number = chip(painter, text, on_line.into_iter().chain(ring), taken)?;
    number.edged = false;
    Ok(number)
}

impl Written {
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
