//! A page of A5 for the machine: each tray as it is to be laid, what is in it, and what hands have
//! to know.

use crate::column::{Entry, Set, column};
use crate::lettering::{PictureWords, Written, letters};
use crate::painter::{Painter, framed, hatches, name};
use crate::refuse::{Unprintable, wanted};
use crate::sheets::scale_bar;
use crate::svg::{Page, Place, Weight, mm};
use load::geometry::PER_MM;
use load::picture::{Picture, Role};

/// One tray, or the rack, with what is said beside it in the reader's language.
#[derive(Debug, Clone, Copy)]
pub struct TrayOfSheet<'a> {
    /// How its pouches lie.
    pub picture: &'a Picture,
    /// Which one it is: "Tray 1 from the top".
    pub heading: &'a str,
    /// How heavy it is.
    pub mass: &'a str,
    /// How much is free between the pouches and the wall; `None` on an empty tray.
    pub clearance: Option<&'a str>,
}

/// The words on a page of trays, in the reader's language.
#[derive(Clone, Copy)]
pub struct TrayWords<'a> {
    /// Begins the names of the hatches, as in [`crate::DrawingNames`].
    pub id: &'a str,
    /// The machine and that this is what goes in.
    pub title: &'a str,
    /// When it was printed, the month in letters.
    pub printed: &'a str,
    /// Page n of m.
    pub page: &'a dyn Fn(usize, usize) -> String,
    /// The scale, 1 to how many tenths: 25 is 1 : 2.5.
    pub scale: &'a dyn Fn(u32) -> String,
    /// What stands beside the bar of 50 mm.
    pub bar: &'a str,
    /// The words in the pictures.
    pub picture: PictureWords<'a>,
    /// How heavy all of it is.
    pub total: &'a str,
    /// How much this machine may take, and where that is known from.
    pub limit: &'a str,
    /// The programme that is proposed, and why.
    pub programme: &'a str,
    /// What hands have to know: tongs or heat gloves, cool before touching, never open under
    /// pressure, the machine's own manual first.
    pub cautions: &'a [&'a str],
}

/// A5, upright, mm.
const PAGE: (f64, f64) = (148.0, 210.0);
/// Printers leave about six millimetres at the edge white (from memory).
const EDGE: f64 = 8.0;
/// Widest picture: the rest of the page is for what is said beside it.
const WIDEST: f64 = 92.0;
const GAP: f64 = 4.0;
/// Where the pictures begin and end.
const TOP: f64 = 25.0;
const END: f64 = 173.0;
/// What the cautions have, above the bar of 50 mm.
const CAUTIONS: Place =
    Place { x: EDGE + 14.0, y: 175.5, width: PAGE.0 - 2.0 * EDGE - 14.0, height: 20.5 };
/// Below a picture, for the word at the near side.
const NEAR: f64 = 5.0;
/// What lines and letters of a picture are measured in on paper, mm: its smallest letters are 2 mm.
const UNIT: f64 = 0.92;

/// Scales in tenths that a reader can reckon with.
const SCALES: [u32; 14] = [10, 15, 20, 25, 30, 35, 40, 50, 60, 80, 100, 150, 200, 250];

