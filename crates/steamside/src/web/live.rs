//! What keeps an open screen up to date: the wall, the strip alone, and the events that say when to
//! look again.

use super::guard::At;
use super::head::Head;
use super::show::show;
use super::{Ctx, Served};
use crate::app::App;
use crate::live::Beat;
use crate::pages;
use axum::extract::{Query, State};
use axum::response::sse::{Event, Sse};
use axum::response::{IntoResponse, Response};
use futures_util::stream;
use logbook::view::{Station, View};
use measure::StationId;
use serde::Deserialize;
use std::convert::Infallible;
use std::time::Duration;
use tokio::sync::watch;

/// A screen that hears nothing for longer than twice this is cut off.
const HEARTBEAT: Duration = Duration::from_secs(10);

/// Which wall.
#[derive(Debug, Deserialize)]
pub struct Which {
    front: Option<String>,
}

/// A screen on the wall; `front=yes` where clients wait.
pub async fn wall(
    State(served): State<Served>,
    Query(which): Query<Which>,
    head: Head,
) -> Response {
    let front = which.front.is_some_and(|front| front == "yes");
    show(&served, head, move |view, ctx| Ok(Some(pages::wall::page(view, ctx, front)?))).await
}

/// The strip of running runs alone.
pub async fn strip(State(served): State<Served>, head: Head) -> Response {
    let draw = |_: &View<'_>, ctx: &Ctx| Ok(Some(pages::strip::every(ctx)));
    show(&served, head, draw).await
}

/// What a listening screen was told last.
struct Listener {
    told: watch::Receiver<Beat>,
    last: Option<Beat>,
    /// The screen that listens, where it was let in: it hears nothing more once it is let go.
    screen: Option<(App, StationId)>,
}

/// Events: `head` with the place of the book's last fact, `word` when a machine has said something,
/// `beat` when nothing has happened for a while.
pub async fn live(State(served): State<Served>, head: Head) -> Response {
    let screen = match head.at {
        At::Station(station, _) => Some((served.let_in_by.clone(), station)),
        _ => None,
    };
    let listener = Listener { told: served.app.live.listen(), last: None, screen };
    // A later change is told; what the book held before is looked up once.
    if let Ok(Ok(seq)) = served.app.look(|app| app.read(|view| view.last_seq())).await {
        served.app.live.book(seq);
    }
    let events = stream::unfold(listener, |mut listener| async move {
        let event = listener.next().await?;
        Some((Ok::<_, Infallible>(event), listener))
    });
    Sse::new(events).into_response()
}

impl Listener {
    /// The next event; `None` when the program ends.
    async fn next(&mut self) -> Option<Event> {
        loop {
            let beat = *self.told.borrow_and_update();
            let before = self.last.replace(beat);
            if beat.closing {
                return None;
            }
            if before.is_none_or(|before| before.seq != beat.seq) {
                if self.let_go().await {
                    return None;
                }
                return Some(Event::default().event("head").data(beat.seq.to_string()));
            }
            if before.is_some_and(|before| before.words != beat.words) {
                return Some(Event::default().event("word").data(beat.words.to_string()));
            }
            match tokio::time::timeout(HEARTBEAT, self.told.changed()).await {
                Ok(Ok(())) => {}
                // Nobody is left to tell anything.
                Ok(Err(_)) => return None,
                Err(_) => return Some(Event::default().event("beat").data("")),
            }
        }
    }
}

impl Listener {
    /// Was the screen let go? Only a fact can do that.
    async fn let_go(&self) -> bool {
        let Some((app, station)) = &self.screen else { return false };
        let known = app.look(|app| app.read(|view| view.stations())).await;
        let here = |known: &Station| known.station == *station && known.parted.is_none();
        // Who cannot be told from a stranger hears nothing.
        !known.is_ok_and(|known| known.is_ok_and(|known| known.iter().any(here)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::live::Live;

    #[tokio::test]
    async fn a_listener_hears_where_the_book_is_and_ends_with_the_program() {
        let live = Live::default();
        live.book(7);
        let mut listener = Listener { told: live.listen(), last: None, screen: None };
        assert!(listener.next().await.is_some(), "where the book is, at once");
        live.book(8);
        assert!(listener.next().await.is_some());
        assert_eq!(listener.last.map(|beat| beat.seq), Some(8));
        live.close();
        assert!(listener.next().await.is_none());
    }
}
