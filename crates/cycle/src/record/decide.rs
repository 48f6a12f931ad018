//! Units of a cycle: a setting goes before the heading, the heading before physics, and physics may
//! object to both.

use super::Source;
use super::parting::Raw;
use super::physics::{CLEAR, Digest, Guess, clear, temperature_alone};
use super::settle::Around;
use super::units::{PressureUnit, Reference, TemperatureUnit, degree, pressure_words};
use crate::finding::{Code, Finding};

/// Units of a cycle, and how each was known.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Units {
    pub temperature: (TemperatureUnit, Option<Source>),
    pub pressure: Option<((PressureUnit, Source), (Reference, Source))>,
    pub findings: Vec<Finding>,
}

fn unclear(text: String) -> Finding {
    Finding { code: Code::UnitUnclear, text, at_s: None, lines: None }
}

/// Settles the units.
pub(super) fn decide(raw: &Raw, around: &Around<'_>) -> Units {
    let known = around.known;
    let said_t = source_of(known.temperature_unit, around.plan.temperature_said.temperature);
    let said_p = source_of(known.pressure_unit, around.plan.pressure_said.pressure);
    let said_r = source_of(known.pressure_reference, around.plan.pressure_said.reference);
    let digest = Digest::of(&raw.temperature, &raw.pressure);
    let (true, Some(digest)) = (around.plan.has_pressure(), digest) else {
        return without_pressure(raw, said_t);
    };
    let mut tried = PressureUnit::COMMON.to_vec();
    if let Some((unit, _)) = said_p
        && !tried.contains(&unit)
    {
        tried.push(unit);
    }
    let free = digest.guesses(&tried);
    let agrees = |g: &Guess| {
        said_t.is_none_or(|(unit, _)| unit == g.temperature)
            && said_p.is_none_or(|(unit, _)| unit == g.pressure)
            && said_r.is_none_or(|(reference, _)| reference == g.reference)
    };
    let fitting: Vec<Guess> = free.iter().copied().filter(agrees).collect();
    let objection = match (free.first(), fitting.first()) {
        (Some(best), Some(said)) => best.cost + CLEAR < said.cost,
        (Some(_), None) => true,
        (None, _) => false,
    };
    if objection {
        // Of what fits, that is taken which contradicts least: the reference alone, if it can be.
        let same_units = |g: &&Guess| {
            said_t.is_none_or(|(unit, _)| unit == g.temperature)
                && said_p.is_none_or(|(unit, _)| unit == g.pressure)
        };
        let near: Vec<Guess> = free.iter().filter(same_units).copied().collect();
        let enough = near.first().is_some_and(|g| g.cost < free[0].cost + CLEAR);
        let fits = if enough { &near } else { &free };
        return against_the_heading(fits, (said_t, said_p, said_r));
    }
    let temperature = said_t.or_else(|| clear(&fitting, |g| g.temperature).map(by_physics));
    let pressure = said_p.or_else(|| clear(&fitting, |g| g.pressure).map(by_physics));
    let reference = said_r.or_else(|| clear(&fitting, |g| g.reference).map(by_physics));
    settled(temperature, pressure, reference, around)
}

type SaidOf<T> = Option<(T, Source)>;

const fn by_physics<T: Copy>(value: T) -> (T, Source) {
    (value, Source::Physics)
}

fn source_of<T>(setting: Option<T>, heading: Option<T>) -> SaidOf<T> {
    match (setting, heading) {
        (Some(value), _) => Some((value, Source::Setting)),
        (None, Some(value)) => Some((value, Source::Header)),
        (None, None) => None,
    }
}

fn settled(
    temperature: SaidOf<TemperatureUnit>,
    pressure: SaidOf<PressureUnit>,
    reference: SaidOf<Reference>,
    around: &Around<'_>,
) -> Units {
    let mut findings = Vec::new();
    let earlier = around.earlier.filter(|units| units.findings.is_empty());
    let temperature = temperature.or_else(|| {
        let (unit, source) = earlier?.temperature;
        source.map(|source| (unit, source))
    });
    let pressure = match (pressure, reference) {
        (Some(unit), Some(reference)) => Some((unit, reference)),
        _ => earlier.and_then(|units| units.pressure),
    };
    if temperature.is_none() {
        findings.push(unclear(
            "neither the heading nor the numbers tell whether the temperatures are in °C, °F or K; they are shown as °C".to_owned(),
        ));
    }
    if pressure.is_none() {
        findings.push(unclear(
            "neither the heading nor the numbers tell in what unit the pressures are and what they are counted from; they are left out".to_owned(),
        ));
    }
    Units {
        temperature: temperature
            .map_or((TemperatureUnit::Celsius, None), |(unit, source)| (unit, Some(source))),
        pressure,
        findings,
    }
}

fn without_pressure(raw: &Raw, said: SaidOf<TemperatureUnit>) -> Units {
    let seen = temperature_alone(&raw.temperature);
    let mut findings = Vec::new();
    let temperature = match (said, seen) {
        (Some((unit, _)), Some(seen)) if unit != seen => {
            findings.push(unclear(format!(
                "the temperatures are said to be in {} and look like {}",
                degree(unit),
                degree(seen)
            )));
            (seen, Some(Source::Physics))
        }
        (Some((unit, source)), _) => (unit, Some(source)),
        (None, Some(seen)) => (seen, Some(Source::Physics)),
        (None, None) => {
            findings.push(unclear(
                "neither the heading nor the numbers tell whether the temperatures are in °C, °F or K; they are shown as °C".to_owned(),
            ));
            (TemperatureUnit::Celsius, None)
        }
    };
    Units { temperature, pressure: None, findings }
}

/// What is said cannot be so. What fits is shown, and the contradiction with it.
fn against_the_heading(
    free: &[Guess],
    said: (SaidOf<TemperatureUnit>, SaidOf<PressureUnit>, SaidOf<Reference>),
) -> Units {
    let best = free[0];
    let same_units = said.0.is_none_or(|(unit, _)| unit == best.temperature)
        && said.1.is_none_or(|(unit, _)| unit == best.pressure);
    let gauge_as_absolute = same_units
        && best.reference == Reference::Gauge
        && said.2.is_some_and(|(reference, _)| reference == Reference::Absolute);
    let finding = if gauge_as_absolute {
        Finding {
            code: Code::GaugeAsAbsolute,
            text: "the pressures are said to be absolute, but the open chamber stands at zero: they are counted from the air".to_owned(),
            at_s: None,
            lines: None,
        }
    } else {
        unclear(format!(
            "what is said about the units does not fit the numbers, which look like {} and {}",
            degree(best.temperature),
            pressure_words(best.pressure, best.reference)
        ))
    };
    let agreed = clear(free, |g| (g.temperature, g.pressure, g.reference)).is_some();
    let keep = |source: Option<Source>, same: bool| match source {
        Some(source) if same => source,
        _ => Source::Physics,
    };
    let pressure =
        (best.pressure, keep(said.1.map(|s| s.1), said.1.is_some_and(|s| s.0 == best.pressure)));
    let reference =
        (best.reference, keep(said.2.map(|s| s.1), said.2.is_some_and(|s| s.0 == best.reference)));
    let temperature = keep(said.0.map(|s| s.1), said.0.is_some_and(|s| s.0 == best.temperature));
    Units {
        temperature: (best.temperature, Some(temperature)),
        pressure: agreed.then_some((pressure, reference)),
        findings: vec![finding],
    }
}
