//! `serve`: the salon's own book in the browser.

mod safe;

use super::{own_folder, unusable};
use crate::app::{App, Who};
use crate::door::{Door, Reach};
use crate::intake::watch::{Watched, watch};
use crate::practice::machine;
use crate::web::{Beside, Folders, Hosts, Served, router};
use crate::{acts, chance, clock, heartbeat, live};
use clap::Args;
use load::SetKind;
use logbook::book::{Book, Opening};
use logbook::fact::{BookKind, Known, Stamp};
use measure::StationId;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::Arc;
use tokio::net::TcpListener;

/// An inspection takes 20 to 40 minutes (estimate, no source); a page can be opened again.
pub const FOLDER_MINUTES: u32 = 30;

/// Where the book is and who may reach it.
#[derive(Debug, Clone, Args)]
pub struct ServeArgs {
    /// Folder of the book; made where there is none.
    #[arg(long)]
    pub book: Option<PathBuf>,
    /// Address and port. Anything but this computer's own lets others on the network ask; each of
    /// their screens has to be let in once, by a code that this computer shows.
    #[arg(long, default_value = "127.0.0.1:7420")]
    pub listen: SocketAddr,
    /// A secure address and port as well, such as 0.0.0.0:7443. The box makes its own certificate;
    /// the page /trust says how a screen comes to trust it.
    #[arg(long)]
    pub secure: Option<SocketAddr>,
    /// A folder to take records from, such as a memory stick; `FOLDER=2` for machine 2.
    #[arg(long)]
    pub watch: Vec<String>,
    /// A further name by which this computer is called on the network.
    #[arg(long)]
    pub name: Vec<String>,
    /// Time zone of the salon, such as America/Chicago; the computer's own where not given. Only
    /// for a new book.
    #[arg(long)]
    pub zone: Option<String>,
    /// Minutes after which a page that shows the record to somebody from outside closes itself.
    #[arg(long, default_value_t = FOLDER_MINUTES, value_parser = clap::value_parser!(u32).range(1..=1440))]
    pub folder_minutes: u32,
}

/// Opens the book, or begins one, and serves it until Ctrl-C.
pub fn run(args: ServeArgs) -> ExitCode {
    let folder = args.book.clone().unwrap_or_else(own_folder);
    match open_or_begin(&folder, args.zone.as_deref()) {
        Ok(app) => serve(app, &args, None),
        Err(error) => unusable(error),
    }
}

fn open_or_begin(folder: &Path, zone: Option<&str>) -> Result<App, String> {
    let shown = |error: &dyn std::fmt::Display| format!("{}: {error}", folder.display());
    let book = if Book::exists(folder) {
        Book::open(folder).map_err(|error| shown(&error))?
    } else {
        let zone = zone.map_or_else(clock::system_zone, str::to_owned);
        clock::zone(&zone).map_err(|error| error.to_string())?;
        begin(folder, zone).map_err(|error| shown(&error))?
    };
    App::new(book, folder.to_owned()).at_its_pace().map_err(|error| shown(&error))
}

/// A new book with the three kinds of set that nearly every salon has.
fn begin(folder: &Path, zone: String) -> Result<Book, acts::Refusal> {
    std::fs::create_dir_all(folder)
        .map_err(|error| acts::Refusal::rule_with("refused-folder", "why", error))?;
    let station: StationId = chance::id()?;
    let now = clock::now();
    let stamp = Stamp {
        act: chance::id()?,
        happened: now,
        written: now,
        station,
        sign: None,
        known: Known::Setting,
    };
    let book =
        Book::create(folder, Opening { salon: chance::id()?, zone, book: BookKind::Salon, stamp })?;
    let app = App::new(book, folder.to_owned());
    for kind in ["manicure", "pedicure", "bits"] {
        let kind: SetKind =
            kind.parse().map_err(|_| acts::Refusal::rule("refused-field-misread"))?;
        let count = acts::Count { kind, owned: None, loose: Some((0, 0)) };
        let who = Who::program(station, Known::Setting)?;
        app.act(who, |view, draft| acts::count(view, draft, count))?;
    }
    Ok(Book::open(folder)?)
}

/// Serves an opened book. `try_it` is one further line on how to try things.
pub fn serve(app: App, args: &ServeArgs, try_it: Option<String>) -> ExitCode {
    let runtime = match tokio::runtime::Runtime::new() {
        Ok(runtime) => runtime,
        Err(error) => return unusable(error),
    };
    match runtime.block_on(serve_until_stopped(app, args, try_it)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => unusable(error),
    }
}

