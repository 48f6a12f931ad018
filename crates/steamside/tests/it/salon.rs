//! A salon for a test: the real program on a real file in a folder of its own.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// The built program.
pub fn program() -> Command {
    Command::new(env!("CARGO_BIN_EXE_steamside"))
}

/// A running `steamside serve` or `demo`. Killed when it goes out of scope.
pub struct Salon {
    child: Option<Child>,
    /// `http://127.0.0.1:PORT`.
    pub url: String,
    /// Where the book lies.
    pub book: PathBuf,
    /// The secure address, where one was asked for.
    pub secure: Option<std::net::SocketAddr>,
}

impl Salon {
    /// Serves the book in a folder, at a free port.
    pub fn serve(book: &Path, more: &[&str]) -> Self {
        let mut command = program();
        command.args(["serve", "--listen", "127.0.0.1:0", "--book"]).arg(book).args(more);
        Self::start(command, book)
    }

    /// Serves it where the network reaches it.
    pub fn serve_all(book: &Path) -> Self {
        let mut command = program();
        command.args(["serve", "--listen", "0.0.0.0:0", "--zone", "Etc/UTC", "--book"]).arg(book);
        Self::start(command, book)
    }

    /// A new demo in a folder.
    pub fn demo(folder: &Path) -> Self {
        let mut command = program();
        command.args(["demo", "--listen", "127.0.0.1:0", "--folder"]).arg(folder);
        Self::start(command, folder)
    }

    /// The same, reached by the network over both addresses.
    pub fn demo_for_all(folder: &Path) -> Self {
        let mut command = program();
        command.args(["demo", "--listen", "0.0.0.0:0", "--secure", "127.0.0.1:0", "--folder"]);
        command.arg(folder);
        Self::start(command, folder)
    }

    /// Starts it again at its address, after [`Salon::kill`] or an end of its own.
    pub fn again(&mut self) {
        let mut command = program();
        let at = self.url.trim_start_matches("http://");
        command.args(["serve", "--listen", at, "--book"]).arg(&self.book);
        *self = Self::start(command, &self.book.clone());
    }

    /// A new practice book in a folder.
    pub fn practice(folder: &Path) -> Self {
        let mut command = program();
        command.args(["practice", "--listen", "127.0.0.1:0", "--folder"]).arg(folder);
        Self::start(command, folder)
    }

    /// Pages that another one serves.
    pub fn at(url: &str, book: &Path) -> Self {
        Self { child: None, url: url.to_owned(), book: book.to_owned(), secure: None }
    }

    fn start(mut command: Command, book: &Path) -> Self {
        let secure = command.get_args().any(|arg| arg == "--secure");
        let mut child =
            command.stdout(Stdio::piped()).stderr(Stdio::inherit()).spawn().expect("it starts");
        let mut lines = BufReader::new(child.stdout.take().expect("piped")).lines();
        let first = lines.next().expect("it says its address").expect("as text");
        let url = first
            .split_whitespace()
            .find_map(|word| word.strip_prefix("http://"))
            .map(|rest| format!("http://{}", rest.trim_end_matches('/')))
            .unwrap_or_else(|| panic!("no address in {first:?}"));
        let secure = secure.then(|| {
            let second = lines.next().expect("it says its secure address").expect("as text");
            let at = second.split_whitespace().find_map(|word| word.strip_prefix("https://"));
            let at = at.map(|at| at.trim_end_matches(['/', '.']).parse().expect("an address"));
            at.unwrap_or_else(|| panic!("no secure address in {second:?}"))
        });
        // Whatever it prints later must not block it.
        std::thread::spawn(move || lines.for_each(drop));
        Self { child: Some(child), url, book: book.to_owned(), secure }
    }

    fn child(&self) -> &Child {
        self.child.as_ref().expect("one of its own")
    }

    /// Process id, for `kill`.
    pub fn pid(&self) -> String {
        self.child().id().to_string()
    }

    /// `kill -9`; it may be gone already.
    pub fn kill(&mut self) {
        let child = self.child.as_mut().expect("one of its own");
        drop(child.kill());
        child.wait().expect("it ends");
    }

