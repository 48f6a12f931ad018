//! What each programme of a machine can do with a load, learnt from looks, and which one to choose.

use super::kinds::Kinds;
use super::load::{DriedFor, Load};
use cycle::balance::{
    Charge, Filling, Heated, Part, Spread, Unknowns, Usual, balance, demand, run_water, specific,
};
use cycle::choose::{Air, Asked, Choice, Dry, Need, Offer, choose};
use cycle::limit::{Advice, By, Learnt, Outcome, Prior, advice, learn};
use load::Contents;
use load::chamber::{Chamber, Inside};
use logbook::book::BookError;
use logbook::fact::{AirRemoval, DayCycle, Drying, ProgrammeFigures};
use logbook::view::{DryLook, Machine, Setting, View};
use measure::MachineId;

/// Thickness of a small chamber's wall, mm, and mass of a cubic millimetre of it, g. (Assumption;
/// density of steel 304: reference table.)
const WALL_MM: f64 = 1.5;
const STEEL_G_PER_MM3: f64 = 7.9e-3;
/// Top of a pulse before the last filling, kPa absolute. (Assumption.)
const PULSE_KPA: f64 = 150.0;

/// A programme with what is known of it.
#[derive(Debug, Clone)]
pub struct Programme {
    /// As a plan knows it.
    pub cycle: DayCycle,
    /// What its manual says.
    pub figures: Setting<ProgrammeFigures>,
    /// The maker's limit for the load, grams; `None`: nobody looked it up.
    pub maker_g: Option<u32>,
    /// What the looks taught; `None` where it does not dry.
    pub learnt: Option<Learnt>,
    /// The limit in grams of the usual mix: nine of ten such machines have it between the outer two.
    pub limit_g: Option<Spread>,
    /// How much to load at most, dry.
    pub advice: Option<Advice>,
    /// Looks that could not be counted: of kinds that nobody described.
    pub left_out: u32,
}

/// A load on a machine: which programme, and what comes out.
#[derive(Debug, Clone)]
pub struct Proposal {
    /// The load.
    pub load: Load,
    /// Every programme.
    pub programmes: Vec<Programme>,
    /// Which one.
    pub choice: Choice,
    /// What comes out of the proposed one.
    pub outlook: Option<Outlook>,
    /// Somebody said how the machine gets the air out; otherwise it is taken for gravity.
    pub air_known: bool,
}

/// What is expected of a run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outlook {
    /// The chance of a wet load; `None` where it does not dry.
    pub chance_wet: Option<f64>,
    /// Water left on the load, grams.
    pub left_g: Spread,
    /// Water that the run takes, grams (about ml).
    pub water_g: Spread,
}

impl Programme {
    /// How much a plan may load, grams: what comes out dry as far as somebody vouches for it; a
    /// guess that nobody vouches for does not shrink a plan.
    pub fn most_g(&self) -> Option<u32> {
        match self.advice {
            Some(advice) if advice.by != By::Guess => Some(advice.grams),
            _ => self.maker_g,
        }
    }

    /// The charge of a load in this programme.
    fn charge(&self, load: &Load, inside: &Inside) -> Charge {
        let figures = &self.figures.value;
        load.charge(inside, figures, DriedFor::set(figures))
    }
}

/// Every programme of a machine with what the looks taught; `usual` stands in for the salon's mix
/// where no load was looked at.
pub fn programmes(
    view: &View<'_>,
    machine: MachineId,
    inside: &Inside,
    usual: &Load,
) -> Result<Vec<Programme>, BookError> {
    let day = view.machine_figures(machine)?;
    let looks = view.dry_looks(machine)?;
    let words: Vec<_> = looks.iter().flat_map(|look| &look.contents).map(|c| c.0.clone()).collect();
    let kinds = Kinds::read(view, &words)?;
    let mix: Vec<_> = looks.iter().flat_map(|look| look.contents.iter().cloned()).collect();
    let mix = Load::of_counts(&mix, &kinds);
    let mix = if mix.mass_g > 0 { &mix } else { usual };
    let mut all = Vec::new();
    for (cycle, figures) in day.value.cycles.into_iter().zip(view.programme_figures(machine)?) {
        let said_g = day.said.map(|_| cycle.max_mass_g);
        let pouched_g = figures.value.most_pouched_g;
        let open_g = figures.value.most_unwrapped_g;
        let maker_g = if cycle.wrapped { pouched_g } else { open_g }.or(said_g);
        let mut programme = Programme {
            cycle,
            figures,
            maker_g,
            learnt: None,
            limit_g: None,
            advice: None,
            left_out: 0,
        };
        learn_from(&mut programme, &looks, (inside, &kinds), mix);
        all.push(programme);
    }
    Ok(all)
}

