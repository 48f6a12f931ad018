//! What each programme of a machine can do with a load, learnt from looks, and which one to choose.

use super::kinds::Kinds;
use super::load::{DriedFor, Load};
use cycle::balance::{
    Charge, Filling, Heated, Part, Spread, Unknowns, Usual, balance, demand, run_water, specific,
};
use cycle::choose::{Air, Asked, Change, Choice, Dry, Need, Offer, choose};
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
    /// The maker's limit in pouches, grams; `None`: nobody looked it up.
    pub pouched_g: Option<u32>,
    /// The maker's limit without pouches, grams; `None`: nobody looked it up.
    pub open_g: Option<u32>,
    /// What the salon set for its plans, grams; `None`: a typical figure.
    pub set_g: Option<u32>,
    /// What the looks taught; `None` where it does not dry.
    pub learnt: Option<Learnt>,
    /// The salon's usual mix in this programme.
    pub usual: Option<Usual>,
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

impl Proposal {
    /// Looks at the proposed programme that could not be counted.
    pub fn left_out(&self) -> u32 {
        let first = self.choice.ranked.first().and_then(|first| self.programmes.get(first.offer));
        first.map_or(0, |programme| programme.left_out)
    }

    /// How much goes into one run of the programme that is proposed, or of the one that would take a
    /// part of the load; `None` where nothing limits it.
    pub fn part_g(&self) -> Option<u32> {
        let split = self.choice.changes.iter().find_map(|change| match change {
            Change::Split { grams, .. } => Some(*grams),
            _ => None,
        });
        let first = self.choice.ranked.first().and_then(|first| self.programmes.get(first.offer));
        split.or_else(|| first?.maker_g(self.load.contents))
    }
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
    /// The maker's limit for what is in the load; what nobody named counts as pouched.
    pub fn maker_g(&self, contents: Contents) -> Option<u32> {
        if contents == Contents::Unwrapped { self.open_g } else { self.pouched_g }
    }

    /// What the looks forbid, grams of the usual mix; `None` while they forbid nothing.
    fn looks_g(&self) -> Option<u32> {
        self.advice.filter(|advice| advice.by == By::Looks).map(|advice| advice.grams)
    }

    /// How much a plan may load, grams: the least of what the salon set, what the maker allows and
    /// what the looks say. A guess that nobody vouches for shrinks no plan.
    pub fn most_g(&self) -> Option<u32> {
        let maker_g = if self.cycle.wrapped { self.pouched_g } else { self.open_g };
        [self.set_g, maker_g, self.looks_g()].into_iter().flatten().min()
    }

    /// The same looks told in grams of this load: what counts is the power it asks for.
    fn looks_for(&self, load: &Load, inside: &Inside) -> Option<u32> {
        let looks_g = self.looks_g()?;
        let (usual, mix_g) = (self.usual.as_ref()?, f64::from(looks_g));
        let asked_w = demand(&self.charge(load, inside)).ok().filter(|watts| *watts > 0.0)?;
        let grams = f64::from(load.mass_g) * usual.demand(mix_g) / asked_w;
        Some(grams.clamp(0.0, 1e6).floor() as u32)
    }

    /// Is it one for solid sets in pouches, whatever they weigh? What nobody looked up is taken as
    /// typical.
    pub fn takes_pouches(&self, machine: &Machine) -> bool {
        let asked = Asked {
            contents: Contents::Pouched,
            wrapped: true,
            grams: 0,
            heaviest_g: 0,
            most_c: None,
            need: Need::Shelf,
            within_min: None,
            unpouched_allowed: false,
        };
        !choose(&[offer(self, machine, Contents::Pouched, None)], &asked).ranked.is_empty()
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
    let mix = Load::of_counts(&mix, &kinds).one_kilogram();
    let mix = if mix.mass_g > 0 { &mix } else { usual };
    let mut all = Vec::new();
    for (cycle, figures) in day.value.cycles.into_iter().zip(view.programme_figures(machine)?) {
        let mut programme = Programme {
            pouched_g: figures.value.most_pouched_g,
            open_g: figures.value.most_unwrapped_g,
            set_g: day.said.map(|_| cycle.max_mass_g),
            cycle,
            figures,
            learnt: None,
            usual: None,
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
            // A look that asks for nothing teaches nothing, and must not spoil the others.
            Ok(demand_w) if load.unknown.is_empty() && demand_w > 0.0 => {
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
    programme.advice = Some(advice(&learnt, programme.pouched_g, grams));
    programme.usual = Some(usual.clone());
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
    let offers: Vec<Offer> = (programmes.iter())
        .map(|programme| {
            offer(programme, machine, load.contents, programme.looks_for(load, inside))
        })
        .collect();
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

/// A programme as it is offered to a load; `advised_g`: what the looks say of such a load.
fn offer(
    programme: &Programme,
    machine: &Machine,
    contents: Contents,
    advised_g: Option<u32>,
) -> Offer {
    let figures = &programme.figures.value;
    let (day, minutes) = (programme.cycle.drying, figures.drying_min);
    Offer {
        word: programme.cycle.programme.clone(),
        set_c: f64::from(figures.set_c),
        hold_s: figures.hold_s,
        total_min: programme.cycle.cold_min,
        dry: match day {
            _ if minutes == 0 => Dry::None,
            Drying::Full => Dry::Full(minutes),
            Drying::None | Drying::Short => Dry::Short(minutes),
        },
        for_pouches: figures.for_pouches,
        for_hollow: figures.for_hollow,
        air: match machine.air_removal {
            AirRemoval::Vacuum if figures.pulses > 0 => Air::Vacuum,
            AirRemoval::Vacuum | AirRemoval::Gravity => Air::Gravity,
            AirRemoval::NotKnown => Air::NotKnown,
        },
        most_g: programme.maker_g(contents),
        // The maker vouches for drying up to the limit; a guess that nobody vouches for is none.
        advised_g: advised_g.or(programme.maker_g(contents)),
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
