//! Spore tests: the list, the way on after a failed one, and the letter.

use super::{Asked, read, show};
use crate::pages;
use crate::web::Served;
use crate::web::head::Head;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use measure::TestId;

/// Spore tests.
pub async fn list(State(served): State<Served>, head: Head) -> Response {
    show(&served, head, |view, ctx| Ok(Some(pages::spores::page(view, ctx)?))).await
}

/// The way on after a failed spore test.
pub async fn path(State(served): State<Served>, Path(test): Path<String>, head: Head) -> Response {
    let test: Option<TestId> = test.parse().ok();
    show(&served, head, move |view, ctx| match test {
        Some(test) => Ok(pages::spore_path::page(view, ctx, test)?),
        None => Ok(None),
    })
    .await
}

/// A letter to those who were here.
pub async fn letter(
    State(served): State<Served>,
    Query(asked): Query<Asked>,
    head: Head,
) -> Response {
    let test: Option<TestId> = read(asked.test.as_ref());
    let (visit, asked) = (read(asked.visit.as_ref()), asked.asked.is_some());
    show(&served, head, move |view, ctx| match test {
        Some(test) => {
            Ok(pages::letter::page(view, ctx, pages::letter::Asked { test, visit, asked })?)
        }
        None => Ok(None),
    })
    .await
}
