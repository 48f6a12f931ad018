//! The clock and the cards of a practice book, and who teaches, in plain words.

use super::Names;
use crate::pages::when;
use crate::practice::cards::Card;
use crate::web::Ctx;
use logbook::fact::{Body, Counter};
use measure::PersonId;

/// People that such a fact names.
pub fn people(body: &Body) -> Option<PersonId> {
    match body {
        Body::Counter(said) => match **said {
            Counter::CardDealt { learner, .. } => learner,
            _ => None,
        },
        _ => None,
    }
}

/// One fact about the counter as one line.
pub fn line(ctx: &Ctx, names: &Names, said: &Counter) -> Option<String> {
    let words = ctx.words();
    Some(match said {
        Counter::PracticeClock { shown, times, .. } => words.tell(
            "line-practice-clock",
            &[("at", when::moment(ctx, *shown).into()), ("times", times.to_string().into())],
        ),
        Counter::CardDealt { card, learner } => {
            let title =
                card.parse::<Card>().map_or_else(|_| card.clone(), |card| words.say(card.key()));
            let sign = learner.and_then(|learner| names.signs.get(&learner).cloned());
            let sign = sign.unwrap_or_else(|| words.say("cards-everyone"));
            words.tell("line-card-dealt", &[("card", title.into()), ("sign", sign.into())])
        }
        Counter::CardEnded { right, asked, .. } => words.tell(
            "line-card-ended",
            &[("right", right.to_string().into()), ("asked", asked.to_string().into())],
        ),
        _ => return None,
    })
}
