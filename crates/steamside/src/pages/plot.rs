//! The trace of a run, drawn: temperature with its band and the saturation temperature of the
//! pressure, the pressure below, and where each reason of the verdict lies.

use super::when;
use crate::web::Ctx;
use cycle::record::Samples;
use cycle::steam;
use maud::{Markup, html};
use std::fmt::Write as _;

/// Band above the set temperature, in K (EN 13060 and EN 285 ask for no more than 3 K above it;
/// from memory).
const BAND_K: f64 = 3.0;

/// What is drawn.
#[derive(Debug, Clone, Copy)]
pub struct Trace<'a> {
    /// The samples.
    pub samples: &'a Samples,
    /// Set temperature, °C.
    pub set_c: Option<f64>,
    /// Where each reason of the verdict lies, seconds from and to, in the order of the list.
    pub reasons: &'a [(usize, f64, f64)],
}

/// A field of the drawing: where on the paper, and which values.
#[derive(Debug, Clone, Copy)]
struct Field {
    left: f64,
    top: f64,
    wide: f64,
    high: f64,
    t: (f64, f64),
    v: (f64, f64),
}

impl Field {
    fn x(&self, t: f64) -> f64 {
        let share = (t - self.t.0) / (self.t.1 - self.t.0).max(1e-9);
        self.left + self.wide * share.clamp(0.0, 1.0)
    }

    fn y(&self, v: f64) -> f64 {
        let share = (v - self.v.0) / (self.v.1 - self.v.0).max(1e-9);
        self.top + self.high * (1.0 - share.clamp(0.0, 1.0))
    }

    /// The path of a series. At most two points a column of the paper, its lowest and its
    /// highest, so that a dip of one sample is drawn however long the run was.
    fn path(&self, times: &[f64], values: &[f64], columns: usize) -> String {
        let mut path = String::new();
        let mut put = |t: f64, v: f64| {
            let letter = if path.is_empty() { 'M' } else { 'L' };
            // Writing to a string cannot fail.
            let _done = write!(path, "{letter}{:.1} {:.1}", self.x(t), self.y(v));
        };
        let count = times.len().min(values.len());
        let step = count.div_ceil(columns.max(1)).max(1);
        for from in (0..count).step_by(step) {
            let column = from..(from + step).min(count);
            let by = |a: &usize, b: &usize| values[*a].total_cmp(&values[*b]);
            let known = || column.clone().filter(|i| values[*i].is_finite());
            if let (Some(low), Some(high)) = (known().min_by(by), known().max_by(by)) {
                put(times[low.min(high)], values[low.min(high)]);
                if low != high {
                    put(times[low.max(high)], values[low.max(high)]);
                }
            }
        }
        path
    }
}

fn ends(values: &[f64]) -> Option<(f64, f64)> {
    let known = values.iter().copied().filter(|value| value.is_finite());
    let low = known.clone().reduce(f64::min)?;
    Some((low, known.reduce(f64::max)?))
}

