//! Our own shapes, drawn once in a page and used by name.
//!
//! Every state has a shape of its own, so that it is known without its colour and without reading.
//! None is a triangle, a plain circle or a slashed circle: those outlines belong to safety signs
//! and stand here only on the hot, sharp and glove signs. All are drawn in a box of 48 with a line
//! of 3.5, and can be drawn by hand or printed at 6 mm.

use load::SetState;
use maud::{Markup, PreEscaped, html};
use release::verdict::Outcome;

/// A shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs)] // each is the drawing of the word that it is named after
pub enum Shape {
    Bowl,
    Jar,
    Waves,
    Drop,
    Envelope,
    Drum,
    Hourglass,
    House,
    Tray,
    OpenEnvelope,
    Palm,
    Away,
    Retired,
    Missing,
    Plateau,
    BrokenPlateau,
    Tape,
    Chair,
    Brush,
    Basin,
    Bag,
    Hot,
    Sharp,
    Gloves,
}

impl Shape {
    /// All of them.
    pub const ALL: [Self; 24] = [
        Self::Bowl,
        Self::Jar,
        Self::Waves,
        Self::Drop,
        Self::Envelope,
        Self::Drum,
        Self::Hourglass,
        Self::House,
        Self::Tray,
        Self::OpenEnvelope,
        Self::Palm,
        Self::Away,
        Self::Retired,
        Self::Missing,
        Self::Plateau,
        Self::BrokenPlateau,
        Self::Tape,
        Self::Chair,
        Self::Brush,
        Self::Basin,
        Self::Bag,
        Self::Hot,
        Self::Sharp,
        Self::Gloves,
    ];

    /// The shape of a state.
    pub const fn of_state(state: SetState) -> Self {
        match state {
            SetState::Used => Self::Bowl,
            SetState::Soaking => Self::Jar,
            SetState::Washed => Self::Waves,
            SetState::Disinfected => Self::Drop,
            SetState::Bagged => Self::Envelope,
            SetState::InMachine => Self::Drum,
            SetState::ToCheck => Self::Hourglass,
            SetState::Ready => Self::House,
            SetState::UseNow => Self::Tray,
            SetState::Opened => Self::OpenEnvelope,
            SetState::SetAside => Self::Palm,
            SetState::Away => Self::Away,
            SetState::Retired => Self::Retired,
            SetState::Missing => Self::Missing,
        }
    }

    /// The shape of what a record proves; an hourglass where nothing is known yet.
    pub const fn of_outcome(outcome: Option<Outcome>) -> Self {
        match outcome {
            Some(Outcome::Lethal | Outcome::LeakPass) => Self::Plateau,
            Some(Outcome::NotLethal | Outcome::LeakFail) => Self::Palm,
            Some(Outcome::CannotTell) => Self::BrokenPlateau,
            None => Self::Hourglass,
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::Bowl => "g-bowl",
            Self::Jar => "g-jar",
            Self::Waves => "g-waves",
            Self::Drop => "g-drop",
            Self::Envelope => "g-envelope",
            Self::Drum => "g-drum",
            Self::Hourglass => "g-hourglass",
            Self::House => "g-house",
            Self::Tray => "g-tray",
            Self::OpenEnvelope => "g-open",
            Self::Palm => "g-palm",
            Self::Away => "g-away",
            Self::Retired => "g-retired",
            Self::Missing => "g-missing",
            Self::Plateau => "g-plateau",
            Self::BrokenPlateau => "g-broken",
            Self::Tape => "g-tape",
            Self::Chair => "g-chair",
            Self::Brush => "g-brush",
            Self::Basin => "g-basin",
            Self::Bag => "g-bag",
            Self::Hot => "g-hot",
            Self::Sharp => "g-sharp",
            Self::Gloves => "g-gloves",
        }
    }

