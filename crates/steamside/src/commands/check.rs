//! `check`: what do cycle records prove?
//!
//! Every file is answered, in the order of the arguments, on as many threads as there are
//! processors; no more than one cycle of a file is held at a time. Nothing is written anywhere but to the two output streams.

mod options;
mod text;

use crate::wire;
use clap::{Args, ValueEnum};
use cycle::figures::{self, Ask};
use cycle::record::{self, Known};
use load::Contents;
use options::Terms;
use release::limits::Limits;
use release::verdict::{self, Asked, Outcome};
use std::fs::File;
use std::io::{self, BufWriter, StdoutLock, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc::{Receiver, SyncSender, TryRecvError, sync_channel};

/// Answers of one file that may wait to be printed; its thread waits when there are more.
const WAITING: usize = 16;

/// What to check, and by what.
#[derive(Debug, Args)]
pub struct CheckArgs {
    /// Cycle records, of any layout with a chamber temperature and a time or an interval.
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// Sentences for people, or one JSON object a line for programs.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    /// The most demanding thing inside: unwrapped, pouched, hollow or unknown.
    #[arg(long, value_name = "CONTENTS", default_value = "unknown")]
    load: Contents,
    /// Set temperature in °C, where the record does not say it.
    #[arg(long, value_name = "CELSIUS")]
    set_temp: Option<f64>,
    /// Least time at temperature, as 180, 180s or 3min. Never lowers the published one.
    #[arg(long, value_name = "TIME", value_parser = options::seconds)]
    hold: Option<f64>,
    /// Drying time that was set, as 600, 600s or 10min.
    #[arg(long, value_name = "TIME", value_parser = options::seconds)]
    drying: Option<f64>,
    /// Altitude of the place in metres.
    #[arg(long, value_name = "METRES", allow_negative_numbers = true)]
    altitude: Option<f64>,
    /// Seconds between two rows, where the record has no times and does not say it.
    #[arg(long, value_name = "TIME", value_parser = options::seconds)]
    interval: Option<f64>,
    /// Reference temperature of F0 in °C.
    #[arg(long, value_name = "CELSIUS", default_value_t = cycle::lethality::F0_REFERENCE_C)]
    f0_reference: f64,
    /// z of F0 in K.
    #[arg(long = "z", value_name = "KELVIN", default_value_t = cycle::lethality::F0_Z_K)]
    z: f64,
    /// A rule of your own, as leak_kpa_per_min=0.1. A laxer one than the published is not taken.
    #[arg(long, value_name = "KEY=VALUE")]
    rule: Vec<String>,
}

/// How to answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    Text,
    Json,
}

/// Checks every file. Exit status 0: all prove it; 1: some do not; 2: some could not be used.
pub fn run(args: CheckArgs) -> ExitCode {
    let terms = match Terms::of(&args) {
        Ok(terms) => terms,
        Err(what) => return super::unusable(what),
    };
    for laxer in &terms.not_taken {
        eprintln!("steamside: {laxer}");
    }
    match all_files(&args, &terms) {
        Ok(worst) => ExitCode::from(worst),
        // Whoever read the answers has left; there is nobody to tell.
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::from(2),
        Err(error) => super::unusable(format_args!(
            "the answers could not be printed ({error}); nothing was changed; run the check again"
        )),
    }
}

/// One answer: a line or a paragraph for standard output, a message, the exit status it asks for.
struct Answer {
    out: String,
    message: Option<String>,
    status: u8,
}

fn all_files(args: &CheckArgs, terms: &Terms) -> io::Result<u8> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from).min(args.files.len());
    if threads > 1 { on_threads(threads, args, terms) } else { one_by_one(args, terms) }
}

/// With a single processor handing answers from thread to thread would only cost time.
fn one_by_one(args: &CheckArgs, terms: &Terms) -> io::Result<u8> {
    let mut printer = Printer::new();
    let mut buffer = Vec::new();
    for path in &args.files {
        let mut printed = Ok(());
        one_file(path, (args, terms), &mut buffer, &mut |answer| {
            printed = printer.print(answer);
            printed.is_ok()
        });
        printed?;
    }
    printer.end()
}

/// Files are taken in their order, so that the one being printed is always being worked on.
fn on_threads(threads: usize, args: &CheckArgs, terms: &Terms) -> io::Result<u8> {
    let (senders, receivers): (Vec<_>, Vec<_>) =
        args.files.iter().map(|_| sync_channel(WAITING)).unzip();
    let senders: Vec<_> =
        senders.into_iter().map(|sender| std::sync::Mutex::new(Some(sender))).collect();
    let next = AtomicUsize::new(0);
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                let mut buffer = Vec::new();
                while let Some((path, sender)) = take(&next, &args.files, &senders) {
                    let mut tell = |answer| sender.send(answer).is_ok();
                    one_file(path, (args, terms), &mut buffer, &mut tell);
                }
            });
        }
        let printed = print(receivers);
        // When nobody reads any more, let the threads find no more files.
        if printed.is_err() {
            next.store(args.files.len(), Ordering::Relaxed);
        }
        printed
    })
}

type Slot = std::sync::Mutex<Option<SyncSender<Answer>>>;

fn take<'a>(
    next: &AtomicUsize,
    files: &'a [PathBuf],
    senders: &[Slot],
) -> Option<(&'a Path, SyncSender<Answer>)> {
    let at = next.fetch_add(1, Ordering::Relaxed);
    let sender = senders.get(at)?.lock().ok()?.take()?;
    Some((files.get(at)?, sender))
}

