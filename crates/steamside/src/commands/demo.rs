//! `demo`: an invented salon in the middle of a busy day.

use super::serve::{FOLDER_MINUTES, ServeArgs, serve};
use super::unusable;
use crate::demo;
use clap::Args;
use std::net::SocketAddr;
use std::path::PathBuf;
use std::process::ExitCode;

/// Where the demo lies.
#[derive(Debug, Args)]
pub struct DemoArgs {
    /// Folder of the demo. An older demo there is replaced; anything else is left alone.
    #[arg(long, default_value = "demo-salon")]
    folder: PathBuf,
    /// Go on with the demo that is there instead of a new one.
    #[arg(long)]
    keep: bool,
    /// Address and port; this computer only unless told otherwise.
    #[arg(long, default_value = "127.0.0.1:7420")]
    listen: SocketAddr,
    /// A secure address and port as well, such as 0.0.0.0:7443.
    #[arg(long)]
    secure: Option<SocketAddr>,
}

/// Makes the salon and opens it.
pub fn run(args: DemoArgs) -> ExitCode {
    let app = match demo::open(&args.folder, args.keep) {
        Ok(app) => app,
        Err(error) => return unusable(format_args!("{}: {error}", args.folder.display())),
    };
    let stick = args.folder.join(demo::STICK);
    let serve_args = ServeArgs {
        book: None,
        listen: args.listen,
        secure: args.secure,
        watch: vec![format!("{}=1", stick.display())],
        name: Vec::new(),
        zone: None,
        folder_minutes: FOLDER_MINUTES,
    };
    let try_it = format!(
        "To try: drop a file from {} onto the page MACHINE, or copy it into {}.",
        args.folder.join(demo::RECORDS).display(),
        stick.display()
    );
    serve(app, &serve_args, Some(try_it))
}