/// Learns from the looks at this programme. What cannot be worked out stays unknown.
fn learn_from(
    programme: &mut Programme,
    looks: &[DryLook],
    (inside, kinds): (&Inside, &Kinds),
    mix: &Load,
) {
    let charge = programme.charge(mix, inside);
    let (Ok(prior), Ok(usual)) = (Prior::of(&charge, &Unknowns::TYPICAL), Usual::of(&charge))
    else {
        return;
    };
    let word = programme.cycle.programme.word();
    let mut outcomes = Vec::new();
    for look in looks.iter().filter(|look| look.programme.as_deref() == Some(word)) {
        let load = Load::of_counts(&look.contents, kinds);
        let figures = &programme.figures.value;
        let dried = DriedFor::set(figures).measured(look.drying_ms, look.dry_vacuum_pa);
        match demand(&load.charge(inside, figures, dried)) {
            Ok(demand_w) if load.unknown.is_empty() => {
                outcomes.push(Outcome { demand_w, wet: look.wet });
            }
            _ => programme.left_out += 1,
        }
    }
    let Ok(learnt) = learn(&prior, &outcomes) else {
        return;
    };
    let grams = |watts: f64| usual.grams(watts);
    programme.limit_g = Some(Spread {
        low: grams(learnt.limit_w.low),
        middle: grams(learnt.limit_w.middle),
        high: grams(learnt.limit_w.high),
    });
    programme.advice = Some(advice(&learnt, programme.maker_g, grams));
    programme.learnt = Some(learnt);
}

/// Which programme for a load on a machine, and what comes out of it.
pub fn propose(
    view: &View<'_>,
    machine: &Machine,
    inside: &Inside,
    load: &Load,
) -> Result<Proposal, BookError> {
    let programmes = programmes(view, machine.machine, inside, load)?;
    let offers: Vec<Offer> = programmes.iter().map(|programme| offer(programme, machine)).collect();
    let open = load.contents == Contents::Unwrapped;
    let asked = Asked {
        contents: load.contents,
        wrapped: !open,
        grams: load.mass_g,
        heaviest_g: load.heaviest_g,
        most_c: load.most_c,
        need: if open { Need::Now } else { Need::Shelf },
        within_min: None,
        unpouched_allowed: true,
    };
    let choice = choose(&offers, &asked);
    let first = choice.ranked.first().and_then(|proposed| programmes.get(proposed.offer));
    let outlook = first.and_then(|programme| outlook(programme, load, inside));
    let air_known = machine.air_removal != AirRemoval::NotKnown;
    Ok(Proposal { load: load.clone(), programmes, choice, outlook, air_known })
}

fn offer(programme: &Programme, machine: &Machine) -> Offer {
    let figures = &programme.figures.value;
    let (day, minutes) = (programme.cycle.drying, figures.drying_min);
    Offer {
        word: programme.cycle.programme.clone(),
        set_c: f64::from(figures.set_c),
        hold_s: figures.hold_s,
        total_min: programme.cycle.cold_min,
        dry: match day {
            Drying::None => Dry::None,
            Drying::Short => Dry::Short(minutes),
            Drying::Full => Dry::Full(minutes),
        },
        for_pouches: figures.for_pouches,
        for_hollow: figures.for_hollow,
        air: match machine.air_removal {
            AirRemoval::Vacuum if figures.pulses > 0 => Air::Vacuum,
            AirRemoval::Vacuum | AirRemoval::Gravity => Air::Gravity,
            AirRemoval::NotKnown => Air::NotKnown,
        },
        most_g: programme.maker_g,
        // A guess that nobody vouches for forbids nothing; the page says that it is one.
        advised_g: programme.advice.filter(|advice| advice.by != By::Guess).map(|a| a.grams),
    }
}

/// What is expected of a load in a programme; `None` where its masses or the chamber cannot be.
pub fn outlook(programme: &Programme, load: &Load, inside: &Inside) -> Option<Outlook> {
    let mut charge = programme.charge(load, inside);
    let chance_wet = match &programme.learnt {
        Some(learnt) => demand(&charge).ok().map(|watts| learnt.chance_wet(watts)),
        None => None,
    };
    let left_g = balance(&charge, &Unknowns::TYPICAL).ok()?.left;
    charge.heated.push(wall(inside.chamber));
    let pulses = programme.figures.value.pulses;
    let filling = Filling { chamber: inside.chamber, pulses, pulse_kpa: PULSE_KPA };
    let water_g = run_water(&charge, &filling, &Unknowns::TYPICAL).ok()?.total;
    Some(Outlook { chance_wet, left_g, water_g })
}

fn wall(chamber: Chamber) -> Heated {
    let grams = chamber.wall_mm2() * WALL_MM * STEEL_G_PER_MM3;
    Heated { part: Part::Walls, grams, specific_heat: specific::STEEL_304 }
}
