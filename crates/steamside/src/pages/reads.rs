//! How the records of a machine read: the settings that a person may give, and the one question
//! that is put where a record leaves two readings open.

use super::parts::{self, Form};
use super::shapes::Shape;
use crate::acts;
use crate::web::Ctx;
use cycle::finding::Code;
use logbook::fact::{Judged, PressureUnit, Reads, Reference, TemperatureUnit};
use logbook::view::{Machine, Person};
use maud::{Markup, html};
use measure::RecordHash;
use measure::bounds::ALTITUDE;

/// Temperatures: the value, its word in a form, and how it is shown.
pub const TEMPERATURES: [(TemperatureUnit, &str, &str); 3] = [
    (TemperatureUnit::Celsius, "celsius", "°C"),
    (TemperatureUnit::Fahrenheit, "fahrenheit", "°F"),
    (TemperatureUnit::Kelvin, "kelvin", "K"),
];

/// Pressures, the likeliest first.
pub const PRESSURES: [(PressureUnit, &str, &str); 9] = [
    (PressureUnit::Kpa, "kPa", "kPa"),
    (PressureUnit::Bar, "bar", "bar"),
    (PressureUnit::Psi, "psi", "psi"),
    (PressureUnit::Mbar, "mbar", "mbar, hPa"),
    (PressureUnit::Mpa, "MPa", "MPa"),
    (PressureUnit::Pa, "Pa", "Pa"),
    (PressureUnit::KgfCm2, "kgf/cm2", "kg/cm²"),
    (PressureUnit::InHg, "inHg", "inHg"),
    (PressureUnit::MmHg, "mmHg", "mmHg"),
];

/// What pressures are counted from, by what the display shows with the door open; with the key of
/// the line.
pub const REFERENCES: [(Reference, &str, &str); 2] = [
    (Reference::Gauge, "gauge", "reads-gauge"),
    (Reference::Absolute, "absolute", "reads-absolute"),
];

/// What dates begin with; with the key of the line.
pub const DATES: [(bool, &str, &str); 2] =
    [(true, "day-first", "reads-day-first"), (false, "month-first", "reads-month-first")];

