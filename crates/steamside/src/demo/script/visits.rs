//! The invented appointments of today and tomorrow, who works, what is offered. Nobody is named.

use super::{Script, word};
use crate::acts::{self, Refusal};
use crate::clock;
use logbook::fact::Known;
use measure::{Instant, ServiceId, Span};

/// Word, minutes, weight, minutes for a basin, sets.
type Offered = (&'static str, u32, u32, u32, &'static [(&'static str, u32)]);

const SERVICES: [Offered; 4] = [
    ("manicure", 45, 1, 0, &[("manicure", 1)]),
    ("gel manicure", 60, 2, 0, &[("manicure", 1), ("bits", 1)]),
    ("pedicure", 60, 2, 12, &[("pedicure", 1)]),
    ("hands and feet", 90, 3, 12, &[("manicure", 1), ("pedicure", 1)]),
];

/// Minutes from now, chair, service: a busy day from four hours ago to five hours on.
const TODAY: [(i64, u32, usize); 16] = [
    (-240, 1, 0),
    (-240, 2, 1),
    (-210, 3, 2),
    (-180, 4, 0),
    (-150, 1, 1),
    (-120, 2, 3),
    (-60, 3, 1),
    (-30, 4, 2),
    (15, 1, 1),
    (30, 2, 0),
    (60, 3, 3),
    (75, 4, 1),
    (120, 1, 2),
    (135, 2, 1),
    (180, 3, 1),
    (240, 4, 2),
];

const TOMORROW: [(i64, u32, usize); 8] = [
    (-240, 1, 1),
    (-240, 2, 2),
    (-180, 3, 0),
    (-120, 1, 1),
    (-60, 2, 3),
    (0, 3, 1),
    (60, 1, 2),
    (120, 2, 0),
];

impl Script<'_> {
    /// Services, working times, visits: all said before the day, but for what the day brings.
    pub(super) fn book_days(&mut self) -> Result<(), Refusal> {
        let begun = self.ago(7 * 24 * 60);
        for (name, minutes, weight, basin_min, needs) in SERVICES {
            let misread = |_| Refusal::rule_with("refused-field-misread", "field", "word");
            let needs = needs.iter().map(|(kind, count)| Ok((word(kind)?, *count)));
            let set = acts::SetService {
                service: None,
                word: name.parse().map_err(misread)?,
                minutes,
                weight,
                basin_min,
                needs: needs.collect::<Result<_, Refusal>>()?,
            };
            self.act(begun, Known::Setting, |v, d| acts::set_service(v, d, set))?;
        }
        let services = self.app.read(|v| v.services())?;
        let services: Vec<ServiceId> = services.iter().map(|service| service.service).collect();
        let day = Span::from_minutes(24 * 60);
        for (from, visits) in [(self.now, &TODAY[..]), (self.now + day, &TOMORROW[..])] {
            self.book(from, visits, &services)?;
            self.working(from)?;
        }
        self.surprises()
    }

    fn book(
        &mut self,
        from: Instant,
        visits: &[(i64, u32, usize)],
        services: &[ServiceId],
    ) -> Result<(), Refusal> {
        let booked = self.ago(3 * 24 * 60);
        for (minutes, chair, service) in visits {
            let quarter = Span::from_minutes(15).millis();
            let start =
                (from + Span::from_minutes(*minutes)).millis().div_euclid(quarter) * quarter;
            let Some(service) = services.get(*service).copied() else { continue };
            let start = Instant::from_millis(start);
            let book = acts::Book { service, start, chair: Some(*chair) };
            self.act(booked, Known::Tapped, |v, d| acts::book(v, d, book))?;
        }
        Ok(())
    }

    /// Everyone works around the middle of the day; lunch in turns.
    fn working(&mut self, around: Instant) -> Result<(), Refusal> {
        let said = self.ago(6 * 24 * 60);
        for (turn, person) in (0..).zip(self.people.clone()) {
            let at = |minutes| {
                let at = clock::civil(around + Span::from_minutes(minutes), &self.zone);
                at.date().at(at.hour(), at.minute() / 30 * 30, 0, 0)
            };
            let set = acts::SetShift {
                person,
                from: at(-300),
                to: at(420),
                lunch: Some((at(60 + turn * 30), at(90 + turn * 30))),
                weeks: 0,
                zone: self.zone.clone(),
            };
            self.act(said, Known::Tapped, |v, d| acts::set_shift(v, d, set))?;
        }
        Ok(())
    }

    /// One client is late, one did not come.
    fn surprises(&mut self) -> Result<(), Refusal> {
        let (before, now) = (self.ago(120), self.now);
        let over = self.app.read(|v| v.visits(before, now))?;
        if let Some(visit) = over.first().map(|visit| visit.visit) {
            self.act(self.ago(90), Known::Tapped, |v, d| acts::missed(v, d, visit))?;
        }
        let next = self.app.read(|v| v.visits(now, now + Span::from_minutes(60)))?;
        if let Some(visit) = next.first().map(|visit| visit.visit) {
            self.act(self.ago(2), Known::Tapped, |v, d| acts::late(v, d, visit, 15))?;
        }
        Ok(())
    }
}
