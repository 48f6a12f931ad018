//! A made cycle, written in some layout and damaged: less evidence never proves more.

use crate::choices::Choices;
use crate::made::{Made, Row, cycle};
use crate::proof::{Slack, floor_s, longest_step, stands, tsat};
use crate::read::{judged, proven, sane, whole};
use crate::written::Style;
use cycle::figures::{EndsEarly, Figures};
use cycle::finding::Code;
use cycle::record::{Known, read};
use release::verdict::{Outcome, Verdict};

/// What a file came to: `None` where it was not taken for one cycle.
type Judged = Option<(Figures, Verdict)>;

/// Draws a cycle and a layout, and checks what damage does to the verdict.
pub fn run(bytes: &[u8]) {
    let mut choices = Choices::new(bytes);
    let made = cycle(&mut choices);
    let style = Style::draw(&mut choices);
    let first = answer(&made, &style, &made.rows);
    let rows = &made.rows;
    match choices.byte() % 7 {
        0 => never_better(&made, &style, &first, &rows[..choices.below(rows.len())], "cut short"),
        1 => never_better(&made, &style, &first, &without(&mut choices, rows), "rows dropped"),
        2 => in_between(&mut choices, &made, &style, &first),
        3 => same(&made, &style, &first, &repeated(&mut choices, rows), "rows repeated"),
        4 => same(&made, &style, &first, &swapped(&mut choices, rows), "rows swapped"),
        5 => noise(&mut choices, &made, &style, &first),
        _ => another(&mut choices, &made, &style, &first),
    }
}

fn answer(made: &Made, style: &Style, rows: &[Row]) -> Judged {
    let file = style.file(made, rows);
    let mut found = read(file.as_slice(), &Known::default()).ok()?;
    for record in &found {
        whole(record, file.len());
        let (figures, verdict) = judged(record);
        sane(&figures);
        if verdict.outcome == Outcome::Lethal {
            proven(record, &figures, &verdict);
        }
    }
    let record = found.pop().filter(|_| found.is_empty())?;
    let (figures, verdict) = judged(&record);
    if verdict.outcome == Outcome::Lethal {
        truly(made, style, rows, (&figures, &verdict));
    }
    Some((figures, verdict))
}

/// A lethal verdict holds for the rows that were written, not only for what was read.
fn truly(made: &Made, style: &Style, rows: &[Row], judged: (&Figures, &Verdict)) {
    let (figures, verdict) = judged;
    let (set_c, _) = figures.set_c.expect("a set temperature");
    assert!(!style.states_set || (set_c - made.set_c).abs() < 1e-6, "{set_c} °C was not set");
    let mut rows: Vec<Row> = rows.iter().map(|row| style.rounded(row, made.air_kpa)).collect();
    rows.sort_by_key(|row| row.t);
    rows.dedup_by_key(|row| row.t);
    let column = |of: fn(&Row) -> f64| rows.iter().map(of).collect::<Vec<f64>>();
    let (t, celsius, kpa) =
        (column(|row| row.t as f64), column(|row| row.celsius), column(|row| row.kpa));
    // Where nobody says the air pressure, the reader may be off by what its own test allows.
    let air = if style.gauge && !style.states_altitude { 0.6 } else { 0.1 };
    let slack = Slack { k: 0.001, saturation_k: air, s: 0.1 };
    if let Err(why) = stands([&t, &celsius, &kpa], &[], set_c, slack) {
        panic!("falsely lethal: {why} {verdict:?} {style:?}");
    }
}

/// Less of it may hide the proof, and never makes one. A record that ends while the chamber is held
/// for a second time is open for that alone: cut back to the first hold, it proves the first. And
/// where the air pressure of the place is open, the parts of a record may bound it to nothing that
/// is possible, and one of them alone to what is: what is then called lethal still has to hold for
/// the rows that were written. The same goes for a hold behind the proven one in which a sensor
/// stands still: left out, it hides nothing.
fn never_better(made: &Made, style: &Style, first: &Judged, rows: &[Row], what: &str) {
    let Some((figures, before)) = first else { return };
    let Some((_, after)) = answer(made, style, rows) else { return };
    let still = before.reasons[0].code == Code::SensorFrozen;
    if figures.ends_early == Some(EndsEarly::AtHeat) || is_air_open(style, before) || still {
        return;
    }
    assert!(
        after.outcome != Outcome::Lethal || before.outcome == Outcome::Lethal,
        "{what}: {:?} became {:?} in {style:?}",
        before.reasons,
        after.reasons
    );
}

