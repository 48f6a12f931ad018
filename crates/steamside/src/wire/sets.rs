//! JSON of `steamside sets`.

use day::plan::Problem;
use day::sets::{Bought, Confirmed, LEVEL, Point, Purchase};
use serde_json::{Value, json};

/// One count of one kind. `confirmed` is null where no days were planned anew: of `days` days without
/// failed and wet loads, the shares on which nobody waits under the `policy` and under the
/// `planner`, who knows the whole day beforehand.
pub fn point(kind: &str, point: &Point, seed: u64, confirmed: Option<&Confirmed>) -> Value {
    let share = point.tally.share();
    json!({
        "kind": kind,
        "owned": point.owned,
        "share": places(share.share),
        "low": places(share.low),
        "high": places(share.high),
        "level": LEVEL,
        "days": point.tally.days,
        "seed": seed,
        "waiting_a_day": places(point.tally.waiting_a_day()),
        "confirmed": confirmed.map(|c| json!({
            "days": c.days,
            "policy": places(f64::from(c.policy) / f64::from(c.days.max(1))),
            "planner": places(f64::from(c.planner) / f64::from(c.days.max(1))),
        })),
    })
}

/// One purchase. `share`, `low` and `high` are good days gained, as a share of all days; the rest
/// is a year's.
pub fn bought(problem: &Problem, bought: &Bought) -> Value {
    let (what, kind, minutes) = match bought.purchase {
        Purchase::Set(kind) => ("set", problem.kinds.get(kind).map(|k| &k.id), None),
        Purchase::Machine => ("machine", None, None),
        Purchase::Lunch(minutes) => ("lunch", None, Some(minutes)),
    };
    json!({
        "one_more": what,
        "kind": kind,
        "minutes": minutes,
        "share": places(bought.gain.share),
        "low": places(bought.gain.low),
        "high": places(bought.gain.high),
        "level": LEVEL,
        "days_a_year": places(bought.days_a_year),
        "clients_a_year": places(bought.clients_a_year),
        "price": bought.price,
        "saved_a_year": places(bought.saved_a_year),
        "pays_back_years": bought.pays_back_years.map(places),
    })
}

/// Six places: a day in a million still shows.
fn places(value: f64) -> f64 {
    // Adding nothing turns a minus nothing into nothing.
    (value * 1e6).round() / 1e6 + 0.0
}
