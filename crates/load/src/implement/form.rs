//! Outlines from a shape family, length and width.

use super::{Form, Implement};
use crate::geometry::{NoOutline, Outline, PER_MM, Point};

/// Corners in thousandths of width and length. The near end (`y` of 0) is the handle's.
type Corners = &'static [(i32, i32)];

// Few corners each, on the outer side of the real thing. (Assumption: looked at, not measured.)
const NIPPERS: Corners = &[
    (0, 0),
    (160, 0),
    (500, 550),
    (840, 0),
    (1000, 0),
    (920, 350),
    (640, 650),
    (640, 850),
    (550, 1000),
    (450, 1000),
    (360, 850),
    (360, 650),
    (80, 350),
];
const SCISSORS: Corners = &[
    (100, 0),
    (400, 0),
    (470, 150),
    (500, 350),
    (530, 150),
    (600, 0),
    (900, 0),
    (1000, 120),
    (1000, 250),
    (620, 500),
    (680, 1000),
    (500, 600),
    (320, 1000),
    (380, 500),
    (0, 250),
    (0, 120),
];
const CLIPPERS: Corners =
    &[(200, 0), (800, 0), (1000, 300), (1000, 950), (850, 1000), (150, 1000), (0, 950), (0, 300)];
const TWEEZERS: Corners = &[
    (300, 0),
    (700, 0),
    (1000, 500),
    (1000, 1000),
    (850, 1000),
    (500, 200),
    (150, 1000),
    (0, 1000),
    (0, 500),
];
const STICK: Corners =
    &[(250, 0), (750, 0), (750, 800), (1000, 850), (1000, 1000), (0, 1000), (0, 850), (250, 800)];
const BIT: Corners = &[
    (300, 0),
    (700, 0),
    (700, 600),
    (1000, 650),
    (1000, 950),
    (700, 1000),
    (300, 1000),
    (0, 950),
    (0, 650),
    (300, 600),
];
const BLOCK: Corners = &[(0, 0), (1000, 0), (1000, 1000), (0, 1000)];
const FILE: Corners = &[
    (200, 0),
    (800, 0),
    (800, 350),
    (1000, 400),
    (1000, 950),
    (750, 1000),
    (250, 1000),
    (0, 950),
    (0, 400),
    (200, 350),
];

impl Form {
    const fn corners(self) -> Corners {
        match self {
            Self::Nippers => NIPPERS,
            Self::Scissors => SCISSORS,
            Self::Clippers => CLIPPERS,
            Self::Tweezers => TWEEZERS,
            Self::Stick => STICK,
            Self::Bit => BIT,
            Self::Block | Self::Holder => BLOCK,
            Self::File => FILE,
        }
    }

    /// The outline as it lies in the pouch, hinges open: the handle's end near, the tip far, its
    /// bounds from the origin to width and length. Where a measure is too small for the shape, it
    /// is the rectangle around it.
    ///
    /// # Errors
    /// [`NoOutline`] for a measure of 0 or above 2000 mm; never for 1 to 2000.
    pub fn outline(self, length_mm: u32, width_mm: u32) -> Result<Outline, NoOutline> {
        let tenths = |mm: u32| match i32::try_from(mm) {
            Ok(mm @ 0..=2_000) => Ok(mm * PER_MM),
            _ => Err(NoOutline::TooLarge),
        };
        let (length, width) = (tenths(length_mm)?, tenths(width_mm)?);
        let at = |&(x, y): &(i32, i32)| Point { x: width * x / 1000, y: length * y / 1000 };
        let shape = Outline::new(self.corners().iter().map(at).collect());
        shape.or_else(|_| Outline::rectangle(width, length))
    }
}

impl Implement {
    /// Its outline as it lies in the pouch, see [`Form::outline`].
    ///
    /// # Errors
    /// [`NoOutline`] where its measures are none, see [`Implement::check`].
    pub fn outline(&self) -> Result<Outline, NoOutline> {
        self.form.outline(self.length_mm, self.width_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn every_measure_gives_an_outline_of_that_size(length in 1..=2_000_u32, width in 1..=2_000_u32) {
            for form in Form::ALL {
                for (length, width) in [(length, width), (length, 1), (1, width), (1, 1)] {
                    let bounds = form.outline(length, width).unwrap().bounds();
                    let expected = (0, 0, width as i32 * 10, length as i32 * 10);
                    prop_assert_eq!((bounds.x, bounds.y, bounds.width, bounds.height), expected);
                }
            }
        }
    }

    #[test]
    fn measures_outside_are_no_outline() {
        for form in Form::ALL {
            assert_eq!(form.outline(0, 5), Err(NoOutline::Empty));
            assert_eq!(form.outline(5, 2_001), Err(NoOutline::TooLarge));
            assert_eq!(form.outline(u32::MAX, u32::MAX), Err(NoOutline::TooLarge));
        }
    }

    /// A stick of 8 mm with 4 mm each side goes between handles that stand 42 mm apart at their
    /// ends (62 mm less 10 mm for each handle).
    #[test]
    fn a_pusher_goes_between_the_handles_of_open_nippers() {
        let nipper = Form::Nippers.outline(105, 62).unwrap();
        let pusher = Form::Stick.outline(130, 8).unwrap();
        let between = pusher.moved(270, -1_300 + 300);
        assert!(!nipper.nearer_than(&between, 40));
        assert!(nipper.bounds().nearer_than(&between.bounds(), 0));
    }
}
