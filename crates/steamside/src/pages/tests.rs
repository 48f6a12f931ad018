//! What holds for every page, in every language.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)] // tests may stop at once

mod counter_screens;
mod day_screens;
mod door_screens;
mod folder_screens;
mod loading_screens;
mod loading_told;
mod made_up;
mod markup;
mod pictures;
mod practice_screens;
mod screens;
mod upkeep_screens;
mod upkeep_told;
mod wall_screens;

use super::frame::{LIVE, SCRIPT, STYLE};
use super::{folder, kept, wall, week};
use crate::words::Language;
pub use made_up::{ctx, id, machine_row};
use markup::{Tag, tags, visible};
pub use screens::screens;
use std::collections::BTreeSet;

/// Style sheets and scripts; the last three keep what is tapped while the box cannot be reached.
const ASSETS: [&str; 10] = [
    week::STYLE,
    folder::STYLE,
    STYLE,
    SCRIPT,
    LIVE,
    super::chair::SCRIPT,
    wall::STYLE,
    kept::WORKER,
    kept::OUTBOX,
    kept::SCRIPT,
];

/// Claims that nobody has measured; put together from pieces, so that this file holds none.
const CLAIMS: [&str; 4] = [
    concat!("ster", "il"),
    concat!("ester", "il"),
    concat!("est", "éril"),
    concat!("vô ", "trùng"),
];

/// Runs a check over every page of every language.
fn each(check: impl Fn(&str, &[Tag], &str)) {
    for language in Language::ALL {
        for (name, html) in screens(language) {
            check(&format!("{name} {}", language.code()), &tags(&html), &html);
        }
    }
}

#[test]
fn no_page_claims_what_nobody_measured() {
    each(|page, _, html| {
        let mut text = html.to_lowercase();
        // Who published a limit is named as they call themselves.
        for limit in release::limits::TABLE {
            text = text.replace(&limit.source.to_lowercase(), "");
        }
        assert!(CLAIMS.iter().all(|claim| !text.contains(claim)), "{page}");
        assert!(!text.contains("lethal"), "{page}");
    });
}

#[test]
fn a_page_is_marked_with_its_language() {
    for language in Language::ALL {
        for (name, html) in screens(language) {
            let tags = tags(&html);
            let root = tags.iter().find(|tag| tag.name == "html").unwrap();
            assert_eq!(root.get("lang"), Some(language.code()), "{name}");
        }
    }
}

#[test]
fn every_act_has_an_id_of_its_own_and_a_way_back() {
    each(|page, tags, _| {
        let mut acts = BTreeSet::new();
        let forms = tags.iter().enumerate().filter(|(_, tag)| tag.name == "form");
        for (at, form) in forms {
            let end = at + tags[at..].iter().position(|tag| tag.name == "/form").unwrap();
            let field = |name: &str| {
                tags[at..end]
                    .iter()
                    .find(|tag| tag.get("name") == Some(name))
                    .and_then(|tag| tag.get("value"))
            };
            let Some(action) = form.get("action").filter(|action| action.starts_with("/act/"))
            else {
                continue;
            };
            let act = field("act").unwrap_or_else(|| panic!("{page}: {action} has no act"));
            assert_eq!(act.len(), 32, "{page}: {action}");
            assert!(acts.insert(act.to_owned()), "{page}: two forms share the act {act}");
            assert!(field("back").is_some_and(|back| back.starts_with('/')), "{page}: {action}");
            assert_eq!(form.get("method"), Some("post"), "{page}: {action}");
        }
    });
}

