//! What has just changed, for the screens that are open: the book's last fact, and the last word
//! of each machine whose file is growing. Nothing of it is kept: it is true for the moment.

use crate::app::App;
use measure::{Instant, RunId};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use tokio::sync::watch;

/// Time between two looks at the book, for what other programs write into it.
const PAUSE: Duration = Duration::from_secs(1);

/// So many runs are spoken of at once; the words of runs that are over fall out.
const MOST: usize = 16;

/// A phase of a running run, as far as its record shows one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    /// Warming up.
    HeatingUp,
    /// Air is driven out.
    AirOut,
    /// At the set temperature.
    AtTemperature,
    /// Steam is let go.
    SteamOut,
    /// Drying.
    Drying,
    /// Air comes back in, or the chamber is open.
    AirIn,
}

/// The last word of a machine on the run in it. Nothing in it is judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Word {
    /// The run.
    pub run: RunId,
    /// The phase of the last sample; `None` where the record does not show it.
    pub phase: Option<Phase>,
    /// Temperature of the last sample, thousandths of a degree Celsius.
    pub temp_mc: i64,
    /// Longest stretch at the set temperature so far, milliseconds; 0 before it, and where the
    /// record does not say which it is.
    pub held_ms: i64,
    /// When the file last grew.
    pub heard: Instant,
}

/// What a screen is told.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Beat {
    /// Place of the book's last fact.
    pub seq: u64,
    /// Counts the words of machines.
    pub words: u64,
    /// The program ends: whoever listens should stop.
    pub closing: bool,
}

/// The one place where changes are told.
#[derive(Debug)]
pub struct Live {
    beat: watch::Sender<Beat>,
    words: Mutex<Vec<Word>>,
}

impl Default for Live {
    fn default() -> Self {
        Self { beat: watch::Sender::new(Beat::default()), words: Mutex::default() }
    }
}

impl Live {
    /// Hears every later change.
    pub fn listen(&self) -> watch::Receiver<Beat> {
        self.beat.subscribe()
    }

    /// The book reaches up to this fact now.
    pub fn book(&self, seq: u64) {
        self.beat.send_if_modified(|beat| {
            let further = seq > beat.seq;
            beat.seq = beat.seq.max(seq);
            further
        });
    }

    /// A machine has said something new of its run.
    pub fn word(&self, word: Word) {
        let mut words = self.lock();
        words.retain(|known| known.run != word.run);
        words.push(word);
        let over = words.len().saturating_sub(MOST);
        words.drain(..over);
        drop(words);
        self.beat.send_modify(|beat| beat.words += 1);
    }

    /// The last word on a run.
    pub fn word_on(&self, run: RunId) -> Option<Word> {
        self.lock().iter().find(|word| word.run == run).copied()
    }

    /// Lets every listener go: the program ends.
    pub fn close(&self) {
        self.beat.send_modify(|beat| beat.closing = true);
    }

    fn lock(&self) -> MutexGuard<'_, Vec<Word>> {
        // Each word is whole or not there, whatever became of a thread that held the lock.
        self.words.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Looks at the book once a second, while anybody listens: another program may write into it too.
pub async fn follow(app: App) {
    loop {
        tokio::time::sleep(PAUSE).await;
        if app.live.beat.receiver_count() == 0 {
            continue;
        }
        // A look that fails is no news; the page that is asked for next says what is wrong.
        if let Ok(Ok(seq)) = app.look(|app| app.read(|view| view.last_seq())).await {
            app.live.book(seq);
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;
    use crate::pages::tests::id;

    #[test]
    fn only_news_is_told() {
        let live = Live::default();
        let mut told = live.listen();
        live.book(4);
        assert!(told.has_changed().unwrap());
        assert_eq!(told.borrow_and_update().seq, 4);
        live.book(4);
        live.book(3);
        assert!(!told.has_changed().unwrap(), "the book never grows shorter");
        let word = Word {
            run: id(1),
            phase: Some(Phase::Drying),
            temp_mc: 134_200,
            held_ms: 0,
            heard: Instant::from_millis(1),
        };
        live.word(word);
        live.word(Word { temp_mc: 100_000, ..word });
        assert!(told.has_changed().unwrap());
        assert_eq!(live.word_on(id(1)).map(|word| word.temp_mc), Some(100_000));
        for other in 2..20 {
            live.word(Word { run: id(other), ..word });
        }
        assert_eq!((live.word_on(id(1)), live.word_on(id(19)).is_some()), (None, true));
        live.close();
        assert!(told.borrow_and_update().closing);
    }
}
