//! What the day asks: appointments, sets, hands and machines on a grid of slots.

/// A day to plan. Slot `t` covers the minutes `[t * slot_min, (t + 1) * slot_min)`; the start of a
/// slot is the only clock.
///
/// Everything is a whole number: minutes, grams, cents, and pouch area in any one unit. That is
/// why two plans can be compared exactly, and why a bound is a proof and not a rounding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// What the day is called; comes back in the answer.
    pub name: String,
    /// Length of a slot, minutes, above 0.
    pub slot_min: u32,
    /// How many slots there are, 1 to [`MOST_SLOTS`]; the opening hours and the tail in which some
    /// hands are still there.
    pub slots: usize,
    /// How long washed sets soak or dry before they can be loaded, minutes, rounded up to slots.
    pub passive_min: u32,
    /// Within how many minutes of a cycle's end a set without drying must be opened, rounded down.
    pub immediate_window_min: u32,
    /// The kinds of sets, at most [`MOST_KINDS`].
    pub kinds: Vec<Kind>,
    /// The machines, at most [`MOST_MACHINES`].
    pub machines: Vec<Machine>,
    /// The appointments, in any order.
    pub services: Vec<Service>,
    /// Hand minutes in each slot; as long as `slots`.
    pub hands: Vec<u32>,
    /// What is already on its way, one entry a kind.
    pub carry: Vec<Carry>,
}

/// The search keeps a byte per kind in each run that it tries.
pub const MOST_KINDS: usize = 16;
/// More machines than any salon has; bounds the work.
pub const MOST_MACHINES: usize = 16;
/// A week of five-minute slots.
pub const MOST_SLOTS: usize = 2_016;
/// More sets of a kind than a salon owns; bounds the work.
pub const MOST_SETS: u32 = 250;

/// A kind of set. Sets of a kind are interchangeable.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kind {
    /// Its name.
    pub id: String,
    /// How many there are.
    pub owned: u32,
    /// How many are ready when the day begins.
    pub ready: u32,
    /// Mass of one set, grams.
    pub mass_g: u32,
    /// Pouch area of one set.
    pub area: u32,
    /// Washing, drying and packing one set, minutes.
    pub hand_min: u32,
    /// How many should be ready when the day is over.
    pub target_ready: u32,
    /// Price of its pouch, cents.
    pub pouch_cost: u32,
}

/// A sterilizer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Machine {
    /// Its name.
    pub id: String,
    /// For how many minutes after unloading it counts as warm, rounded down to slots.
    pub warm_window_min: u32,
    /// First slot in which a run may start.
    pub free_from: usize,
    /// It counts as warm up to and including this slot; `None` when it begins cold.
    pub warm_until: Option<usize>,
    /// What it can run.
    pub cycles: Vec<Cycle>,
}

/// How far a cycle dries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Drying {
    /// Not at all: the sets are for use at once.
    None,
    /// A little: pouches come out dry from a light load.
    Short,
    /// In full.
    Full,
}

/// One programme of a machine.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cycle {
    /// Its name.
    pub id: String,
    /// Length when the machine is cold, minutes.
    pub dur_cold_min: u32,
    /// Length when it is warm, minutes.
    pub dur_warm_min: u32,
    /// What a load may weigh, grams.
    pub max_mass_g: u32,
    /// What pouch area a load may have; counts for wrapped cycles only.
    pub max_area: u32,
    /// How far it dries.
    pub drying: Drying,
    /// Whether the sets lie in pouches.
    pub wrapped: bool,
    /// Loading, hand minutes in the slot of the start.
    pub load_min: u32,
    /// Unloading, hand minutes in the slot of the unloading.
    pub unload_min: u32,
    /// Cooling after unloading, minutes without hands.
    pub cool_min: u32,
    /// Price of a run on a cold machine, cents.
    pub cost_cold: u32,
    /// Price of a run on a warm machine, cents.
    pub cost_warm: u32,
}

/// An appointment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Service {
    /// Its name; never a client's.
    pub id: String,
    /// Slot in which its sets are opened.
    pub start: usize,
    /// Slot at whose start they are used; may lie beyond the day.
    pub end: usize,
    /// What one unmet set of it counts.
    pub weight: u32,
    /// How many sets of which kind (index into [`Problem::kinds`]), each kind at most once.
    pub needs: Vec<(usize, u32)>,
}

/// What of a kind is already on its way when the plan begins.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Carry {
    /// Used and not yet washed, at the start of slot 0.
    pub dirty: u32,
    /// Minutes of washing already done on the first set that is not finished, below the kind's
    /// hand minutes. (`dayplan-1` itself rounds them down; in its JSON this is `carry.worked`.)
    pub worked: u32,
    /// Washed, dry and packed at the start of slot 0.
    pub loadable: u32,
    /// Sets that become used later, outside the appointments: slot and number.
    pub dirty_at: Vec<(usize, u32)>,
    /// Sets that become loadable later, say out of the soak.
    pub loadable_at: Vec<(usize, u32)>,
    /// Sets that become ready later, say out of a running machine.
    pub ready_at: Vec<(usize, u32)>,
}

/// Why a day cannot be planned. The sentence names the place.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the day cannot be planned: {0}")]
pub struct Unusable(pub String);