/// Rows left out, so many that a gap stays which the gap rule knows.
fn without(choices: &mut Choices<'_>, rows: &[Row]) -> Vec<Row> {
    let from = 1 + choices.below(rows.len() - 1);
    let step = rows[1].t - rows[0].t;
    let least = 60.max(6 * step) / step + 1;
    let until = from + least as usize + choices.below(300);
    rows.iter()
        .enumerate()
        .filter(|(at, _)| *at < from || *at >= until)
        .map(|(_, row)| *row)
        .collect()
}

/// Nobody gave the altitude, and the record could not tell for that.
fn is_air_open(style: &Style, verdict: &Verdict) -> bool {
    style.gauge && !style.states_altitude && verdict.reasons[0].code == Code::UnitUnclear
}

/// Rows on the straight line between two that are there. They may move an end of the hold by less
/// than a step, which is the border that is reported, and the moment from which a pump counts as
/// having levelled off by as much; and written to the last digit a value between two may move where
/// a frozen sensor did not, and off the line that a temperature was worked out by. The mean deviation over a hold takes in the row that is new at its end:
/// so near to its limit that its last digit is the limit's own, the verdict says so.
fn in_between(choices: &mut Choices<'_>, made: &Made, style: &Style, first: &Judged) {
    let some = choices.coin();
    let mut denser = Vec::new();
    for pair in made.rows.windows(2) {
        let [a, b] = [0, 1].map(|at| style.rounded(&pair[at], made.air_kpa));
        denser.push(pair[0]);
        if !some || choices.coin() {
            let row = Row {
                t: (a.t + b.t) / 2,
                celsius: 0.5 * (a.celsius + b.celsius),
                kpa: 0.5 * (a.kpa + b.kpa),
            };
            denser.push(row);
        }
    }
    denser.extend(made.rows.last());
    let code = first.as_ref().map(|(_, verdict)| verdict.reasons[0].code);
    let moves = [Code::HoldBorder, Code::GasketLeak, Code::SensorFrozen, Code::SensorDerived];
    let mean = first.as_ref().and_then(|(figures, _)| figures.plateau?.satdev_mean_k);
    let near = mean.is_some_and(|mean| (mean.abs() - 2.0).abs() <= cycle::figures::NEAR_SATURATION_K);
    if !near && !code.is_some_and(|code| moves.contains(&code)) {
        never_better(made, style, first, &denser, "rows in between");
    }
}

fn same(made: &Made, style: &Style, first: &Judged, rows: &[Row], what: &str) {
    let Some((figures, before)) = first else { return };
    let after = answer(made, style, rows);
    let Some((again, after)) = after else { panic!("{what}: no longer one cycle, {style:?}") };
    assert_eq!(
        before.outcome, after.outcome,
        "{what}: {:?} {:?} {style:?}",
        before.reasons, after.reasons
    );
    // A doubled row may settle what a column is; where the record asks for its units, before or
    // after, figures are those of one possible reading. (Open: docs/next.md.)
    let asks = |verdict: &Verdict| verdict.reasons.iter().any(|r| r.code == Code::UnitUnclear);
    if asks(before) || asks(&after) {
        return;
    }
    assert!(
        (figures.hold_s - again.hold_s).abs() < 0.02,
        "{what}: {} {}: {:?} {:?} {style:?}",
        figures.hold_s,
        again.hold_s,
        before.reasons,
        after.reasons
    );
    assert!((figures.f0_min - again.f0_min).abs() < 1e-3 * (1.0 + figures.f0_min), "{what}: F0");
}

fn repeated(choices: &mut Choices<'_>, rows: &[Row]) -> Vec<Row> {
    let mut more = rows.to_vec();
    for _ in 0..1 + choices.below(5) {
        let at = choices.below(more.len());
        more.insert(at, more[at]);
    }
    more
}

fn swapped(choices: &mut Choices<'_>, rows: &[Row]) -> Vec<Row> {
    let mut other = rows.to_vec();
    for _ in 0..1 + choices.below(3) {
        // Neither the first row nor the last: those are where a cycle begins and ends.
        let at = 1 + choices.below(rows.len() - 3);
        other.swap(at, at + 1);
    }
    other
}