    /// Ctrl-C, and its exit status.
    pub fn interrupt(&mut self) -> std::process::ExitStatus {
        let pid = self.child().id().to_string();
        let sent = Command::new("kill").args(["-INT", &pid]).status().expect("kill runs");
        assert!(sent.success());
        self.child.as_mut().expect("one of its own").wait().expect("it ends")
    }

    /// A page as text.
    pub fn get(&self, path: &str) -> (u16, String) {
        let agent = agent();
        let mut answer = agent.get(format!("{}{path}", self.url)).call().expect("an answer");
        (answer.status().as_u16(), answer.body_mut().read_to_string().expect("text"))
    }

    /// A page in a language.
    pub fn get_in(&self, path: &str, language: &str) -> (u16, String) {
        let asked = agent().get(format!("{}{path}", self.url)).header("accept-language", language);
        let mut answer = asked.call().expect("an answer");
        (answer.status().as_u16(), answer.body_mut().read_to_string().expect("text"))
    }

    /// Where a form leads.
    pub fn location(&self, path: &str, fields: &[(&str, &str)]) -> String {
        let url = format!("{}{path}", self.url);
        let answer = agent().post(url).send_form(fields.iter().copied()).expect("an answer");
        let location = answer.headers().get("location").expect("it leads somewhere");
        location.to_str().expect("as text").to_owned()
    }

    /// The answer to a form as text, with its status.
    pub fn answer(&self, path: &str, fields: &[(&str, &str)]) -> (u16, String) {
        let url = format!("{}{path}", self.url);
        let mut answer = agent().post(url).send_form(fields.iter().copied()).expect("an answer");
        (answer.status().as_u16(), answer.body_mut().read_to_string().expect("text"))
    }

    /// The page with which a form is answered.
    pub fn post_page(&self, path: &str, fields: &[(&str, &str)]) -> String {
        self.answer(path, fields).1
    }

    /// A form; the status, or `None` where the program was gone before it answered.
    pub fn post(&self, path: &str, fields: &[(&str, &str)]) -> Option<u16> {
        let answer =
            agent().post(format!("{}{path}", self.url)).send_form(fields.iter().copied()).ok()?;
        Some(answer.status().as_u16())
    }
}

impl Salon {
    /// A record, as the file field of a page's form would send it; the status.
    pub fn upload(&self, fields: &[(&str, &str)], file: &str) -> u16 {
        self.send("/act/take", fields, file).status().as_u16()
    }

    /// A file to an address that answers with a page.
    pub fn upload_page(&self, path: &str, fields: &[(&str, &str)], file: &str) -> String {
        let mut answer = self.send(path, fields, file);
        assert_eq!(answer.status().as_u16(), 200);
        answer.body_mut().read_to_string().expect("text")
    }

    fn send(
        &self,
        path: &str,
        fields: &[(&str, &str)],
        file: &str,
    ) -> ureq::http::Response<ureq::Body> {
        const BORDER: &str = "border-of-the-parts";
        let mut body = String::new();
        for (name, value) in fields {
            body += &format!(
                "--{BORDER}\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n"
            );
        }
        body += &format!(
            "--{BORDER}\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\
             Content-Type: text/csv\r\n\r\n{file}\r\n--{BORDER}--\r\n"
        );
        agent()
            .post(format!("{}{path}", self.url))
            .content_type(format!("multipart/form-data; boundary={BORDER}"))
            .send(body)
            .expect("an answer")
    }
}

impl Drop for Salon {
    fn drop(&mut self) {
        // It may have been ended by the test already.
        if let Some(child) = &mut self.child {
            drop(child.kill());
            drop(child.wait());
        }
    }
}

fn agent() -> ureq::Agent {
    ureq::Agent::config_builder()
        .http_status_as_error(false)
        .max_redirects(0)
        .timeout_global(Some(std::time::Duration::from_secs(20)))
        .build()
        .into()
}

/// A new id, as a page would make one.
pub fn id() -> String {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes).expect("random bytes");
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}