    const fn drawing(self) -> &'static str {
        match self {
            Self::Bowl => r#"<path d="M4 16h40"/><path d="M9 16c1 14 6 20 15 20s14-6 15-20"/>"#,
            Self::Jar => {
                r#"<path d="M13 6h22M15 12h18"/><path d="M13 12v28c0 2 1 3 3 3h16c2 0 3-1 3-3V12"/><path d="M13 25c4-3 7 3 11 0s7 3 11 0"/>"#
            }
            Self::Waves => {
                r#"<path d="M4 14c5-6 10 6 15 0s10 6 15 0 7 1 10 1"/><path d="M4 25c5-6 10 6 15 0s10 6 15 0 7 1 10 1"/><path d="M4 36c5-6 10 6 15 0s10 6 15 0 7 1 10 1"/>"#
            }
            Self::Drop => {
                r#"<path d="M24 4c8 11 13 17 13 25a13 13 0 0 1-26 0C11 21 16 15 24 4z"/><path d="M18 29l5 5 8-9"/>"#
            }
            Self::Envelope => {
                r#"<path d="M6 8h26l10 10v22H6z"/><path d="M32 8v10h10"/><path d="M12 32h18M12 25h12"/>"#
            }
            Self::Drum => {
                r#"<circle cx="24" cy="24" r="18" stroke-width="6"/><path d="M15 20h18M15 28h18"/>"#
            }
            Self::Hourglass => {
                r#"<path d="M10 5h28M10 43h28"/><path d="M13 5c0 10 9 14 11 19-2 5-11 9-11 19M35 5c0 10-9 14-11 19 2 5 11 9 11 19"/><path d="M19 38l5-5 5 5z" fill="currentColor"/>"#
            }
            Self::House => {
                r#"<path d="M5 23L24 6l19 17"/><path d="M10 20v22h28V20"/><path d="M16 30l6 6 11-12"/>"#
            }
            Self::Tray => {
                r#"<path d="M4 38h40"/><path d="M9 38a15 15 0 0 1 30 0"/><path d="M24 23v-5M20 14h8"/><path d="M24 29v6l4 0"/>"#
            }
            Self::OpenEnvelope => {
                r#"<path d="M6 20v22h36V20"/><path d="M6 20l5-6 5 5 5-9 6 8 5-6 5 7 5 1"/><path d="M13 34h16"/>"#
            }
            Self::Palm => {
                r#"<path d="M15 3h18l12 12v18L33 45H15L3 33V15z"/><path d="M16 27V17a2.2 2.2 0 0 1 4.4 0v-4a2.2 2.2 0 0 1 4.4 0v3a2.2 2.2 0 0 1 4.4 0v3a2.2 2.2 0 0 1 4.4 0v10c0 6-4 9-9 9-6 0-8-3-11-9-1-3 2-4 3-2z" fill="currentColor" stroke-width="1.5"/>"#
            }
            Self::Away => r#"<path d="M26 8H8v32h18"/><path d="M20 24h22M34 16l8 8-8 8"/>"#,
            Self::Retired => {
                r#"<path d="M6 6h26l10 10v26H6z"/><path d="M15 18l18 16M33 18L15 34"/>"#
            }
            Self::Missing => {
                r#"<path d="M6 6h36v36H6z" stroke-dasharray="5 5"/><path d="M18 19c0-8 12-8 12 0 0 5-6 5-6 10"/><path d="M24 35v1"/>"#
            }
            Self::Plateau => {
                r#"<path d="M3 41h6l7-26h18l5 26h6"/><path d="M11 6h28" stroke-dasharray="4 4"/><path d="M19 28l5 5 8-10"/>"#
            }
            Self::BrokenPlateau => {
                r#"<path d="M3 43h7l4-13M34 30l4 13h7"/><path d="M15 16c0-15 18-15 18-2 0 9-9 8-9 18"/><path d="M24 41v1"/>"#
            }
            Self::Tape => {
                r#"<path d="M8 5h32v38l-5-4-5 4-6-4-6 4-5-4-5 4z"/><path d="M15 14h18M15 22h18M15 30h10"/>"#
            }
            Self::Chair => {
                r#"<path d="M15 5c-1 8 0 15 2 20h17"/><path d="M17 25l-2 8h21"/><path d="M25 33v9M16 43h18"/>"#
            }
            Self::Brush => {
                r#"<path d="M24 3v17"/><path d="M11 20h26v9H11z"/><path d="M14 29v15M24 29v15M34 29v15"/>"#
            }
            Self::Basin => {
                r#"<path d="M3 18h42l-5 22H8z"/><path d="M9 27c5-5 8 4 13 0s8 4 13 0 3 0 4 1"/><path d="M15 4v8M24 4v8M33 4v8"/>"#
            }
            Self::Bag => r#"<path d="M9 17h30l4 26H5z"/><path d="M16 24V14c0-11 16-11 16 0v10"/>"#,
            Self::Hot => {
                r##"<path d="M24 4L46 43H2z" fill="#F7C600" stroke="#16242B"/><path d="M13 36h22" stroke="#16242B"/><path d="M17 31c-3-4 3-5 0-9M24 31c-3-5 3-6 0-12M31 31c-3-4 3-5 0-9" stroke="#16242B" stroke-width="2.5"/>"##
            }
            Self::Sharp => {
                r##"<path d="M24 4L46 43H2z" fill="#F7C600" stroke="#16242B"/><path d="M14 37l18-18 2 2-8 12z" fill="#16242B" stroke="#16242B" stroke-width="1.5"/>"##
            }
            Self::Gloves => {
                r##"<circle cx="24" cy="24" r="21" fill="#0B4F9E" stroke="#0B4F9E"/><path d="M18 40V28l-4-6c-1-3 2-4 4-2l2 2V11c0-3 4-3 4 0v-1c0-3 4-3 4 0v1c0-2 4-2 4 1v16c0 3-2 4-2 6v6z" fill="#fff" stroke="none"/>"##
            }
        }
    }

    /// The shape in the page. It says nothing to a screen reader: the word beside it does.
    pub fn draw(self) -> Markup {
        html! {
            svg class="shape" viewBox="0 0 48 48" aria-hidden="true" focusable="false" {
                use href=(format!("#{}", self.name())) {}
            }
        }
    }
}

/// All shapes, once a page.
pub fn sheet() -> Markup {
    html! {
        svg class="sheet" aria-hidden="true" focusable="false" {
            @for shape in Shape::ALL {
                symbol id=(shape.name()) viewBox="0 0 48 48" fill="none" stroke="currentColor"
                    stroke-width="3.5" stroke-linecap="round" stroke-linejoin="round" {
                    (PreEscaped(shape.drawing()))
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn no_two_states_share_a_shape() {
        let shapes: HashSet<_> =
            SetState::ALL.into_iter().map(|state| Shape::of_state(state).name()).collect();
        assert_eq!(shapes.len(), SetState::ALL.len());
    }

    #[test]
    fn every_shape_stands_on_the_sheet_once() {
        let sheet = sheet().into_string();
        for shape in Shape::ALL {
            assert_eq!(sheet.matches(&format!("id=\"{}\"", shape.name())).count(), 1);
        }
    }
}