impl Problem {
    /// Length of `minutes` in slots, rounded up.
    #[must_use]
    pub fn slots_up(&self, minutes: u32) -> usize {
        minutes.div_ceil(self.slot_min) as usize
    }

    /// Length of `minutes` in slots, rounded down.
    #[must_use]
    pub fn slots_down(&self, minutes: u32) -> usize {
        (minutes / self.slot_min) as usize
    }

    /// Whether every number lies where the rest of this room relies on it.
    ///
    /// # Errors
    /// The first thing that does not: too many slots, an index that points nowhere, hands that do
    /// not fit the slots, a cycle that takes no time.
    pub fn check(&self) -> Result<(), Unusable> {
        let no = |why: String| Err(Unusable(why));
        if self.slot_min == 0
            || self.slot_min > MINUTES
            || self.slots == 0
            || self.slots > MOST_SLOTS
        {
            return no(format!("slots must be 1 to {MOST_SLOTS} and longer than no time"));
        }
        if self.hands.iter().any(|&minutes| minutes > MOST_HANDS) {
            return no(format!("more than {MOST_HANDS} minutes of hands in a slot"));
        }
        if self.services.len() > MOST_SERVICES {
            return no(format!("more than {MOST_SERVICES} services"));
        }
        if self.hands.len() != self.slots || self.carry.len() != self.kinds.len() {
            return no(format!("hands must be given for each of the {} slots", self.slots));
        }
        if self.kinds.len() > MOST_KINDS || self.machines.len() > MOST_MACHINES {
            return no(format!("more than {MOST_KINDS} kinds or {MOST_MACHINES} machines"));
        }
        self.kinds
            .iter()
            .zip(&self.carry)
            .try_for_each(|(kind, carry)| self.check_kind(kind, carry))?;
        for machine in &self.machines {
            if machine.cycles.len() > usize::from(u8::MAX) {
                return no(format!("machine {} has too many cycles", machine.id));
            }
            let late = machine.free_from.max(machine.warm_until.unwrap_or(0)) > 2 * MOST_SLOTS;
            if late || machine.warm_window_min > MINUTES {
                return no(format!("machine {} is free or warm only after weeks", machine.id));
            }
            for cycle in &machine.cycles {
                let lengths = [cycle.dur_cold_min, cycle.dur_warm_min];
                let around = [cycle.load_min, cycle.unload_min, cycle.cool_min];
                if lengths.iter().chain(&around).any(|&minutes| minutes > MINUTES)
                    || cycle.load_min + cycle.dur_cold_min.min(cycle.dur_warm_min) == 0
                {
                    return no(format!(
                        "cycle {} of {} takes no time or weeks",
                        cycle.id, machine.id
                    ));
                }
            }
        }
        self.services.iter().try_for_each(|service| self.check_service(service))
    }

    fn check_kind(&self, kind: &Kind, carry: &Carry) -> Result<(), Unusable> {
        let later = [&carry.dirty_at, &carry.loadable_at, &carry.ready_at];
        let counts = later.iter().flat_map(|list| list.iter().map(|&(_, n)| n));
        let on_their_way: u64 = counts.clone().map(u64::from).sum();
        let most =
            counts.chain([kind.owned, kind.ready, kind.target_ready, carry.dirty, carry.loadable]);
        let asked =
            self.services.iter().flat_map(|s| &s.needs).map(|need| u64::from(need.1)).sum::<u64>();
        if on_their_way > u64::from(MOST_SETS) || asked > MOST_ASKED {
            return Err(Unusable(format!(
                "kind {}: more sets than any salon moves in a day",
                kind.id
            )));
        }
        if most.max().unwrap_or(0) > MOST_SETS || kind.hand_min > MINUTES {
            return Err(Unusable(format!("kind {}: more than {MOST_SETS} sets", kind.id)));
        }
        if carry.worked > 0 && (carry.worked >= kind.hand_min || carry.dirty == 0) {
            return Err(Unusable(format!("kind {}: more is done on a set than it takes", kind.id)));
        }
        if later.iter().any(|list| list.iter().any(|&(slot, _)| slot > self.slots)) {
            return Err(Unusable(format!("kind {}: something comes after the last slot", kind.id)));
        }
        Ok(())
    }

    fn check_service(&self, service: &Service) -> Result<(), Unusable> {
        if service.start >= self.slots || service.end < service.start {
            return Err(Unusable(format!("service {} lies outside the slots", service.id)));
        }
        let mut seen = [false; MOST_KINDS];
        for &(kind, n) in &service.needs {
            let twice = seen.get_mut(kind).is_none_or(|s| std::mem::replace(s, true));
            if kind >= self.kinds.len() || n > MOST_SETS || twice || service.weight > MOST_WEIGHT {
                return Err(Unusable(format!("service {} needs what is not there", service.id)));
            }
        }
        Ok(())
    }
}

/// More hands than any salon has in one slot, minutes.
const MOST_HANDS: u32 = 10_000;
/// More appointments than any salon has in a day.
pub const MOST_SERVICES: usize = 5_000;
/// More sets than are opened in any day; keeps the search's tables small.
const MOST_ASKED: u64 = 50_000;
/// Longest single length of time, minutes: a week.
const MINUTES: u32 = 7 * 24 * 60;
/// Largest weight of a service, so that sums stay exact.
const MOST_WEIGHT: u32 = 1_000_000;
