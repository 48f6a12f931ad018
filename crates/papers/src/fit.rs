//! Whether a text fits its place, without asking a font.
//!
//! The browser that prints may not have the fonts we name, so each character is reckoned with the
//! width of the widest usual sans-serif face. A text that fits here fits in any of them.

use crate::refuse::Unprintable;

/// Height of one line over the size of its letters: room for the double marks of Vietnamese.
pub(crate) const LINE: f64 = 1.2;

/// Where the letters stand, as a share of the line from its top.
pub(crate) const BASE: f64 = 0.95;

/// A text broken into lines, with the size at which they fit.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Fitted {
    /// Size of the letters, mm.
    pub(crate) size: f64,
    /// The lines, top first.
    pub(crate) lines: Vec<String>,
}

/// Sizes of letters between which a text may be set, mm.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sizes {
    /// Tried first.
    pub(crate) most: f64,
    /// Not undercut: then the text is refused.
    pub(crate) least: f64,
}

/// Advance widths of the printable ASCII characters from the blank on, in thousandths of the letter
/// size: the wider of DejaVu Sans 2.37 and Liberation Sans 2 (regular), rounded up, read from the
/// fonts' `hmtx` tables with a script.
#[rustfmt::skip]
const ASCII: [u16; 95] = [
    318, 401, 460, 838, 637, 951, 780, 275, 391, 391, 500, 838, 318, 361, 318, 337,
    637, 637, 637, 637, 637, 637, 637, 637, 637, 637, 337, 337, 838, 838, 838, 557,
    1016, 685, 687, 723, 771, 667, 611, 778, 752, 295, 500, 667, 558, 863, 749, 788,
    667, 788, 723, 667, 611, 732, 685, 989, 686, 667, 686, 391, 337, 391, 838, 557,
    500, 613, 635, 550, 635, 616, 353, 635, 634, 278, 278, 580, 278, 975, 634, 612,
    635, 635, 412, 521, 393, 634, 592, 818, 592, 592, 525, 637, 337, 637, 838,
];

/// An upper bound of the advance width, in units of the letter size, of a regular sans-serif. For
/// Latin letters with marks the bound covers the widest of its group in the same fonts.
pub(crate) fn advance(c: char) -> f64 {
    match c {
        ' '..='~' => f64::from(ASCII[c as usize - ' ' as usize]) / 1000.0,
        '\u{300}'..='\u{36f}' => 0.0,
        '\u{a0}' => advance(' '),
        '¡' => 0.401,
        '¿' => 0.612,
        'Æ' | 'æ' | 'Œ' | 'œ' => 1.07,
        '\u{80}'..='\u{24f}' | '\u{1e00}'..='\u{1eff}' if c.is_lowercase() => 0.72,
        '\u{80}'..='\u{24f}' | '\u{1e00}'..='\u{1eff}' if c.is_alphabetic() => 0.95,
        _ => 1.1,
    }
}

/// Width of the text at size 1.
pub(crate) fn width(text: &str) -> f64 {
    text.chars().map(advance).sum()
}

/// Breaks the text into lines and finds the largest size at which they fit the box.
///
/// # Errors
/// [`Unprintable::TooLong`] when even the least size does not fit.
pub(crate) fn fit(text: &str, (w, h): (f64, f64), sizes: Sizes) -> Result<Fitted, Unprintable> {
    const STEP: f64 = 0.05;
    let mut size = sizes.most;
    while size > sizes.least - STEP / 2.0 {
        let lines = broken(text, w / size);
        let wide = lines.iter().map(|line| width(line)).fold(0.0, f64::max);
        if wide * size <= w && lines.len() as f64 * LINE * size <= h {
            return Ok(Fitted { size, lines });
        }
        size -= STEP;
    }
    Err(Unprintable::TooLong { text: text.to_owned() })
}

