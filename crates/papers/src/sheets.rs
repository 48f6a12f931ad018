//! Whole sheets of labels.

use crate::fit::{Sizes, fit};
use crate::label::Label;
use crate::refuse::{Unprintable, plain};
use crate::sheet::Sheet;
use crate::svg::{Page, Weight};

/// The words on a sheet of labels, in the reader's language.
#[derive(Clone, Copy)]
pub struct Words<'a> {
    /// When it was printed and for whom, the month in letters.
    pub printed: &'a str,
    /// Page n of m.
    pub page: &'a dyn Fn(usize, usize) -> String,
    /// What stands beside the bar of 50 mm.
    pub scale: &'a str,
    /// That ordinary labels are not made for steam.
    pub stock: &'a str,
    /// Machine, before the line to write on.
    pub machine: &'a str,
    /// Run, before the line to write on.
    pub run: &'a str,
    /// One or two letters for machine, for the small label.
    pub machine_short: &'a str,
    /// One or two letters for run, for the small label.
    pub run_short: &'a str,
}

/// Size of the letters in the margin, mm.
const SIZE: f64 = 2.6;

/// Pages of labels, one SVG text each, in the order of the labels: along the rows from the top
/// left, on the first sheet from label `start_at` (counted from 1), so that a sheet that was begun
/// is not wasted.
///
/// In the margin stand the printed date, the page and a bar of 50 mm to check the scale with. A
/// roll has no margin and carries the labels alone.
///
/// # Errors
/// [`Unprintable`] when one text does not fit or may not be printed, when there is nothing to
/// print, or when `start_at` is not on the sheet. Then no page is given out at all.
pub fn label_sheets(
    labels: &[Label],
    sheet: &Sheet,
    words: &Words<'_>,
    start_at: usize,
) -> Result<Vec<String>, Unprintable> {
    let on_sheet = sheet.labels();
    if labels.is_empty() {
        return Err(Unprintable::Nothing);
    }
    if start_at < 1 || start_at > on_sheet {
        return Err(Unprintable::Start { asked: start_at, labels: on_sheet });
    }
    let used = start_at - 1;
    let (first, rest) = labels.split_at(labels.len().min(on_sheet - used));
    let filled: Vec<(usize, &[Label])> = std::iter::once((used, first))
        .chain(rest.chunks(on_sheet).map(|chunk| (0, chunk)))
        .collect();
    let of = filled.len();
    filled
        .into_iter()
        .enumerate()
        .map(|(number, (from, labels))| {
            let mut page = Page::new(sheet.page.0, sheet.page.1);
            if sheet.has_margin() {
                margin(&mut page, sheet, words, &(words.page)(number + 1, of))?;
            }
            for (at, label) in labels.iter().enumerate() {
                label.draw(&mut page, sheet.place(from + at), sheet, words)?;
            }
            Ok(page.done())
        })
        .collect()
}

/// What stands above and below the labels.
fn margin(
    page: &mut Page,
    sheet: &Sheet,
    words: &Words<'_>,
    page_of: &str,
) -> Result<(), Unprintable> {
    const LEFT: f64 = 12.0;
    let right = sheet.page.0 - LEFT;
    // Printers leave about six millimetres at the edge white (from memory), labels begin after 12.
    let (above, below) = (8.7, sheet.page.1 - 8.5);
    let mut line = |x: f64, y: f64, room: f64, text: &str| {
        let sizes = Sizes { most: SIZE, least: 1.8 };
        let size = fit(plain(text)?, (room, sizes.most * 1.2), sizes)?.size;
        page.text((x, y), size, Weight::Regular, text);
        Ok(())
    };
    line(LEFT, above, 130.0, words.printed)?;
    line(right - 40.0, above, 40.0, page_of)?;
    line(LEFT, above + 3.2, right - LEFT, words.stock)?;
    scale_bar(page, (LEFT, below), right - LEFT, words.scale)
}

/// A bar of 50 mm to check the scale with, its middle on `y`, and what is said beside it.
pub(crate) fn scale_bar(
    page: &mut Page,
    (x, y): (f64, f64),
    room: f64,
    text: &str,
) -> Result<(), Unprintable> {
    const BAR: f64 = 50.0;
    let sizes = Sizes { most: SIZE, least: 1.8 };
    let beside = BAR + 2.0;
    let fitted = fit(plain(text)?, (room - beside, sizes.most * 1.2), sizes)?;
    page.text((x + beside, y + 0.7), fitted.size, Weight::Regular, text);
    page.rule(x, y, BAR);
    page.shape((x, y - 1.5), "M0 0h0.25v3h-0.25zM49.75 0h0.25v3h-0.25z");
    Ok(())
}
