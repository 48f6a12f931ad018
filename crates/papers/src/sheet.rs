//! Sheets of labels: sizes, places, and how large a module of the code is on them.
//!
//! The sizes of the A4 sheet are published by label sellers as a layout of its own (seen: margins
//! 15.15 and 7.2 mm, gap 2.5 and 0 mm); those of the Letter sheet are from memory. Print one sheet
//! on plain paper and hold it against the labels before the first real one.

use crate::svg::Place;
use std::fmt;

/// A sheet or roll of labels. Lengths in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet {
    pub(crate) page: (f64, f64),
    pub(crate) first: (f64, f64),
    pub(crate) label: (f64, f64),
    pub(crate) pitch: (f64, f64),
    pub(crate) columns: usize,
    pub(crate) rows: usize,
    module: f64,
}

/// How many dots a printer sets in an inch, 150 to 2400.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DotsPerInch(u16);

/// A number that is no printer's dots per inch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoDots(pub u16);

impl fmt::Display for NoDots {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} dots per inch is no printer's: 150 to 2400, look in its manual", self.0)
    }
}

impl std::error::Error for NoDots {}

impl DotsPerInch {
    /// From a number between 150 (coarser prints no module well) and 2400 (no finer one is known
    /// to us).
    ///
    /// # Errors
    /// [`NoDots`] outside that range.
    pub const fn new(dots: u16) -> Result<Self, NoDots> {
        if dots >= 150 && dots <= 2400 { Ok(Self(dots)) } else { Err(NoDots(dots)) }
    }
}

/// Modules along one side of version 2, with four light ones on each side (ISO/IEC 18004).
pub(crate) const SIDE: usize = 25 + 2 * QUIET;
/// Light modules around the code.
pub(crate) const QUIET: usize = 4;

impl Sheet {
    /// US Letter, 30 labels of 66.7 × 25.4 mm (from memory).
    pub const LETTER_30: Self = Self {
        page: (215.9, 279.4),
        first: (4.7625, 12.7),
        label: (66.675, 25.4),
        pitch: (69.85, 25.4),
        columns: 3,
        rows: 10,
        module: 0.5,
    };

    /// A4, 21 labels of 63.5 × 38.1 mm, margins 15.15 and 7.2 mm, gaps 2.5 and 0 mm (seen).
    pub const A4_21: Self = Self {
        page: (210.0, 297.0),
        first: (7.2, 15.15),
        label: (63.5, 38.1),
        pitch: (66.0, 38.1),
        columns: 3,
        rows: 7,
        module: 0.5,
    };

    /// A roll of labels of 25 × 25 mm: each label is a page.
    pub const ROLL_25: Self = Self {
        page: (25.0, 25.0),
        first: (0.0, 0.0),
        label: (25.0, 25.0),
        pitch: (25.0, 25.0),
        columns: 1,
        rows: 1,
        module: 0.4,
    };

    /// How many labels one sheet has.
    #[must_use]
    pub const fn labels(&self) -> usize {
        self.columns * self.rows
    }

    /// Side of one module of the code, mm.
    #[must_use]
    pub const fn module(&self) -> f64 {
        self.module
    }

    /// The same sheet with modules of whole printer dots, never smaller than before: a module
    /// that ends between two dots is printed too thin or too thick.
    ///
    /// ```
    /// use papers::{DotsPerInch, Sheet};
    /// let roll = Sheet::ROLL_25.for_printer(DotsPerInch::new(300)?);
    /// assert!((roll.module() - 5.0 * 25.4 / 300.0).abs() < 1e-12);
    /// # Ok::<(), papers::NoDots>(())
    /// ```
    #[must_use]
    pub fn for_printer(self, dots: DotsPerInch) -> Self {
        let dot = 25.4 / f64::from(dots.0);
        // A hundredth of a dot short is printed as the whole one: 203 dpi is eight dots a
        // millimetre, and four of them are 0.5005 mm.
        let whole = (self.module / dot - 0.01).ceil();
        Self { module: whole * dot, ..self }
    }

    /// Whether the sheet has a margin for the printed date, the page and the scale bar.
    pub(crate) fn has_margin(&self) -> bool {
        self.first.1 > 10.0
    }

    /// Where the label with this number, from 0, lies.
    pub(crate) fn place(&self, number: usize) -> Place {
        let column = number % self.columns;
        let row = number / self.columns % self.rows;
        Place {
            x: self.first.0 + column as f64 * self.pitch.0,
            y: self.first.1 + row as f64 * self.pitch.1,
            width: self.label.0,
            height: self.label.1,
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    #[test]
    fn the_last_label_ends_where_the_far_margin_begins() {
        for sheet in [Sheet::LETTER_30, Sheet::A4_21, Sheet::ROLL_25] {
            let last = sheet.place(sheet.labels() - 1);
            let right = sheet.page.0 - (last.x + last.width);
            let below = sheet.page.1 - (last.y + last.height);
            // The seen A4 figures add up to 209.9 mm, a tenth short of the page.
            assert!((right - sheet.first.0).abs() < 0.11, "{sheet:?}: {right}");
            assert!((below - sheet.first.1).abs() < 0.001, "{sheet:?}: {below}");
        }
    }

    #[test]
    fn labels_do_not_lie_on_each_other() {
        for sheet in [Sheet::LETTER_30, Sheet::A4_21] {
            assert!(sheet.pitch.0 >= sheet.label.0 && sheet.pitch.1 >= sheet.label.1);
        }
    }

    /// Dots per module worked out by hand: 0.50 mm is 3.996 dots at 203 dpi and 5.91 at 300;
    /// 0.40 mm is 3.197 and 4.72.
    #[test]
    fn a_module_is_whole_dots_and_not_smaller() {
        for (sheet, dpi, dots) in [
            (Sheet::A4_21, 203, 4.0),
            (Sheet::A4_21, 300, 6.0),
            (Sheet::A4_21, 600, 12.0),
            (Sheet::ROLL_25, 203, 4.0),
            (Sheet::ROLL_25, 300, 5.0),
        ] {
            let module = sheet.for_printer(DotsPerInch::new(dpi).unwrap()).module();
            assert!((module - dots * 25.4 / f64::from(dpi)).abs() < 1e-9, "{dpi}: {module}");
        }
        assert_eq!(DotsPerInch::new(72), Err(NoDots(72)));
    }
}