/// Prints the answers in order.
fn print(receivers: Vec<Receiver<Answer>>) -> io::Result<u8> {
    let mut printer = Printer::new();
    for receiver in receivers {
        let mut answered = false;
        loop {
            // What is known is shown before waiting for more.
            let answer = match receiver.try_recv() {
                Err(TryRecvError::Empty) => {
                    printer.out.flush()?;
                    receiver.recv().ok()
                }
                other => other.ok(),
            };
            let Some(answer) = answer else { break };
            printer.print(answer)?;
            answered = true;
        }
        if !answered {
            printer.worst = 2;
            eprintln!(
                "steamside: a file was not answered; this is a fault of the program; check it alone"
            );
        }
    }
    printer.end()
}

/// Both output streams, and the worst status so far.
struct Printer {
    out: BufWriter<StdoutLock<'static>>,
    worst: u8,
}

impl Printer {
    fn new() -> Self {
        Self { out: BufWriter::with_capacity(64 * 1024, io::stdout().lock()), worst: 0 }
    }

    fn print(&mut self, answer: Answer) -> io::Result<()> {
        self.out.write_all(answer.out.as_bytes())?;
        if let Some(message) = answer.message {
            self.out.flush()?;
            eprintln!("steamside: {message}");
        }
        self.worst = self.worst.max(answer.status);
        Ok(())
    }

    fn end(mut self) -> io::Result<u8> {
        self.out.flush()?;
        Ok(self.worst)
    }
}

/// Every cycle of one file, read through a buffer that the next file can use. `tell` says whether anybody still listens; if not, no more is done.
fn one_file(
    path: &Path,
    (args, terms): (&CheckArgs, &Terms),
    buffer: &mut Vec<u8>,
    tell: &mut dyn FnMut(Answer) -> bool,
) {
    let name = path.to_string_lossy();
    let opened = open(path).and_then(|file| {
        record::cycles_through(file, &terms.known, std::mem::take(buffer))
            .map_err(|error| (error.line, error.to_string()))
    });
    let mut cycles = match opened {
        Ok(cycles) => cycles,
        Err((line, what)) => {
            tell(unusable(&name, line, &what, args.format));
            return;
        }
    };
    let mut some = false;
    for cycle in cycles.by_ref() {
        some = true;
        let answer = match cycle {
            Ok(record) => judged(&name, &record, args, terms),
            Err(error) => unusable(&name, error.line, &error.to_string(), args.format),
        };
        if !tell(answer) {
            return;
        }
    }
    if !some {
        let what = "no cycle in it: give a record with a time and a chamber temperature";
        tell(unusable(&name, None, what, args.format));
    }
    *buffer = cycles.into_buffer();
}

/// Only what is a file with something in it, or a link to one: a pipe, a device or a window into the
/// system that calls itself an empty file may never begin or never end, so it is looked at before it
/// is opened.
fn open(path: &Path) -> Result<File, (Option<u32>, String)> {
    let missing = |error: io::Error| {
        (None, format!("cannot be opened ({error}): check its name and who may read it"))
    };
    let about = std::fs::metadata(path).map_err(missing)?;
    if about.is_dir() {
        return Err((None, "is a folder: name the files in it, as FOLDER/*".to_owned()));
    }
    if !about.is_file() {
        return Err((None, "is a pipe or a device: put the record into a file first".to_owned()));
    }
    if about.len() == 0 {
        return Err((None, "is empty: export the record once more".to_owned()));
    }
    File::open(path).map_err(missing)
}

fn judged(name: &str, record: &record::CycleRecord, args: &CheckArgs, terms: &Terms) -> Answer {
    let figures = figures::examine(record, &terms.ask);
    let asked = Asked::new(args.load, &terms.limits);
    let verdict = verdict::judge(record, &figures, &asked);
    let proven = matches!(verdict.outcome, Outcome::Lethal | Outcome::LeakPass);
    let out = match args.format {
        Format::Json => line(&wire::check::cycle(name, record, &figures, &verdict)),
        Format::Text => Ok(text::cycle(name, record, &figures, &verdict)),
    };
    answer(name, out, None, u8::from(!proven))
}

fn unusable(name: &str, at: Option<u32>, what: &str, format: Format) -> Answer {
    let out = match format {
        Format::Json => line(&wire::check::unreadable(name, at, what)),
        Format::Text => Ok(format!("{name}: cannot tell; the file could not be used\n")),
    };
    answer(name, out, Some(format!("{name}: {what}")), 2)
}

fn answer(
    name: &str,
    out: serde_json::Result<String>,
    message: Option<String>,
    status: u8,
) -> Answer {
    match out {
        Ok(out) => Answer { out, message, status },
        Err(error) => {
            let what = format!(
                "{name}: the answer could not be written ({error}); nothing was changed; report this"
            );
            Answer { out: String::new(), message: Some(what), status: 2 }
        }
    }
}

fn line(value: &wire::check::Line<'_>) -> serde_json::Result<String> {
    // Room for an ordinary answer at once.
    let mut out = Vec::with_capacity(4 * 1_024);
    serde_json::to_writer(&mut out, value)?;
    out.push(b'\n');
    String::from_utf8(out).map_err(serde::ser::Error::custom)
}