/// The shown form of a value.
fn shown<T: PartialEq>(list: &[(T, &str, &'static str)], value: Option<T>) -> Option<&'static str> {
    let value = value?;
    list.iter().find(|(known, ..)| *known == value).map(|(.., shown)| *shown)
}

/// All that is said of a machine's records, in one line.
pub fn told(ctx: &Ctx, reads: &Reads) -> String {
    let words = ctx.words();
    let said = [
        shown(&TEMPERATURES, reads.temperature_unit).map(str::to_owned),
        shown(&PRESSURES, reads.pressure_unit).map(str::to_owned),
        reads.pressure_reference.map(|reference| match reference {
            Reference::Gauge => words.say("reads-gauge-short"),
            Reference::Absolute => words.say("reads-absolute-short"),
        }),
        shown(&DATES, reads.day_first).map(|key| words.say(key)),
        reads.altitude_m.map(|metres| format!("{metres} m")),
    ];
    let said: Vec<String> = said.into_iter().flatten().collect();
    if said.is_empty() { words.say("reads-as-file") } else { said.join(", ") }
}

/// One choice out of a list, with a first one that says nothing.
struct Choice<'a> {
    name: &'a str,
    id: String,
    label: String,
    nothing: String,
    options: Vec<(&'static str, String)>,
    kept: Option<&'static str>,
}

impl Choice<'_> {
    fn draw(&self) -> Markup {
        html! {
            p class="field" {
                label for=(self.id) { (self.label) }
                select id=(self.id) name=(self.name) {
                    option value="" { (self.nothing) }
                    @for (word, text) in &self.options {
                        option value=(word) selected[self.kept == Some(word)] { (text) }
                    }
                }
            }
        }
    }
}

/// Every answer that there is. `nothing` is the key of what stands where none is given.
fn all_fields(ctx: &Ctx, on: &str, kept: &Reads, nothing: &str) -> Markup {
    fn options<T: Copy + PartialEq>(
        list: &[(T, &'static str, &'static str)],
        show: &dyn Fn(&str) -> String,
    ) -> Vec<(&'static str, String)> {
        list.iter().map(|(_, word, text)| (*word, show(text))).collect()
    }
    fn word<T: PartialEq>(
        list: &[(T, &'static str, &str)],
        kept: Option<T>,
    ) -> Option<&'static str> {
        let kept = kept?;
        list.iter().find(|(value, ..)| *value == kept).map(|(_, word, _)| *word)
    }
    let words = ctx.words();
    let as_it_is = |text: &str| text.to_owned();
    let say = |key: &str| words.say(key);
    let choice = |name, label: &str, options, kept| Choice {
        name,
        id: format!("{name}-{on}"),
        label: words.say(label),
        nothing: words.say(nothing),
        options,
        kept,
    };
    let altitude = format!("altitude-{on}");
    html! {
        (choice("temperature", "reads-temperature", options(&TEMPERATURES, &as_it_is),
            word(&TEMPERATURES, kept.temperature_unit)).draw())
        (choice("pressure", "reads-pressure", options(&PRESSURES, &as_it_is),
            word(&PRESSURES, kept.pressure_unit)).draw())
        (choice("reference", "reads-reference", options(&REFERENCES, &say),
            word(&REFERENCES, kept.pressure_reference)).draw())
        (choice("dates", "reads-dates", options(&DATES, &say), word(&DATES, kept.day_first)).draw())
        p class="field" {
            label for=(altitude) { (words.say("reads-altitude")) }
            input type="number" id=(altitude) name="altitude" step="1" min=(ALTITUDE.least)
                max=(ALTITUDE.most) value=[kept.altitude_m];
        }
    }
}

/// The settings of a machine, folded.
pub fn settings(ctx: &Ctx, machine: &Machine, people: &[Person]) -> Markup {
    let words = ctx.words();
    html! {
        details {
            summary { (words.tell("reads-title", &[("what", told(ctx, &machine.reads).into())])) }
            p { (words.say("reads-how")) }
            (Form::new("machine-reads", &machine.machine.to_string()).draw(ctx, &html! {
                (parts::hidden("machine", machine.machine))
                (parts::hidden("whole", "yes"))
                (all_fields(ctx, &machine.number.to_string(), &machine.reads, "reads-as-file"))
                (parts::sign_line(ctx, people, &words.say("reads-asks")))
            }))
        }
    }
}

/// A verdict that could not tell how the record reads, and who can answer.
pub struct Question<'a> {
    /// The verdict.
    pub judged: &'a Judged,
    /// The machines that may have written the record.
    pub machines: &'a [Machine],
    /// The record, where no run has claimed it.
    pub unclaimed: Option<(RecordHash, u32)>,
    /// Who may sign.
    pub people: &'a [Person],
}

impl Question<'_> {
    /// The question in one sentence, with what to answer; nothing where nothing is open.
    pub fn draw(&self, ctx: &Ctx) -> Markup {
        let words = ctx.words();
        if !acts::is_open_question(self.judged) || self.machines.is_empty() {
            return html! {};
        }
        let has = |code| self.judged.reasons.iter().any(|reason| reason.code == code);
        let (units, gauge) = (has(Code::UnitUnclear), has(Code::GaugeAsAbsolute));
        html! {
            section class="card turn" {
                h2 { (Shape::Tape.draw()) span { (words.say("ask-title")) } }
                @if units {
                    p class="fact" { (words.say("ask-units")) }
                    (self.form(ctx, &all_fields(ctx, "asked", &Reads::default(), "not-known")))
                } @else if gauge {
                    p class="fact" { (words.say("ask-gauge")) }
                    (self.form(ctx, &door_open(ctx)))
                } @else {
                    p class="fact" { (words.say("ask-set")) }
                }
            }
        }
    }

    fn form(&self, ctx: &Ctx, fields: &Markup) -> Markup {
        let words = ctx.words();
        Form::new("machine-reads", "asked").draw(ctx, &html! {
            @if let [only] = self.machines {
                (parts::hidden("machine", only.machine))
            } @else {
                p class="field" {
                    label for="asked-machine" { (words.say("ask-which")) }
                    select id="asked-machine" name="machine" required {
                        option value="" { (words.say("not-known")) }
                        @for machine in self.machines {
                            option value=(machine.machine) {
                                (words.tell("machine-name", &[("machine", machine.number.to_string().into())]))
                            }
                        }
                    }
                }
            }
            @if let Some((record, cycle)) = self.unclaimed {
                (parts::hidden("record", record))
                (parts::hidden("cycle", cycle))
            }
            (fields)
            p { (words.say("ask-kept")) }
            (parts::sign_line(ctx, self.people, &words.say("reads-asks")))
        })
    }
}

/// The two answers to what the pressure shows with the door open.
fn door_open(ctx: &Ctx) -> Markup {
    html! {
        fieldset class="choices" {
            legend { (ctx.words().say("reads-reference")) }
            @for (_, word, key) in REFERENCES {
                label {
                    input type="radio" name="reference" value=(word) required;
                    span { (ctx.words().say(key)) }
                }
            }
        }
    }
}
