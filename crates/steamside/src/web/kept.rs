//! What was tapped while a station was cut off, and comes now. The answers are for the station's
//! own script, which shows them until somebody has read them.

use super::head::Head;
use super::posts::do_act;
use super::{Ctx, Fields, Served, chair_posts};
use crate::acts::Refusal;
use crate::app::App;
use crate::pages::{meanwhile, refused, stop};
use axum::Form;
use axum::extract::{Path, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;

/// What came of it.
#[derive(Debug, Serialize)]
pub struct Answer {
    /// `done` or `refused`.
    is: &'static str,
    /// Something to be told, in a few words.
    #[serde(skip_serializing_if = "Option::is_none")]
    title: Option<String>,
    /// And at length.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    lines: Vec<String>,
}

impl Answer {
    fn refused(title: String, lines: Vec<String>) -> Self {
        Self { is: "refused", title: Some(title), lines }
    }
}

/// An act that was kept.
pub async fn act(
    State(served): State<Served>,
    Path(name): Path<String>,
    head: Head,
    Form(pairs): Form<Vec<(String, String)>>,
) -> Response {
    let fields = Fields(pairs);
    let for_work = head.clone();
    let work = move |app: &App| answer(app, &name, &for_work, &fields);
    let broken = |why: String| (StatusCode::INTERNAL_SERVER_ERROR, why).into_response();
    match served.app.look(work).await {
        Ok(Ok(answer)) => match serde_json::to_string(&answer) {
            Ok(text) => {
                (head.jar, [(header::CONTENT_TYPE, "application/json")], text).into_response()
            }
            Err(error) => broken(error.to_string()),
        },
        // The station keeps it and sends it again.
        Ok(Err(refusal)) => {
            eprintln!("steamside: {refusal}");
            broken(refusal.to_string())
        }
        Err(error) => broken(error.to_string()),
    }
}

fn answer(app: &App, name: &str, head: &Head, fields: &Fields) -> Result<Answer, Refusal> {
    if fields.one(chair_posts::KEPT).is_none() {
        let no = Refusal::rule_with("refused-field-missing", "field", chair_posts::KEPT);
        return app.book.read(|view| said(&head.ctx(app, view)?, no));
    }
    match do_act(app, name, head, fields) {
        Ok(done) => app.book.read(|view| {
            let told = meanwhile::after(view, &head.ctx(app, view)?, done.act)?;
            Ok(match told {
                Some(told) => Answer { is: "done", title: Some(told.title), lines: told.lines },
                None => Answer { is: "done", title: None, lines: Vec::new() },
            })
        }),
        Err(refusal @ (Refusal::Book(_) | Refusal::Chance(_))) => Err(refusal),
        Err(refusal) => app.book.read(|view| {
            let ctx = head.ctx(app, view)?;
            let run = fields.maybe("run").ok().flatten();
            let mut answer = said(&ctx, refusal)?;
            if let Some(run) = run {
                answer.lines.extend(meanwhile::holds(view, &ctx, run)?);
            }
            Ok(answer)
        }),
    }
}

/// A refusal in the reader's words.
fn said(ctx: &Ctx, refusal: Refusal) -> Result<Answer, Refusal> {
    let words = ctx.words();
    Ok(match refusal {
        Refusal::Rule(rule) => {
            let lines = refused::lines(ctx, rule.key, &rule.args);
            Answer::refused(words.say("refused-heading"), lines.to_vec())
        }
        Refusal::Stop(pouch) => {
            let code = pouch.code.to_string();
            let (why, to_do) = stop::reason(
                ctx,
                &stop::Stop { pouch: Some(&pouch), code: &code, run: None, chair: None },
            );
            Answer::refused(words.say("do-not-use"), vec![code, why, to_do])
        }
        Refusal::NoSuchCode(code) => {
            let lines = vec![code, words.say("stop-unknown"), words.say("stop-unknown-do")];
            Answer::refused(words.say("do-not-use"), lines)
        }
        other => return Err(other),
    })
}