#[test]
fn every_control_has_a_name() {
    each(|page, tags, _| {
        let labelled: BTreeSet<&str> = tags.iter().filter_map(|tag| tag.get("for")).collect();
        let mut in_label = false;
        for (at, tag) in tags.iter().enumerate() {
            match tag.name.as_str() {
                "label" => in_label = true,
                "/label" => in_label = false,
                "input" | "select" if tag.get("type") != Some("hidden") => {
                    let by_id = tag.get("id").is_some_and(|id| labelled.contains(id));
                    assert!(
                        by_id || in_label || tag.get("aria-label").is_some(),
                        "{page}: {tag:?}"
                    );
                }
                "button" | "a" | "summary" => {
                    let text = visible(tags, at);
                    assert!(!text.is_empty() || tag.get("aria-label").is_some(), "{page}: {tag:?}");
                }
                _ => {}
            }
        }
    });
}

#[test]
fn ids_are_unique_and_every_label_finds_its_field() {
    each(|page, tags, _| {
        let mut ids = BTreeSet::new();
        for id in tags.iter().filter_map(|tag| tag.get("id")) {
            assert!(ids.insert(id), "{page}: {id} twice");
        }
        for target in tags.iter().filter_map(|tag| tag.get("for")) {
            assert!(ids.contains(target), "{page}: no field {target}");
        }
        let shapes = tags.iter().filter(|tag| tag.name == "use").filter_map(|tag| tag.get("href"));
        for shape in shapes {
            assert!(ids.contains(shape.trim_start_matches('#')), "{page}: no shape {shape}");
        }
    });
}

#[test]
fn a_state_is_shape_and_word() {
    each(|page, tags, _| {
        for (at, tag) in tags.iter().enumerate() {
            let class = tag.get("class").unwrap_or_default();
            // An undone start is struck through; that is its shape.
            if class.starts_with("state state-") || class.starts_with("state outcome-") {
                assert_eq!(tags[at + 1].name, "svg", "{page}: {class}");
                assert!(!visible(tags, at).is_empty(), "{page}: {class}");
            }
        }
    });
}

#[test]
fn no_key_is_shown_in_place_of_its_line() {
    each(|page, tags, _| {
        for text in tags.iter().map(|tag| tag.text.trim()) {
            let key = text.contains('-')
                && text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
            assert!(!key, "{page}: {text}");
            assert!(!text.contains("{$"), "{page}: {text}");
        }
    });
}

#[test]
fn nothing_is_loaded_from_elsewhere() {
    each(|page, tags, _| {
        for tag in tags {
            for name in ["src", "href", "action"] {
                let target = tag.get(name).unwrap_or("/");
                // The box's own secure address may be walked to, and nothing is loaded from it.
                let secure = tag.name == "a" && target.starts_with("https://10.0.0.7:7443");
                // A way that a person may go: the practice book, at another port of this computer.
                if name == "href" && tag.name == "a" && target == practice_screens::OPEN_AT {
                    continue;
                }
                assert!(
                    secure || (target.starts_with(['/', '#', '?']) && !target.starts_with("//")),
                    "{page}: {target}"
                );
            }
            assert!(tag.get("style").is_none() && tag.get("onclick").is_none(), "{page}: {tag:?}");
        }
    });
    for asset in ASSETS {
        assert!(!asset.contains("http") && !asset.contains("@import") && !asset.contains("url("));
    }
}

/// A line on a key is read at a glance.
#[test]
fn a_key_says_it_in_sixty_characters() {
    each(|page, tags, _| {
        for (at, tag) in tags.iter().enumerate() {
            if tag.name == "button" && tag.get("name") != Some("sign") {
                let text = visible(tags, at);
                assert!(text.chars().count() <= 60, "{page}: {text}");
            }
        }
    });
}

/// 200 kB for everything that a tablet loads is the salon's target; most of a page is the same
/// from tap to tap, and none is compressed here.
#[test]
fn a_page_is_light() {
    let assets = ASSETS.map(str::len);
    assert!(assets.iter().sum::<usize>() < 86_000, "{assets:?}");
    each(|page, _, html| assert!(html.len() < 120_000, "{page}: {}", html.len()));
}

