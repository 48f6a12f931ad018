//! A random day that grows out of the booked one.
//!
//! Every event draws from a stream of its own, found by seed, day, event and number of the
//! appointment. So an event falls alike however many sets there are and whatever happened before
//! it: two ways to live a day see the same day.

use super::assume::{Assumptions, Event};
use super::template::{NEVER, Template};
use crate::Chance;

/// The streams of one day.
#[derive(Debug, Clone, Copy)]
pub(super) struct Draws(u64);

impl Draws {
    pub fn of(seed: u64, day: u32) -> Self {
        let seed = Chance::from_seed(seed).bits();
        Self(Chance::from_seed(seed ^ u64::from(day)).bits())
    }

    /// The stream of one event of appointment or run `index`.
    pub fn stream(self, event: Event, index: usize) -> Chance {
        Chance::from_seed(self.0 ^ ((event as u64 + 1) << 48) ^ index as u64)
    }

    /// Whether it happens.
    pub fn falls(self, event: Event, index: usize, assumptions: &Assumptions) -> bool {
        let share = assumptions[event].share;
        share > 0.0 && self.stream(event, index).unit() < share
    }
}

/// What a visitor does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Coming {
    /// Comes with an appointment.
    Booked,
    /// Comes without one.
    WalkIn,
    /// Does not come; known a while after the appointment.
    Away,
}

/// One visitor of the day; what is asked for is that of appointment `of`.
#[derive(Debug, Clone, Copy)]
pub(super) struct Visitor {
    pub of: u16,
    pub coming: Coming,
    pub start: u16,
    pub end: u16,
    /// The next visitor of the same slot, or [`NEVER`].
    next: u16,
}

/// A random day and its scratch space.
#[derive(Debug, Clone)]
pub(super) struct Day {
    pub draws: Draws,
    pub hands: Vec<i32>,
    pub visitors: Vec<Visitor>,
    /// First visitor of each slot, or [`NEVER`].
    first: Vec<u16>,
}

/// How long a walk-in waits for a free person, minutes (assumption).
const PATIENCE_MIN: i32 = 30;

impl Day {
    pub fn new(template: &Template) -> Self {
        Self {
            draws: Draws(0),
            hands: Vec::with_capacity(template.slots),
            visitors: Vec::with_capacity(2 * template.visits.len()),
            first: vec![NEVER; template.slots],
        }
    }

    /// Makes this the day number `day` of `seed`.
    pub fn draw(&mut self, template: &Template, assumptions: &Assumptions, seed: u64, day: u32) {
        self.draws = Draws::of(seed, day);
        self.hands.clone_from(&template.hands);
        self.visitors.clear();
        self.first.fill(NEVER);
        // Backwards, because each visitor is put in front of the others of the same slot.
        for index in (0..template.visits.len()).rev() {
            self.appointment(template, assumptions, index);
        }
        self.hands.iter_mut().for_each(|minutes| *minutes = (*minutes).max(0));
        for index in (0..template.visits.len()).rev() {
            if self.draws.falls(Event::WalkIn, index, assumptions) {
                self.walk_in(template, index);
            }
        }
    }

    /// The visitors of slot `t`, by number.
    pub fn first_of(&self, t: usize) -> u16 {
        self.first[t]
    }

    pub fn next_of(&self, visitor: u16) -> u16 {
        self.visitors[usize::from(visitor)].next
    }

    fn appointment(&mut self, template: &Template, assumptions: &Assumptions, index: usize) {
        let visit = template.visits[index];
        let last = template.slots - 1;
        let slots = |minutes: u32| (minutes as usize / template.slot_min as usize).max(1);
        if self.draws.falls(Event::NoShow, index, assumptions) {
            self.free(template, visit.start, visit.end, template.slot_min);
            let known = (visit.start + slots(assumptions.late_most_min)).min(last);
            return self.put(index, Coming::Away, known, visit.end);
        }
        let delay = |event: Event, most: u32| {
            let mut stream = self.draws.stream(event, index);
            let falls = assumptions[event].share > 0.0 && stream.unit() < assumptions[event].share;
            if falls { 1 + stream.below(slots(most)) } else { 0 }
        };
        let late = delay(Event::Late, assumptions.late_most_min);
        let longer = delay(Event::Overrun, assumptions.overrun_most_min);
        let start = (visit.start + late).min(last);
        let end = visit.end + late + longer;
        if late + longer > 0 {
            // Who waits for a late client can wash; who is still at work cannot.
            self.free(template, visit.start, start, template.slot_min);
            self.free(template, visit.end, end, -template.slot_min);
        }
        self.put(index, Coming::Booked, start, end);
    }

    /// Somebody who asks for what appointment `index` asks for, at any time between the first and
    /// the last appointment, and stays if a person becomes free for the whole of it soon.
    fn walk_in(&mut self, template: &Template, index: usize) {
        let visit = template.visits[index];
        let (opens, closes) = template.opening;
        let mut stream = self.draws.stream(Event::WalkIn, index);
        stream.bits();
        let comes = opens + stream.below(closes - opens + 1);
        let long = visit.end - visit.start;
        let patience = (PATIENCE_MIN / template.slot_min) as usize;
        let mut start = comes;
        let mut free = 0;
        while free < long {
            match self.hands.get(start + free) {
                Some(&minutes) if minutes >= template.slot_min => free += 1,
                Some(_) => (start, free) = (start + free + 1, 0),
                None => return,
            }
            if start > comes + patience || start > closes {
                return;
            }
        }
        self.free(template, start, start + long, -template.slot_min);
        self.put(index, Coming::WalkIn, start, start + long);
    }

    fn free(&mut self, template: &Template, from: usize, to: usize, minutes: i32) {
        let slots = from.min(template.slots)..to.min(template.slots);
        self.hands[slots].iter_mut().for_each(|there| *there += minutes);
    }

    fn put(&mut self, of: usize, coming: Coming, start: usize, end: usize) {
        let next = std::mem::replace(&mut self.first[start], self.visitors.len() as u16);
        let (of, start, end) = (of as u16, start as u16, end as u16);
        self.visitors.push(Visitor { of, coming, start, end, next });
    }
}