/// Pages of A5 as SVG texts, trays in the order in which they were handed in, all at the largest
/// scale at which the largest of them leaves room for its words; as many on a page as go on it.
///
/// # Errors
/// [`Unprintable`] when a text does not fit or may not be printed, when a picture is no picture, or
/// when there is no tray. Then no page is given out at all.
pub fn tray_sheet(
    trays: &[TrayOfSheet<'_>],
    words: &TrayWords<'_>,
) -> Result<Vec<String>, Unprintable> {
    if trays.is_empty() {
        return Err(Unprintable::Nothing);
    }
    name(words.id)?;
    trays.iter().try_for_each(|tray| framed(tray.picture))?;
    let scale = scale_of(trays)?;
    let mut pages: Vec<(String, Body<'_>)> = Vec::new();
    let mut rest = trays;
    while !rest.is_empty() {
        let id = format!("{}-{}", words.id, pages.len() + 1);
        // What is said beside more trays may not fit where it fits beside fewer.
        let mut count = on_page(rest, scale);
        let body = loop {
            match Body::new(&rest[..count], words, &id, scale) {
                Err(Unprintable::TooLong { .. }) if count > 1 => count -= 1,
                body => break body?,
            }
        };
        pages.push((id, body));
        rest = &rest[count..];
    }
    let of = pages.len();
    let numbered = pages.iter().enumerate();
    numbered.map(|(at, (id, body))| body.page(words, id, &(words.page)(at + 1, of))).collect()
}

/// Size of a picture on the page at this scale, mm.
fn size(picture: &Picture, scale: u32) -> (f64, f64) {
    let on_page = |tenths: i32| f64::from(tenths) / f64::from(PER_MM) * 10.0 / f64::from(scale);
    (on_page(picture.frame.width), on_page(picture.frame.height))
}

fn scale_of(trays: &[TrayOfSheet<'_>]) -> Result<u32, Unprintable> {
    let goes_on = |scale: &u32| {
        trays.iter().all(|tray| {
            let (width, height) = size(tray.picture, *scale);
            width <= WIDEST && height + NEAR <= END - TOP
        })
    };
    SCALES.into_iter().find(goes_on).ok_or(Unprintable::TooLarge)
}

/// How many of the trays go below each other, at least one.
fn on_page(trays: &[TrayOfSheet<'_>], scale: u32) -> usize {
    let mut y = TOP;
    let go_on = trays.iter().take_while(|tray| {
        y += size(tray.picture, scale).1 + NEAR;
        let fits = y <= END;
        y += GAP;
        fits
    });
    go_on.count().max(1)
}

/// What stands between the head and the cautions of one page.
struct Body<'a> {
    pictures: Vec<(&'a Picture, f64, Vec<Written>)>,
    beside: Vec<Set>,
    near: Vec<Set>,
    cautions: Vec<Set>,
    scale: f64,
}

impl<'a> Body<'a> {
    fn new(
        trays: &[TrayOfSheet<'a>],
        words: &TrayWords<'_>,
        id: &str,
        scale: u32,
    ) -> Result<Self, Unprintable> {
        let scale_said = (words.scale)(scale);
        let mut body = Self {
            pictures: Vec::new(),
            beside: Vec::new(),
            near: Vec::new(),
            cautions: column(CAUTIONS, &cautions(words)?)?,
            scale: 10.0 / f64::from(scale),
        };
        let mut y = TOP;
        for (number, tray) in trays.iter().enumerate() {
            let (width, height) = size(tray.picture, scale);
            let painter = body.painter(id, y, tray.picture);
            body.pictures.push((tray.picture, y, letters(tray.picture, &painter, &words.picture)?));
            let below = Place { x: EDGE, y: y + height + 0.8, width, height: NEAR - 0.8 };
            if let Some(near) = words.picture.near {
                let text = wanted(near, "the near side")?;
                let sets = column(below, &[entry(text, Weight::Regular, 3.2, 0.0)])?;
                body.near.extend(sets.into_iter().map(|set| set.towards(0.5, width)));
            }
            let x = EDGE + width + GAP;
            let last = number + 1 == trays.len();
            let down = if last { END - y } else { height + NEAR };
            let place = Place { x, y, width: PAGE.0 - EDGE - x, height: down };
            let mut said = facts(tray, &scale_said)?;
            if number == 0 {
                let pictures = trays.iter().map(|tray| tray.picture);
                let legend = words.picture.legend(pictures)?.into_iter();
                said.extend(legend.enumerate().map(|(at, word)| in_legend(at, word)));
            }
            if last {
                said.extend(whole(words)?);
            }
            body.beside.extend(column(place, &said)?);
            y += height + NEAR + GAP;
        }
        Ok(body)
    }

    fn painter<'p>(&self, id: &'p str, y: f64, picture: &Picture) -> Painter<'p> {
        let (scale, frame) = (self.scale, picture.frame);
        Painter { id, at: (EDGE, y), scale, unit: UNIT, frame, around: (0.0, 0.0) }
    }

    fn page(&self, words: &TrayWords<'_>, id: &str, page_of: &str) -> Result<String, Unprintable> {
        let mut page = Page::new(PAGE.0, PAGE.1);
        hatches(&mut page, id, UNIT);
        let head = head(words, page_of)?;
        for (picture, y, written) in &self.pictures {
            let painter = self.painter(id, *y, picture);
            painter.draw(&mut page, picture);
            written.iter().for_each(|text| text.draw(&mut page, UNIT));
        }
        if let Some((picture, y, _)) = self.pictures.first() {
            let painter = self.painter(id, *y, picture);
            let all = [&head, &self.near, &self.beside, &self.cautions];
            all.into_iter().flatten().for_each(|set| set.draw(&mut page, &painter));
        }
        let across = PAGE.0 - 2.0 * EDGE;
        page.rule(EDGE, TOP - 2.5, across);
        page.rule(EDGE, CAUTIONS.y - 1.5, across);
        heat(&mut page, (EDGE, CAUTIONS.y + 1.0));
        scale_bar(&mut page, (EDGE, PAGE.1 - EDGE - 2.5), across, words.bar)?;
        Ok(page.done())
    }
}

const fn entry(text: &str, weight: Weight, size: f64, above: f64) -> Entry<'_> {
    Entry { text, weight, size, above, sample: None }
}

/// The machine, when it was printed, and the page.
fn head(words: &TrayWords<'_>, page_of: &str) -> Result<Vec<Set>, Unprintable> {
    const PAGES: f64 = 34.0;
    let across = PAGE.0 - 2.0 * EDGE;
    let title = Place { x: EDGE, y: EDGE, width: across, height: 8.6 };
    let below = Place { x: EDGE, y: 17.6, width: across - PAGES, height: 3.8 };
    let right = Place { x: PAGE.0 - EDGE - PAGES, width: PAGES, ..below };
    let text = |text, what| Ok(entry(wanted(text, what)?, Weight::Regular, 2.8, 0.0));
    let mut sets =
        column(title, &[entry(wanted(words.title, "the title")?, Weight::Bold, 5.6, 0.0)])?;
    sets.extend(column(below, &[text(words.printed, "when it was printed")?])?);
    let page = column(right, &[text(page_of, "the page")?])?;
    sets.extend(page.into_iter().map(|set| set.towards(1.0, PAGES)));
    Ok(sets)
}

/// What is said beside one tray.
fn facts<'a>(tray: &TrayOfSheet<'a>, scale: &'a str) -> Result<Vec<Entry<'a>>, Unprintable> {
    let heading = wanted(tray.heading, "which tray it is")?;
    let mut facts = vec![
        entry(heading, Weight::Bold, 4.2, 0.0),
        entry(wanted(tray.mass, "how heavy the tray is")?, Weight::Regular, 3.5, 1.8),
    ];
    if let Some(clearance) = tray.clearance {
        let text = wanted(clearance, "how much is free")?;
        facts.push(entry(text, Weight::Regular, 3.5, 1.8));
    }
    facts.push(entry(wanted(scale, "the scale")?, Weight::Regular, 2.9, 1.8));
    Ok(facts)
}

/// What holds for the whole run.
fn whole<'a>(words: &TrayWords<'a>) -> Result<[Entry<'a>; 3], Unprintable> {
    Ok([
        entry(wanted(words.total, "how heavy all is")?, Weight::Bold, 3.8, 7.0),
        entry(wanted(words.limit, "the machine's limit")?, Weight::Regular, 3.4, 1.8),
        entry(wanted(words.programme, "the programme")?, Weight::Bold, 3.8, 6.0),
    ])
}

const fn in_legend(at: usize, (role, text): (Role, &str)) -> Entry<'_> {
    let above = if at == 0 { 6.0 } else { 2.4 };
    Entry { text, weight: Weight::Regular, size: 3.1, above, sample: Some(role) }
}

fn cautions<'a>(words: &TrayWords<'a>) -> Result<Vec<Entry<'a>>, Unprintable> {
    if words.cautions.is_empty() {
        return Err(Unprintable::Blank { what: "the cautions" });
    }
    let texts = words.cautions.iter();
    texts.map(|text| Ok(entry(wanted(text, "a caution")?, Weight::Regular, 3.7, 0.5))).collect()
}

/// The sign for heat: a triangle with three waves in it.
fn heat(page: &mut Page, (x, y): (f64, f64)) {
    page.push(format_args!(
        "<g transform=\"translate({} {})\" fill=\"none\" stroke=\"#000\" stroke-linejoin=\"round\" stroke-linecap=\"round\"><path stroke-width=\"0.7\" d=\"M5.5 0.5L10.6 9.6H0.4z\"/><path stroke-width=\"0.5\" d=\"M3.6 8.2q-0.5 -0.8 0 -1.6t0 -1.6M5.5 8.2q-0.5 -0.8 0 -1.6t0 -1.6M7.4 8.2q-0.5 -0.8 0 -1.6t0 -1.6\"/></g>",
        mm(x),
        mm(y)
    ));
}

#[cfg(test)]
mod tests;
