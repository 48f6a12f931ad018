//! The practice book: its own pages, and the door to it in a salon's own program.
//!
//! It is served from a port of its own, with a book, a clock and cookies of its own: the two books
//! share nothing but the program. Who teaches opens it; it closes with the program.

use super::fields::Fields;
use super::head::{Head, own};
use super::posts::back;
use super::show::{About, answer_refusal, missing, show, trouble};
use super::{Ctx, Served, router};
use crate::acts::{self, Refusal};
use crate::app::{App, Who};
use crate::pages::{self, cards};
use crate::practice::{self, deal, machine};
use crate::web::head::lasting;
use crate::{clock, live};
use axum::Form;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use logbook::book::Draft;
use logbook::fact::{BookKind, Known};
use logbook::view::View;
use measure::{ActId, PersonId};
use serde::Deserialize;
use std::net::SocketAddr;
use std::sync::Arc;
use tokio::net::TcpListener;
use tokio::sync::Mutex;

/// Folder of the practice book inside that of the salon's own.
const FOLDER: &str = "practice";
/// Ports after our own that are tried.
const PORTS: u16 = 20;

/// The acts of this file, beside dealing a card.
const ACTS: [&str; 2] = ["practice-clock", "card-end"];

/// Where the salon's program listens, and where its practice book is open.
#[derive(Debug, Default)]
pub struct Beside {
    /// Address of the salon's own pages.
    pub listen: Option<SocketAddr>,
    open: Mutex<Option<SocketAddr>>,
}

impl Beside {
    /// Beside the pages at an address.
    pub fn pages_at(listen: SocketAddr) -> Self {
        Self { listen: Some(listen), open: Mutex::default() }
    }
}

/// Is it an act of this file? Clock and cards ask for no sign: they belong to a class.
pub fn knows(name: &str) -> bool {
    ACTS.contains(&name)
}

/// Decides an act of this file.
pub fn decide(
    name: &str,
    view: &View<'_>,
    draft: &mut Draft,
    fields: &Fields,
) -> Result<(), Refusal> {
    match name {
        "practice-clock" => {
            let set = acts::PracticeClock {
                real: clock::now(),
                times: fields.maybe("times")?,
                later_min: fields.maybe("later")?.unwrap_or(0),
            };
            acts::practice_clock(view, draft, set)
        }
        "card-end" => acts::end_card(view, draft, fields.need("dealt")?),
        _ => Err(Refusal::rule("refused-no-such-act")),
    }
}

/// The cards. A salon's own book has none.
pub async fn cards(State(served): State<Served>, head: Head) -> Response {
    if !served.app.practice {
        return missing(&served, head).await;
    }
    show(&served, head, |view, ctx| Ok(Some(cards::page(view, ctx)?))).await
}

/// Which sheet.
#[derive(Debug, Deserialize)]
pub struct Asked {
    card: Option<String>,
    learner: Option<String>,
}

/// The answer sheet of one card, or of all of a learner.
pub async fn sheet(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let card: Option<ActId> = asked.card.and_then(|text| text.parse().ok());
    let learner: Option<PersonId> = asked.learner.and_then(|text| text.parse().ok());
    let which = card.map(cards::Which::Card).or(learner.map(cards::Which::Learner));
    show(&served, head, move |view, ctx| match which {
        Some(which) if ctx.book == BookKind::Practice => Ok(cards::sheet_page(view, ctx, which)?),
        _ => Ok(None),
    })
    .await
}

/// Deals a card.
pub async fn deal(
    State(served): State<Served>,
    head: Head,
    Form(pairs): Form<Vec<(String, String)>>,
) -> Response {
    let fields = Fields(pairs);
    let work = {
        let (head, fields) = (head.clone(), fields.clone());
        move |app: &App| -> Result<(ActId, Option<PersonId>), Refusal> {
            let act = fields.need("act")?;
            let learner = fields.maybe("learner")?;
            let who = Who {
                act,
                station: head.station,
                sign: None,
                happened: None,
                known: Known::Setting,
            };
            deal::deal(app, who, fields.need("card")?, learner)?;
            Ok((act, learner))
        }
    };
    match served.app.look(work).await {
        Ok(Ok((act, learner))) => {
            let jar = match learner {
                Some(sign) => head.jar.add(lasting(own(head.practice, "sign"), sign.to_string())),
                None => head.jar,
            };
            (jar, back(&fields, "/cards", Some(act))).into_response()
        }
        Ok(Err(refusal)) => {
            answer_refusal(&served, head, refusal, About { back: Some("/cards"), run: None }).await
        }
        Err(error) => trouble(&head, &error.to_string()),
    }
}

