//! JSON of `steamside drift`.

use cycle::drift::{Alarm, Part};
use serde_json::{Value, json};

/// One alarm, every key present. `evidence` is the natural logarithm of how much likelier the runs
/// are with the change than without; `part_share` says how sure the part is, null where no part
/// can be named.
pub fn alarm(alarm: &Alarm) -> Value {
    json!({
        "feature": alarm.figure.column(),
        "part": alarm.part.word(),
        "alarm_at_cycle": alarm.alarm_at_cycle,
        "since_cycle": alarm.since_cycle,
        "change": alarm.change(),
        "false_alarms_per_1000_runs": alarm.false_alarms_per_1000_runs,
        "evidence": tenths(alarm.evidence),
        "evidence_needed": tenths(alarm.needed),
        "part_share": (alarm.part != Part::Unclear).then(|| (alarm.part_share * 100.0).round() / 100.0),
    })
}

fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}
