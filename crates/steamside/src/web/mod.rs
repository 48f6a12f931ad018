//! The web side: which address shows which page, and how an answer is made.

mod chair_posts;
mod counter_posts;
mod ctx;
mod day_posts;
mod fields;
mod folder;
mod guard;
mod head;
mod kept;
mod later_posts;
mod live;
mod loading_posts;
mod look_posts;
mod posts;
mod practice;
mod show;
mod spore_posts;
mod stations;
mod take_posts;
mod upkeep_posts;

pub use counter_posts::REASONS;
pub use ctx::Ctx;
pub use fields::Fields;
pub use folder::Folders;
pub use upkeep_posts::about_of;

use crate::app::App;
use crate::door::Door;
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware;
use axum::routing::{get, post};
use std::sync::Arc;
use tower_http::compression::CompressionLayer;
use tower_http::compression::predicate::{NotForContentType, Predicate, SizeAbove};

/// What the web side knows about the way it is served.
#[derive(Clone)]
pub struct Served {
    /// The book.
    pub app: App,
    /// Names and addresses by which this computer may be called.
    pub hosts: Arc<guard::Hosts>,
    /// The practice book, served beside a salon's own.
    pub beside: Arc<Beside>,
    /// The pages that are open to somebody from outside, to read.
    pub folders: Arc<Folders>,
    /// How screens are let in.
    pub door: Arc<Door>,
    /// The book that says which were: the salon's own, for its practice book too.
    pub let_in_by: App,
    /// These answers go out over the secure address.
    pub secure: bool,
}

pub use guard::Hosts;
pub use practice::Beside;

/// Largest form that is read: a full tray of pouches, many times over.
const LARGEST_FORM: usize = 256 * 1024;

/// Answers below this many bytes gain nothing by being packed.
const SHORT: u64 = 600;

/// The screens themselves: let in and go, trusted, cut off.
fn screens() -> Router<Served> {
    Router::new()
        .route("/stations", get(show::screens::stations))
        .route("/stations/code", post(stations::code))
        .route("/pair", get(show::screens::pair).post(stations::pair))
        .route("/trust", get(show::screens::trust))
        .route("/trust/authority.crt", get(stations::certificate))
        .route("/kept", get(show::screens::kept))
        .route("/kept/{name}", post(kept::act))
        .route("/worker.js", get(stations::worker))
        .layer(DefaultBodyLimit::max(LARGEST_FORM))
}

/// For somebody from outside, and for those who learn.
fn for_others() -> Router<Served> {
    Router::new()
        .route("/show", get(folder::page).post(folder::begin))
        .route("/show/close", post(folder::close))
        // Whoever has the address may read, from any screen: it has to stay open to screens that were
        // not let in, as long as it is reached by its random token alone and takes no form.
        .route("/folder/{token}", get(folder::read))
        .route("/cards", get(practice::cards))
        .route("/cards/sheet", get(practice::sheet))
        .route("/practice", get(practice::front_door).post(practice::open))
        .route("/act/card-deal", post(practice::deal))
        .layer(DefaultBodyLimit::max(LARGEST_FORM))
}

/// All addresses.
pub fn router(served: Served) -> Router {
    let records = Router::new()
        .route("/act/take", post(take_posts::take))
        .route("/act/bring", post(day_posts::bring))
        .layer(DefaultBodyLimit::max(crate::intake::take::LARGEST + 1024 * 1024));
    // Its pieces are counted as they come in, and no more is kept than a photo may have.
    let photos = Router::new()
        .route("/chair/photo", post(chair_posts::photo))
        .layer(DefaultBodyLimit::max(4 * crate::photo::LARGEST));
    Router::new()
        .route("/", get(show::now))
        .route("/first", get(show::first))
        .route("/plan", get(show::plan))
        .route("/plan/ways", get(show::ways))
        .route("/sets", get(show::sets))
        .route("/wash", get(show::wash))
        .route("/start", get(show::start))
        .route("/machine", get(show::machine))
        .route("/run/{run}", get(show::run))
        .route("/upkeep", get(show::upkeep))
        .route("/upkeep/set", get(show::upkeep_set))
        .route("/ready", get(show::ready))
        .route("/chair", get(show::chair))
        .route("/chair/another", get(show::another))
        .route("/log", get(show::log))
        .route("/correct/{act}", get(show::correct))
        .route("/hand-over", get(show::hand_over))
        .route("/later", get(show::later))
        .route("/week", get(show::week))
        .route("/recall", get(show::recall))
        .route("/unclaimed/{record}/{cycle}", get(show::unclaimed))
        .route("/spores", get(show::spores::list))
        .route("/spores/{test}", get(show::spores::path))
        .route("/letter", get(show::spores::letter))
        .route("/shapes", get(show::legend))
        .route("/setup", get(show::setup))
        .route("/wall", get(live::wall))
        .route("/strip", get(live::strip))
        .route("/live", get(live::live))
        .route("/visits", get(show::visits))
        .route("/services", get(show::services))
        .route("/tray", get(show::tray))
        .route("/bag", get(show::bag))
        .route("/in", get(show::goes_in))
        .route("/labels", get(show::labels))
        .route("/assets/{name}", get(show::asset))
        .fallback(get(show::nowhere))
        .route("/language", post(posts::language))
        .route("/act/{name}", post(posts::act))
        .layer(DefaultBodyLimit::max(LARGEST_FORM))
        .merge(records)
        .merge(photos)
        .merge(screens())
        .merge(for_others())
        .layer(middleware::from_fn_with_state(served.clone(), guard::guard))
        // Events go out one by one, and pictures are small already.
        .layer(
            CompressionLayer::new().compress_when(
                SizeAbove::new(SHORT)
                    .and(NotForContentType::SSE)
                    .and(NotForContentType::const_new("application/")),
            ),
        )
        .with_state(served)
}