/// The page in front of the practice book.
pub async fn front_door(State(served): State<Served>, headers: HeaderMap, head: Head) -> Response {
    if served.app.practice {
        return cards(State(served), head).await;
    }
    let open = *served.beside.open.lock().await;
    front(&served, &headers, head, open).await
}

async fn front(
    served: &Served,
    headers: &HeaderMap,
    head: Head,
    open: Option<SocketAddr>,
) -> Response {
    let open = open.map(|at| address(headers, at));
    let draw = move |view: &View<'_>, ctx: &Ctx| Ok(Some(pages::practice::page(view, ctx, open)?));
    show(served, head, draw).await
}

/// Under the name by which this computer was called, at the other port.
fn address(headers: &HeaderMap, at: SocketAddr) -> String {
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    let name = super::guard::without_port(host);
    format!("http://{name}:{}/", at.port())
}

/// Opens the practice book, for who teaches.
pub async fn open(
    State(served): State<Served>,
    headers: HeaderMap,
    head: Head,
    Form(pairs): Form<Vec<(String, String)>>,
) -> Response {
    let sign: Option<PersonId> = Fields(pairs).maybe("sign").ok().flatten();
    let teaches = served.app.look(move |app| may_open(app, sign)).await;
    let opened = match teaches {
        Ok(Ok(())) => through(&served).await,
        Ok(Err(refusal)) => Err(refusal),
        Err(error) => return trouble(&head, &error.to_string()),
    };
    match opened {
        Ok(at) => front(&served, &headers, head, Some(at)).await,
        Err(refusal) => {
            answer_refusal(&served, head, refusal, About { back: Some("/practice"), run: None })
                .await
        }
    }
}

fn may_open(app: &App, sign: Option<PersonId>) -> Result<(), Refusal> {
    let refused = || Refusal::rule("refused-not-teacher");
    let sign = sign.ok_or_else(refused)?;
    let teaches = app.read(|view| {
        let here = view.people()?.iter().any(|person| person.person == sign);
        Ok(here && view.roles(sign)?.teaches)
    })?;
    if teaches { Ok(()) } else { Err(refused()) }
}

/// Opens it once; afterwards it is where it is.
async fn through(served: &Served) -> Result<SocketAddr, Refusal> {
    let cannot = |why: String| Refusal::rule_with("refused-practice-closed", "why", why);
    let mut open = served.beside.open.lock().await;
    if let Some(at) = *open {
        return Ok(at);
    }
    let Some(listen) = served.beside.listen.filter(|_| !served.app.practice) else {
        return Err(Refusal::rule("refused-no-such-page"));
    };
    let folder = served.app.folder.join(FOLDER);
    let app = served
        .app
        .look(move |_| practice::open(&folder, false))
        .await
        .map_err(|error| cannot(error.to_string()))?
        .map_err(|error| cannot(error.to_string()))?;
    let listener = next_port(listen).await.map_err(|error| cannot(error.to_string()))?;
    let at = listener.local_addr().map_err(|error| cannot(error.to_string()))?;
    tokio::spawn(live::follow(app.clone()));
    tokio::spawn(machine::follow(app.clone()));
    let hosts = Arc::clone(&served.hosts);
    let folders = Arc::new(served.folders.another());
    // Whoever is let in to the salon's own book is let in here, and nobody else.
    let let_in_by = served.let_in_by.clone();
    let (beside, door) = (Arc::default(), Arc::default());
    let pages = router(Served { app, hosts, beside, folders, door, let_in_by, secure: false });
    let pages = pages.into_make_service_with_connect_info::<SocketAddr>();
    tokio::spawn(async move {
        if let Err(error) = axum::serve(listener, pages).await {
            eprintln!("the practice book was closed: {error}");
        }
    });
    *open = Some(at);
    Ok(at)
}

/// The next port that is free after our own.
async fn next_port(listen: SocketAddr) -> std::io::Result<TcpListener> {
    let mut last = std::io::Error::from(std::io::ErrorKind::AddrInUse);
    for step in 1..=PORTS {
        let Some(port) = listen.port().checked_add(step) else { break };
        match TcpListener::bind(SocketAddr::new(listen.ip(), port)).await {
            Ok(listener) => return Ok(listener),
            Err(error) => last = error,
        }
    }
    Err(last)
}
