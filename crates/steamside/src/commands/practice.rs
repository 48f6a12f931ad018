//! `practice`: a made-up salon for teaching, never a salon's own book.

use super::serve::{FOLDER_MINUTES, ServeArgs, serve};
use super::unusable;
use crate::practice;
use clap::Args;
use std::net::SocketAddr;
use std::path::PathBuf;
use std::process::ExitCode;

/// Where the practice book lies.
#[derive(Debug, Args)]
pub struct PracticeArgs {
    /// Folder of the practice book; anything else that lies there is left alone.
    #[arg(long, default_value = "practice-salon")]
    folder: PathBuf,
    /// Begin a new one instead of going on with the one that is there.
    #[arg(long)]
    new: bool,
    /// Address and port; this computer only unless told otherwise.
    #[arg(long, default_value = "127.0.0.1:7421")]
    listen: SocketAddr,
}

/// Makes the salon, or goes on with it, and opens it.
pub fn run(args: PracticeArgs) -> ExitCode {
    let app = match practice::open(&args.folder, args.new) {
        Ok(app) => app,
        Err(error) => return unusable(format_args!("{}: {error}", args.folder.display())),
    };
    let serve_args = ServeArgs {
        book: None,
        listen: args.listen,
        secure: None,
        watch: Vec::new(),
        name: Vec::new(),
        zone: None,
        folder_minutes: FOLDER_MINUTES,
    };
    let cards = "PRACTICE: a made-up salon. The cards are at /cards.".to_owned();
    serve(app, &serve_args, Some(cards))
}