/// How far the made cycle is from every border that a verdict has.
fn clear(made: &Made, styles: &[&Style]) -> bool {
    let step_k = styles.iter().map(|style| style.step_k()).fold(0.0, f64::max);
    let step_kpa = styles.iter().map(|style| style.step_kpa()).fold(0.0, f64::max);
    let floor = floor_s(made.set_c).unwrap_or(0.0);
    let t: Vec<f64> = made.rows.iter().map(|row| row.t as f64).collect();
    let near = |celsius: f64| {
        [121.0, 132.0, 134.0].iter().any(|set| (celsius - set).abs() <= 0.3 + 1.5 * step_k)
    };
    let hot: Vec<&Row> = made.rows.iter().filter(|row| row.celsius >= made.set_c - 1.0).collect();
    let held = hot.iter().filter(|row| row.celsius >= made.set_c).count() as f64 * made.step as f64;
    let off: f64 =
        hot.iter().map(|row| row.celsius - tsat(row.kpa)).sum::<f64>() / hot.len().max(1) as f64;
    // 1 kPa is 0.16 K at 121 °C and less above it.
    let doubt = 0.2 + step_k + 0.16 * step_kpa;
    let far = |limit: f64| (off.abs() - limit).abs() > doubt;
    longest_step(&t) > 0.0
        && hot.iter().skip(1).all(|row| !near(row.celsius))
        && (held - floor).abs() > 6.0 * made.step as f64
        && far(2.0)
        && far(0.8)
        && step_k <= 0.2
        && step_kpa <= 1.0
}

/// Noise within the last digit.
fn noise(choices: &mut Choices<'_>, made: &Made, style: &Style, first: &Judged) {
    let unrest = |choices: &mut Choices<'_>, step: f64| step * choices.between(-0.5, 0.5);
    let rows: Vec<Row> = made
        .rows
        .iter()
        .map(|row| {
            let celsius = row.celsius + unrest(choices, style.step_k());
            Row { celsius, kpa: row.kpa + unrest(choices, style.step_kpa()), ..*row }
        })
        .collect();
    let Some((_, before)) = first else { return };
    let Some((_, after)) = answer(made, style, &rows) else { return };
    let flips = |a: Outcome, b: Outcome| a == Outcome::Lethal && b == Outcome::NotLethal;
    let flipped = flips(before.outcome, after.outcome) || flips(after.outcome, before.outcome);
    if clear(made, &[style]) {
        assert!(!flipped, "noise: {:?} {:?} {style:?}", before.reasons, after.reasons);
    }
}

/// How far from saturation a run may be before its figures are no longer compared, K.
const FAR_OFF_K: f64 = 3.0;

/// A run that far from saturation fails however it is read, and what nobody says is then read off
/// numbers that fit nothing: the columns where none is named, the air pressure of the place. The
/// figures shown beside the verdict may differ.
fn guesses(made: &Made, styles: &[&Style]) -> bool {
    let hot: Vec<&Row> = made.rows.iter().filter(|row| row.celsius >= made.set_c - 4.0).collect();
    let off: f64 = hot.iter().map(|row| row.celsius - tsat(row.kpa)).sum();
    off.abs() > FAR_OFF_K * hot.len() as f64
        && styles.iter().any(|s| !s.heading || s.gauge && !s.states_altitude)
}

/// The same cycle in another layout.
fn another(choices: &mut Choices<'_>, made: &Made, style: &Style, first: &Judged) {
    let mut other = Style::draw(choices);
    other.states_set = style.states_set;
    let (Some((figures, before)), Some((again, after))) = (first, answer(made, &other, &made.rows))
    else {
        return;
    };
    let unclear = [before, &after].iter().any(|verdict| {
        verdict
            .reasons
            .iter()
            .any(|reason| matches!(reason.code, Code::UnitUnclear | Code::SetUnclear))
    });
    if unclear || !clear(made, &[style, &other]) {
        return;
    }
    let said = || format!("{:?} {:?} {style:?} {other:?}", before.reasons, after.reasons);
    let flips = |a: Outcome, b: Outcome| a == Outcome::Lethal && b == Outcome::NotLethal;
    assert!(
        !flips(before.outcome, after.outcome) && !flips(after.outcome, before.outcome),
        "{}",
        said()
    );
    if guesses(made, &[style, &other]) {
        return;
    }
    assert!((figures.hold_s - again.hold_s).abs() <= 2.0 * made.step as f64 + 0.1, "{}", said());
    // F0 grows by 10 to the power of a tenth of the error.
    let share = 10_f64.powf((style.step_k() + other.step_k()) / 20.0) - 1.0;
    let off = (figures.f0_min - again.f0_min).abs();
    assert!(
        off <= 0.01 + share * figures.f0_min.max(again.f0_min),
        "{} {} {}",
        figures.f0_min,
        again.f0_min,
        said()
    );
}
