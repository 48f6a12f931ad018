#![allow(clippy::unwrap_used)] // tests may stop at once

use super::*;
use crate::fit::width;
use crate::lettering::{Caption, factor};
use load::geometry::{Outline, Rect};
use load::picture::Part;

/// English texts, and after them the ones that are two fifths longer.
fn words<'a>(long: bool, cautions: &'a [&'a str]) -> TrayWords<'a> {
    let say = |short: &'a str, longer: &'a str| if long { longer } else { short };
    TrayWords {
        id: "tray",
        title: say("What goes into machine 1", "Lo que entra hoy en la esterilizadora 1"),
        printed: say("Printed 28 NOV 2026, 14:02", "Impreso el 28 de noviembre de 2026, 14:02"),
        page: &|page, of| format!("page {page} of {of}"),
        scale: &|tenths| format!("scale 1 : {}", f64::from(tenths) / 10.0),
        bar: say(
            "50 mm. If not, print at 100 %.",
            "50 mm. Si no lo son, imprima de nuevo al 100 %.",
        ),
        picture: PictureWords {
            paper: say("paper up", "papel hacia arriba"),
            film: say("film up", "película hacia arriba"),
            over: say("lies over by 2.5 cm", "se solapa unos 2,5 cm con la de al lado"),
            fold: say("kept free", "libre para el doblez"),
            near: Some(say("door", "puerta")),
            caption: &|_, _| Some(Caption { main: "3K7P".into(), more: "manicura".into() }),
            distance: &|tenths| format!("{} mm", tenths / 10),
        },
        total: say(
            "All together 2.31 kg in 12 pouches",
            "Todo junto pesa 2,31 kg en 12 bolsas de papel",
        ),
        limit: say(
            "Limit: 3.0 kg (manual, page 21)",
            "Límite de esta máquina: 3,0 kg (su propio manual, página 21)",
        ),
        programme: say(
            "Proposed: wrapped, 134 °C, dry 20 min.",
            "Propuesta: con envoltorio, 134 °C, secado de 20 minutos. En bolsas, nada hueco.",
        ),
        cautions,
    }
}

const CAUTIONS_SHORT: [&str; 4] = [
    "The machine's own manual comes first.",
    "Hot: use tongs or heat gloves.",
    "Let it cool before you touch it.",
    "Never open it under pressure.",
];

const CAUTIONS_LONG: [&str; 4] = [
    "El manual de esta misma máquina va siempre por delante de lo que dice esta hoja.",
    "Quema: use pinzas o guantes contra el calor para sacar la bandeja y las bolsas.",
    "Deje que todo se enfríe del todo antes de tocar las bolsas o lo que hay dentro.",
    "No abra nunca la puerta de la máquina mientras quede presión en su interior.",
];

fn tray(width: i32, height: i32) -> Picture {
    let part = |role, x: i32, y: i32, width, height| {
        let outline = Outline::rectangle(width, height).unwrap().moved(x, y);
        Part { role, outline, names: Some(0) }
    };
    let half = width / 2 - 20;
    let parts = vec![
        part(Role::Tray, 0, 0, width, height),
        part(Role::Paper, 10, 10, half, height - 20),
        part(Role::Film, half + 20, 10, half, height - 20),
        part(Role::Over, half, 10, 10, height - 20),
    ];
    Picture { frame: Rect { x: 0, y: 0, width, height }, parts, distances: Vec::new() }
}

fn sheets(
    picture: &Picture,
    count: usize,
    words: &TrayWords<'_>,
) -> Result<Vec<String>, Unprintable> {
    let heading = "Bandeja 1 desde arriba";
    let mass = "Bolsas y bandeja 1,24 kg";
    let clearance = Some("12 mm libres hasta la pared");
    tray_sheet(&vec![TrayOfSheet { picture, heading, mass, clearance }; count], words)
}

/// The texts of a page that are not on a picture: where the reckoned letters lie.
fn boxes(page: &str) -> Vec<(String, Place)> {
    let number = |tag: &str, name: &str| -> f64 {
        let from = tag.split(&format!(" {name}=\"")).nth(1).unwrap();
        from.split('"').next().unwrap().parse().unwrap()
    };
    let texts = page
        .split("<text ")
        .skip(1)
        .filter(|text| text.split('>').next().is_some_and(|tag| tag.contains(" font-size")));
    texts
        .map(|text| {
            let (tag, rest) = text.split_once('>').unwrap();
            let tag = format!(" {tag}");
            let said = rest.split("</text>").next().unwrap().to_owned();
            let bold = if tag.contains("700") { Weight::Bold } else { Weight::Regular };
            let size = number(&tag, "font-size");
            let long = width(&said) * size * factor(bold);
            // Letters of Vietnamese reach a size above the line they stand on, tails a fifth below.
            let y = number(&tag, "y") - size * crate::fit::BASE;
            let place =
                Place { x: number(&tag, "x"), y, width: long, height: size * crate::fit::LINE };
            (said, place)
        })
        .collect()
}

#[test]
fn long_words_fit_and_no_text_lies_on_another() {
    let whole = Place {
        x: EDGE - 0.1,
        y: EDGE,
        width: PAGE.0 - 2.0 * EDGE + 0.2,
        height: PAGE.1 - EDGE - 3.0,
    };
    for (long, cautions) in [(false, &CAUTIONS_SHORT), (true, &CAUTIONS_LONG)] {
        for (width, height, count) in
            [(1_800, 2_850, 3), (1_800, 1_250, 3), (2_850, 1_800, 2), (900, 600, 5)]
        {
            let pages = sheets(&tray(width, height), count, &words(long, cautions)).unwrap();
            for page in &pages {
                let boxes = boxes(page);
                assert!(boxes.len() > 14, "the texts are found");
                for (at, (text, place)) in boxes.iter().enumerate() {
                    assert!(whole.holds(place), "{text:?} leaves the page: {place:?}");
                    for (other, beside) in &boxes[at + 1..] {
                        let slack = Place {
                            x: place.x + 0.01,
                            y: place.y + 0.01,
                            width: place.width - 0.02,
                            height: place.height - 0.02,
                        };
                        assert!(!slack.meets(beside), "{text:?} on {other:?} ({width}×{height})");
                    }
                }
            }
        }
    }
}

/// Scales by hand: 180 mm over 92 mm and 285 mm over 143 mm ask for a half, 285 mm across for
/// 1 : 3.5 (3.1 is no scale that a person reckons with), and 90 × 60 mm goes on as it is.
#[test]
fn the_scale_is_the_largest_that_leaves_room() {
    let check = |(width, height), count, scale: &str, pages| {
        let printed = sheets(&tray(width, height), count, &words(false, &CAUTIONS_SHORT)).unwrap();
        assert!(
            printed.iter().all(|page| page.contains(&format!(">{scale}<"))),
            "{width}×{height}"
        );
        assert_eq!(printed.len(), pages, "{width}×{height}");
    };
    check((1_800, 2_850), 1, "scale 1 : 2", 1);
    check((1_800, 2_850), 3, "scale 1 : 2", 3);
    check((1_800, 1_250), 3, "scale 1 : 2", 2);
    check((2_850, 1_800), 2, "scale 1 : 3.5", 1);
    check((900, 600), 2, "scale 1 : 1", 1);
}

#[test]
fn what_cannot_be_printed_is_refused_whole() {
    let picture = tray(1_800, 2_850);
    let good = words(false, &CAUTIONS_SHORT);
    let check = |words: &TrayWords<'_>, refused: Unprintable| {
        assert_eq!(sheets(&picture, 2, words), Err(refused));
    };
    assert_eq!(sheets(&picture, 0, &good), Err(Unprintable::Nothing));
    assert_eq!(sheets(&tray(19_000, 19_900), 1, &good).err(), None, "two metres at 1 : 25");
    let mut large = tray(19_000, 19_900);
    large.frame.height = 39_000;
    assert_eq!(sheets(&large, 1, &good), Err(Unprintable::TooLarge));
    check(&TrayWords { cautions: &[], ..good }, Unprintable::Blank { what: "the cautions" });
    check(&TrayWords { limit: " ", ..good }, Unprintable::Blank { what: "the machine's limit" });
    check(&TrayWords { id: "Tray 1", ..good }, Unprintable::Name { name: "Tray 1".to_owned() });
    let claim = concat!("est", "éril");
    check(&TrayWords { title: claim, ..good }, Unprintable::Claim { word: claim });
    check(&TrayWords { total: "2\t3", ..good }, Unprintable::NotPlain { text: "2\t3".to_owned() });
    let endless = "more than can be said ".repeat(90);
    let refused = sheets(&picture, 1, &TrayWords { programme: &endless, ..good });
    assert_eq!(refused, Err(Unprintable::TooLong { text: endless.clone() }));
    let mut outside = tray(1_800, 2_850);
    outside.frame.width = 1_700;
    assert_eq!(sheets(&outside, 1, &good), Err(Unprintable::Frame));
}