fn colour(token: &str) -> [f64; 3] {
    let both = [STYLE, wall::STYLE].join("\n");
    let rest = both.split(&format!("--{token}: #")).nth(1).unwrap();
    let part = |at: usize| f64::from(u8::from_str_radix(&rest[at..at + 2], 16).unwrap()) / 255.0;
    [part(0), part(2), part(4)]
}

/// Relative luminance and contrast as WCAG 2.2 defines them ("relative luminance",
/// "contrast ratio", w3.org/TR/WCAG22).
fn contrast(one: &str, other: &str) -> f64 {
    let luminance = |token: &str| {
        let [r, g, b] = colour(token)
            .map(|c| if c <= 0.040_45 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn colours_stand_apart() {
    // Black on white is 21:1 by the definition.
    assert!((contrast("white", "white") - 1.0).abs() < 1e-9);
    for (text, ground, least) in [
        ("ink", "paper", 7.0),
        ("ink", "white", 7.0),
        ("ink", "amber-tint", 7.0),
        ("ink", "amber-fill", 7.0),
        ("ink", "moss-tint", 7.0),
        ("white", "brick", 7.0),
        ("brick", "white", 7.0),
        ("slate", "paper", 4.5),
        ("slate", "white", 4.5),
        ("slate", "amber-tint", 4.5),
        ("slate", "moss-tint", 4.5),
        ("clay", "clay-tint", 4.5),
        ("sea", "sea-tint", 4.5),
        ("sand", "sand-tint", 4.5),
        ("plum", "plum-tint", 4.5),
        ("amber", "amber-tint", 4.5),
        ("moss", "moss-tint", 4.5),
        ("line", "paper", 3.0),
        ("line", "white", 3.0),
        ("focus", "paper", 3.0),
        ("focus", "white", 3.0),
        ("focus", "amber-tint", 3.0),
        ("plum", "white", 3.0),
        ("brick", "moss-tint", 4.5),
        ("ink", "plum-tint", 7.0),
        ("plum", "plum-tint", 4.5),
        ("white", "slate", 4.5),
        // The wall is read from four metres.
        ("wall-text", "wall", 7.0),
        ("wall-text", "wall-card", 7.0),
        ("wall-moss", "wall", 7.0),
        ("wall-clay", "wall", 7.0),
        ("wall-amber", "wall", 7.0),
        ("wall-amber", "wall-card", 7.0),
        ("wall-plum", "wall-card", 7.0),
        ("wall-brick", "wall-card", 7.0),
        ("wall-sea", "wall-card", 7.0),
    ] {
        let found = contrast(text, ground);
        assert!(found >= least, "{text} on {ground}: {found:.2} of {least}");
    }
}

#[test]
fn a_run_without_proof_offers_no_release() {
    for language in Language::ALL {
        for (name, html) in screens(language) {
            let tags = tags(&html);
            let releases = tags
                .iter()
                .any(|tag| tag.get("name") == Some("dry") && tag.get("value") == Some("all"));
            // What is copied from paper is refused by the act where the run has no proof.
            let expected = matches!(name, "run-good" | "run-read-off" | "later-look");
            assert_eq!(releases, expected, "{name}");
        }
    }
}

#[test]
fn a_stop_is_said_at_once() {
    let stops = screens(Language::Vi).into_iter().filter(|(name, _)| name.starts_with("stop"));
    for (name, html) in stops {
        let tags = tags(&html);
        let alert = tags.iter().find(|tag| tag.get("role") == Some("alert")).unwrap();
        assert_eq!(alert.get("aria-live"), Some("assertive"), "{name}");
        assert!(html.contains("KHÔNG DÙNG"), "{name}");
    }
}

#[test]
fn numbers_read_off_a_display_are_never_filled_in() {
    for (name, html) in screens(Language::En) {
        for tag in tags(&html) {
            if ["lowest", "minutes", "seconds", "pressure"]
                .contains(&tag.get("name").unwrap_or_default())
            {
                assert_eq!(tag.get("value"), None, "{name}: {tag:?}");
            }
        }
    }
}
