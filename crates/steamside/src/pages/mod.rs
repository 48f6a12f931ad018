//! The pages: one file a screen. Each reads one consistent state of the book and draws it; the
//! drawing itself is a function of plain values.

pub mod another;
pub mod bag;
pub mod cards;
pub mod chair;
mod changes;
pub mod correct;
pub mod first;
pub mod folder;
pub mod frame;
pub mod goes_in;
pub mod hand_over;
pub mod kept;
pub mod labels;
pub mod later;
pub mod legend;
pub mod letter;
pub mod log;
pub mod machine;
pub mod meanwhile;
pub mod now;
pub mod outage;
pub mod pair;
mod parts;
pub mod plan;
mod plot;
pub mod practice;
mod proposal;
pub mod reads;
pub mod ready;
pub mod recall;
pub mod refused;
pub mod run;
mod say;
pub mod services;
pub mod sets;
pub mod setup;
mod shapes;
pub mod show;
pub mod spore_path;
pub mod spores;
pub mod start;
pub mod stations;
pub mod stop;
pub mod strip;
mod telling;
pub mod tray;
pub mod trouble;
pub mod trust;
pub mod unclaimed;
mod units;
pub mod upkeep;
pub mod visits;
pub mod wall;
pub mod wash;
pub mod ways;
pub mod week;
mod when;

pub use parts::Form;

/// A file that pages load, by its name: its kind and its bytes. All are compiled in.
pub fn asset(name: &str) -> Option<(&'static str, &'static [u8])> {
    match name {
        "steamside.css" => Some(("text/css; charset=utf-8", frame::STYLE.as_bytes())),
        "steamside.js" => Some(("text/javascript; charset=utf-8", frame::SCRIPT.as_bytes())),
        "chair.js" => Some(("text/javascript; charset=utf-8", chair::SCRIPT.as_bytes())),
        "kept.js" => Some(("text/javascript; charset=utf-8", kept::SCRIPT.as_bytes())),
        "outbox.js" => Some(("text/javascript; charset=utf-8", kept::OUTBOX.as_bytes())),
        "live.js" => Some(("text/javascript; charset=utf-8", frame::LIVE.as_bytes())),
        "week.css" => Some(("text/css; charset=utf-8", week::STYLE.as_bytes())),
        "folder.css" => Some(("text/css; charset=utf-8", folder::STYLE.as_bytes())),
        "wall.css" => Some(("text/css; charset=utf-8", wall::STYLE.as_bytes())),
        "practice.svg" => Some(("image/svg+xml", frame::PRACTICE_ICON.as_bytes())),
        "steamside.svg" => Some(("image/svg+xml", frame::ICON.as_bytes())),
        _ => None,
    }
}

#[cfg(test)]
pub mod tests;
