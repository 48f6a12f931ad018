//! Pages about the screens themselves: which were let in, how one is, how one trusts the box, what
//! one keeps.

use super::{Asked, show};
use crate::pages;
use crate::web::head::Head;
use crate::web::{Served, stations};
use axum::extract::{Query, State};
use axum::response::{IntoResponse, Response};
use std::sync::Arc;

/// Screens that were let in.
pub async fn stations(State(served): State<Served>, head: Head) -> Response {
    let door = Arc::clone(&served.door);
    let may = head.clone();
    show(&served, head, move |view, ctx| {
        let may = stations::may_let_in(view, &may)?;
        Ok(Some(pages::stations::page(view, ctx, &door, may)?))
    })
    .await
}

/// How a screen is let in.
pub async fn pair(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let code = asked.code.unwrap_or_default();
    let page = stations::pair_page(&served, &head, None, &code);
    (head.jar, page).into_response()
}

/// How to trust the box.
pub async fn trust(State(served): State<Served>, head: Head) -> Response {
    let page = pages::trust::page(head.language, &served.door.reach, &head.here);
    (head.jar, page).into_response()
}

/// What a screen keeps for when the box cannot be reached.
pub async fn kept(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::kept::page(view, ctx)?))).await
}