async fn serve_until_stopped(
    app: App,
    args: &ServeArgs,
    try_it: Option<String>,
) -> Result<(), String> {
    let listener = bound(args.listen, "--listen 127.0.0.1:7421").await?;
    let at = listener.local_addr().map_err(|error| error.to_string())?;
    let safe = match args.secure {
        Some(secure) => Some(safe::Safe::open(secure, &app.folder, &args.name).await?),
        None => None,
    };
    for watched in watched(&app, &args.watch)? {
        tokio::spawn(watch(app.clone(), watched));
    }
    tokio::spawn(live::follow(app.clone()));
    if app.practice {
        tokio::spawn(machine::follow(app.clone()));
    } else {
        // The clock of a practice book is not the box's.
        let station: StationId = chance::id().map_err(|error| error.to_string())?;
        app.look(move |app| heartbeat::after_a_silence(app, station))
            .await
            .map_err(|error| error.to_string())?
            .map_err(|error| error.to_string())?;
        tokio::spawn(heartbeat::beat(app.clone()));
    }
    let reach = Reach { plain: Some(at), secure: safe.as_ref().map(safe::Safe::public) };
    say_where(&app.folder, at, &reach);
    if let Some(line) = try_it {
        println!("{line}");
    }
    let mut names: Vec<String> = args.name.iter().map(|name| name.to_ascii_lowercase()).collect();
    names.extend(safe.iter().flat_map(safe::Safe::names));
    let live = Arc::clone(&app.live);
    let beside = Arc::new(Beside::pages_at(at));
    let folders = Arc::new(Folders::new(args.folder_minutes));
    let door = Arc::new(Door::new(reach));
    let hosts = Arc::new(Hosts { names });
    let let_in_by = app.clone();
    let served = Served { app, hosts, beside, folders, door, let_in_by, secure: false };
    if let Some(safe) = safe {
        tokio::spawn(safe.serve(router(Served { secure: true, ..served.clone() })));
    }
    axum::serve(listener, router(served).into_make_service_with_connect_info::<SocketAddr>())
        .with_graceful_shutdown(async move {
            stopped().await;
            // A screen listens for as long as it is let; nothing else would end.
            live.close();
        })
        .await
        .map_err(|error| error.to_string())?;
    println!("Closed. Everything that was acknowledged is in the book.");
    Ok(())
}

/// Takes an address; why not, with another to try.
async fn bound(at: SocketAddr, instead: &str) -> Result<TcpListener, String> {
    TcpListener::bind(at).await.map_err(|error| {
        format!("{at} cannot be used ({error}). Is it open already? Choose another with {instead}")
    })
}

/// Where the pages are and who can reach them.
fn say_where(folder: &Path, at: SocketAddr, reach: &Reach) {
    // Every address includes this computer's own.
    let here = if at.ip().is_unspecified() { Ipv4Addr::LOCALHOST.into() } else { at.ip() };
    let at = SocketAddr::new(here, at.port());
    println!(
        "Open http://{at}/ in a browser. The data lies in {}. Ctrl-C ends it.",
        shown_path(folder)
    );
    if let Some((at, public)) = &reach.secure {
        println!(
            "Secure: https://{at}/. Its authority has the fingerprint {}.",
            public.fingerprint
        );
    }
    if let [first, ..] = reach.for_others().as_slice() {
        println!("Other screens are let in on the page Setup, Screens; they go to {first}/pair.");
    }
}

fn shown_path(folder: &Path) -> String {
    std::path::absolute(folder).unwrap_or_else(|_| folder.to_owned()).display().to_string()
}

/// Ctrl-C, or the system's wish that programs end.
async fn stopped() {
    let interrupt = tokio::signal::ctrl_c();
    match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
        Ok(mut terminate) => {
            tokio::select! {
                _ = interrupt => {}
                _ = terminate.recv() => {}
            }
        }
        Err(_) => {
            // Without the second signal the first still ends it.
            if interrupt.await.is_err() {
                std::future::pending::<()>().await;
            }
        }
    }
}

/// `FOLDER` or `FOLDER=NUMBER`.
fn watched(app: &App, folders: &[String]) -> Result<Vec<Watched>, String> {
    let machines = app.read(|view| view.machines()).map_err(|error| error.to_string())?;
    let station: StationId = chance::id().map_err(|error| error.to_string())?;
    folders
        .iter()
        .map(|text| {
            let numbered = text
                .rsplit_once('=')
                .and_then(|(folder, number)| Some((folder, number.parse::<u32>().ok()?)));
            let Some((folder, number)) = numbered else {
                return Ok(Watched { folder: PathBuf::from(text), machine: None, station });
            };
            let machine = machines
                .iter()
                .find(|machine| machine.number == number)
                .ok_or_else(|| format!("there is no machine {number} to watch {folder} for"))?;
            let machine = Some(machine.machine);
            Ok(Watched { folder: PathBuf::from(folder), machine, station })
        })
        .collect()
}