/// The words of the text in lines of at most `room`; a word longer than that has its own line.
/// A no-break space holds its words together, so that day and month stay in one line, unless they
/// are together longer than a line.
pub(crate) fn broken(text: &str, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut add = |word: &str| match lines.last_mut() {
        Some(line) if width(line) + advance(' ') + width(word) <= room => {
            line.push(' ');
            line.push_str(word);
        }
        _ => lines.push(word.to_owned()),
    };
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        if width(word) <= room {
            add(word);
        } else {
            word.split('\u{a0}').for_each(&mut add);
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use proptest::prelude::*;

    /// Some widths of the two fonts, the wider of each, to a thousandth or so, picked by hand from
    /// their `hmtx` tables: a table that slipped by one place, or a bound of a group that is too
    /// small, shows here.
    const REAL: &[(char, f64)] = &[
        (' ', 0.319),
        ('.', 0.319),
        (':', 0.338),
        ('!', 0.402),
        ('?', 0.557),
        ('/', 0.338),
        ('"', 0.461),
        ('(', 0.391),
        ('-', 0.362),
        ('i', 0.278),
        ('f', 0.353),
        ('t', 0.393),
        ('r', 0.412),
        ('a', 0.613),
        ('b', 0.635),
        ('m', 0.975),
        ('w', 0.819),
        ('s', 0.521),
        ('0', 0.637),
        ('A', 0.685),
        ('G', 0.778),
        ('I', 0.296),
        ('J', 0.5),
        ('M', 0.864),
        ('O', 0.788),
        ('W', 0.989),
        ('Q', 0.788),
        ('%', 0.951),
        ('@', 1.016),
        ('&', 0.780),
        ('ư', 0.635),
        ('ơ', 0.613),
        ('đ', 0.635),
        ('Đ', 0.776),
        ('Ư', 0.859),
        ('Ơ', 0.914),
        ('ệ', 0.616),
        ('Ệ', 0.632),
        ('ñ', 0.635),
        ('Ñ', 0.749),
        ('¿', 0.612),
        ('Æ', 0.975),
        ('œ', 1.023),
        ('Œ', 1.070),
    ];

    #[test]
    fn no_usual_font_is_wider_than_reckoned() {
        const ROUNDING: f64 = 0.0015;
        for &(c, real) in REAL {
            let reckoned = advance(c);
            assert!(reckoned + ROUNDING >= real, "{c:?}: {real}, reckoned {reckoned}");
            if c.is_ascii() {
                assert!(reckoned <= real + ROUNDING, "{c:?}: {real}, reckoned {reckoned}");
            }
        }
    }

    proptest! {
        #[test]
        fn what_fits_lies_in_its_box(
            text in "[a-zA-Z0-9ệươĐ ?:.]{0,70}",
            w in 5.0..80.0_f64,
            h in 2.0..20.0_f64,
        ) {
            let sizes = Sizes { most: 4.0, least: 1.8 };
            if let Ok(fitted) = fit(&text, (w, h), sizes) {
                prop_assert!(fitted.size >= sizes.least - 0.03 && fitted.size <= sizes.most);
                for line in &fitted.lines {
                    prop_assert!(width(line) * fitted.size <= w + 1e-9);
                }
                prop_assert!(fitted.lines.len() as f64 * LINE * fitted.size <= h + 1e-9);
                let words: Vec<&str> = text.split_whitespace().collect();
                prop_assert_eq!(fitted.lines.join(" "), words.join(" "), "no word is lost");
            }
        }

        #[test]
        fn a_larger_box_never_refuses_what_a_smaller_one_took(
            text in "[a-z ]{1,50}", w in 5.0..60.0_f64, h in 2.0..20.0_f64,
        ) {
            let sizes = Sizes { most: 4.0, least: 1.8 };
            if fit(&text, (w, h), sizes).is_ok() {
                prop_assert!(fit(&text, (w + 3.0, h + 1.0), sizes).is_ok());
            }
        }
    }

    #[test]
    fn day_and_month_stay_together() {
        let sizes = Sizes { most: 2.0, least: 2.0 };
        let fitted = fit("In run 3, 28\u{a0}NOV. Look", (12.0, 9.0), sizes).unwrap();
        assert_eq!(fitted.lines, ["In run 3,", "28\u{a0}NOV.", "Look"]);
        let long = fit("28\u{a0}tháng\u{a0}11", (7.0, 9.0), sizes).unwrap();
        assert_eq!(long.lines, ["28", "tháng", "11"]);
    }

    #[test]
    fn what_does_not_fit_is_refused_with_its_text() {
        let sizes = Sizes { most: 3.0, least: 2.0 };
        let refused = fit("a sentence for a very small box", (5.0, 3.0), sizes);
        assert!(
            matches!(refused, Err(Unprintable::TooLong { text }) if text.starts_with("a sentence"))
        );
        assert_eq!(fit("ab", (50.0, 5.0), sizes).unwrap().size, 3.0);
    }
}
