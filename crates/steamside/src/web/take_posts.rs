//! Records chosen or dropped on a page.

use super::head::Head;
use super::posts::back;
use super::show::{answer_refusal, trouble};
use super::{Fields, Served, day_posts};
use crate::acts::Refusal;
use crate::app::{App, Who};
use crate::chance;
use crate::intake::appointments::is_appointments;
use crate::intake::take::{Arrived, take as take_in};
use axum::extract::{Multipart, State};
use axum::response::{IntoResponse, Response};
use logbook::fact::{Known, Way};
use measure::{ActId, MachineId, RunId};

/// What the multipart form of a record holds.
#[derive(Default)]
pub(super) struct Upload {
    pub(super) fields: Fields,
    /// Each with the name it came under.
    pub(super) files: Vec<(String, Vec<u8>)>,
}

pub(super) async fn upload(mut form: Multipart) -> Result<Upload, Refusal> {
    let unread = |_| Refusal::rule("refused-upload-cut");
    let mut upload = Upload::default();
    while let Some(part) = form.next_field().await.map_err(unread)? {
        let name = part.name().unwrap_or_default().to_owned();
        if name == "file" {
            let called = part.file_name().unwrap_or_default().to_owned();
            let bytes = part.bytes().await.map_err(unread)?.to_vec();
            if !bytes.is_empty() {
                upload.files.push((called, bytes));
            }
        } else {
            upload.fields.0.push((name, part.text().await.map_err(unread)?));
        }
    }
    Ok(upload)
}

/// Records chosen or dropped on a page.
pub async fn take(State(served): State<Served>, head: Head, form: Multipart) -> Response {
    let upload = match upload(form).await {
        Ok(upload) => upload,
        Err(refusal) => return answer_refusal(&served, head, refusal, None).await,
    };
    if upload.files.iter().any(|(_, bytes)| is_appointments(bytes)) {
        return day_posts::bring_upload(&served, head, upload).await;
    }
    let fields = upload.fields.clone();
    let work = {
        let head = head.clone();
        move |app: &App| take_all(app, &head, &upload)
    };
    match served.app.look(work).await {
        Ok(Ok(did)) => (head.jar, back(&fields, "/machine", did)).into_response(),
        Ok(Err(refusal)) => answer_refusal(&served, head, refusal, fields.one("back")).await,
        Err(error) => trouble(&head, &error.to_string()),
    }
}

fn take_all(app: &App, head: &Head, upload: &Upload) -> Result<Option<ActId>, Refusal> {
    if upload.files.is_empty() {
        return Err(Refusal::rule("refused-no-file"));
    }
    let machine: Option<MachineId> = upload.fields.maybe("machine")?;
    let run: Option<RunId> = upload.fields.maybe("run")?;
    let first: ActId = upload.fields.need("act")?;
    let mut did = None;
    for (index, (_, bytes)) in upload.files.iter().enumerate() {
        let act = if index == 0 { first } else { chance::id()? };
        let who = Who {
            act,
            station: head.station,
            sign: upload.fields.maybe("sign")?,
            happened: None,
            known: Known::Measured,
        };
        let arrived = Arrived { bytes, way: Way::Page, machine, run };
        app.act(who, |view, draft| take_in(view, draft, arrived).map(|_| ()))?;
        did = Some(act);
    }
    Ok(did)
}