impl Trace<'_> {
    fn times(&self) -> Option<(f64, f64)> {
        Some((*self.samples.t_s.first()?, *self.samples.t_s.last()?))
    }

    fn saturation(&self) -> Vec<f64> {
        self.samples.press_kpa.iter().map(|kpa| steam::tsat(*kpa)).collect()
    }

    /// Drawn small: the shape of the run, its band on top. No figures, the sentence beside it has
    /// them.
    pub fn small(&self, ctx: &Ctx) -> Markup {
        let Some(t) = self.times() else {
            return html! {};
        };
        let top = self.set_c.map_or(140.0, |set| set + BAND_K + 4.0);
        let field = Field { left: 0.0, top: 0.0, wide: 300.0, high: 90.0, t, v: (0.0, top) };
        html! {
            svg class="trace small" viewBox="0 0 300 90" preserveAspectRatio="none" role="img"
                aria-label=(ctx.words().say("trace-title")) {
                (self.band(&field))
                path class="t-temp" d=(field.path(&self.samples.t_s, &self.samples.temp_c, 300)) {}
            }
        }
    }

    /// Drawn large, with scales.
    pub fn large(&self, ctx: &Ctx) -> Markup {
        let Some(t) = self.times() else {
            return html! {};
        };
        let words = ctx.words();
        let upper = self.set_c.map_or(140.0, |set| set + 10.0);
        let upper = ends(&self.samples.temp_c).map_or(upper, |(_, high)| upper.max(high + 2.0));
        let temp = Field { left: 90.0, top: 16.0, wide: 780.0, high: 300.0, t, v: (0.0, upper) };
        let pressed = ends(&self.samples.press_kpa);
        let tall = if pressed.is_some() { 560 } else { 380 };
        html! {
            div class="scroll" tabindex="0" role="group" aria-label=(words.say("trace-title")) {
                svg class="trace large" viewBox=(format!("0 0 900 {tall}")) role="img"
                    aria-label=(words.say("trace-title")) {
                    (self.band(&temp))
                    (scale(&temp, 20.0, "°C"))
                    @if pressed.is_some() {
                        path class="t-sat" d=(temp.path(&self.samples.t_s, &self.saturation(), 400)) {}
                    }
                    path class="t-temp" d=(temp.path(&self.samples.t_s, &self.samples.temp_c, 400)) {}
                    (self.marks(&temp))
                    @if let Some((_, high)) = pressed {
                        @let press = Field { top: 350.0, high: 160.0, v: (0.0, high.max(110.0) * 1.05), ..temp };
                        (scale(&press, 100.0, "kPa"))
                        path class="t-press" d=(press.path(&self.samples.t_s, &self.samples.press_kpa, 400)) {}
                        (time_scale(&press))
                    } @else {
                        (time_scale(&temp))
                    }
                }
            }
            ul class="trace-key" {
                li { span class="key-temp" {} (words.say("trace-temperature")) }
                @if pressed.is_some() {
                    li { span class="key-sat" {} (words.say("trace-saturation")) }
                    li { span class="key-press" {} (words.say("trace-pressure")) }
                }
                @if let Some(set) = self.set_c {
                    li {
                        span class="key-band" {}
                        (words.tell("trace-band", &[
                            ("from", format!("{set:.0}").into()),
                            ("to", format!("{:.0}", set + BAND_K).into()),
                        ]))
                    }
                }
            }
        }
    }

    fn band(&self, field: &Field) -> Markup {
        html! {
            @if let Some(set) = self.set_c {
                @let (top, bottom) = (field.y(set + BAND_K), field.y(set));
                rect class="t-band" x=(field.left) y=(format!("{top:.1}")) width=(field.wide)
                    height=(format!("{:.1}", bottom - top)) {}
            }
        }
    }

    /// The number of each reason, above where it happened.
    fn marks(&self, field: &Field) -> Markup {
        html! {
            @for (number, from, to) in self.reasons {
                @let (a, b) = (field.x(*from), field.x(*to));
                @let y = field.top + field.high - 14.0 - 26.0 * ((number - 1) % 6) as f64;
                path class="t-mark" d=(format!("M{a:.1} {y:.1}H{:.1}", b.max(a + 3.0))) {}
                text class="t-number" x=(format!("{:.1}", (a + b) / 2.0)) y=(format!("{:.1}", y - 6.0))
                    text-anchor="middle" { (number) }
            }
        }
    }
}

fn scale(field: &Field, step: f64, unit: &str) -> Markup {
    let lines = (field.v.1 / step) as usize;
    html! {
        @for line in 0..=lines {
            @let value = line as f64 * step;
            @let y = format!("{:.1}", field.y(value));
            path class="t-line" d=(format!("M{} {y}h{}", field.left, field.wide)) {}
            text class="t-text" x="82" y=(y) text-anchor="end" dominant-baseline="middle" {
                (value) @if line == lines { " " (unit) }
            }
        }
    }
}

fn time_scale(field: &Field) -> Markup {
    let span = field.t.1 - field.t.0;
    let step = [60.0, 300.0, 600.0, 1_200.0, 3_600.0, 14_400.0]
        .into_iter()
        .find(|step| span / step <= 8.0)
        .unwrap_or(86_400.0);
    let lines = (span / step) as usize;
    let y = field.top + field.high + 26.0;
    html! {
        @for line in 0..=lines {
            @let t = line as f64 * step;
            text class="t-text" x=(format!("{:.1}", field.x(field.t.0 + t))) y=(y)
                text-anchor="middle" { (when::length((t * 1_000.0) as i64)) }
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    #[test]
    fn a_dip_of_one_sample_is_drawn_in_a_long_run() {
        let times: Vec<f64> = (0..40_000).map(f64::from).collect();
        let mut values = vec![134.5; 40_000];
        values[23_457] = 100.0;
        let field = Field {
            left: 0.0,
            top: 0.0,
            wide: 100.0,
            high: 100.0,
            t: (0.0, 39_999.0),
            v: (0.0, 200.0),
        };
        let path = field.path(&times, &values, 400);
        assert!(path.contains(" 50.0"), "the dip to 100 of 200 stands at half height");
        assert!(path.matches(['M', 'L']).count() <= 800);
    }

    #[test]
    fn what_is_not_a_number_is_left_out() {
        let field =
            Field { left: 0.0, top: 0.0, wide: 10.0, high: 10.0, t: (0.0, 2.0), v: (0.0, 10.0) };
        assert_eq!(field.path(&[0.0, 1.0, 2.0], &[5.0, f64::NAN, 5.0], 10), "M0.0 5.0L10.0 5.0");
        assert_eq!(ends(&[f64::NAN]), None);
        assert_eq!(ends(&[2.0, f64::NAN, 1.0]).unwrap(), (1.0, 2.0));
    }
}
