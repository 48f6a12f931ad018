//! The secure address beside the plain one: the same pages, with a certificate that the box makes for
//! the names and addresses that it has now, and makes again when they change.

use super::{bound, stopped};
use crate::clock;
use crate::door::Public;
use crate::secure::Authority;
use crate::secure::names::Names;
use axum::Router;
use axum_server::Handle;
use axum_server::tls_rustls::RustlsConfig;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use std::net::SocketAddr;
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;

/// How often names and addresses are looked at again: a network may give the box another address.
const LOOK_AGAIN: Duration = Duration::from_secs(15 * 60);
/// A certificate older than this is made again.
const OLD_DAYS: i32 = 1;
/// How long open connections have when the program ends.
const ENDING: Duration = Duration::from_secs(2);

/// A secure address that is open.
pub struct Safe {
    listener: std::net::TcpListener,
    at: SocketAddr,
    config: RustlsConfig,
    kept: Kept,
}

/// What the certificate is made from.
struct Kept {
    authority: Authority,
    further: Vec<String>,
    made: (Names, Date),
}

fn today() -> Date {
    clock::civil(clock::now(), &TimeZone::UTC).date()
}

impl Safe {
    /// Opens the address, with the authority of the book in this folder.
    ///
    /// # Errors
    /// In one sentence, for who started the program.
    pub async fn open(at: SocketAddr, book: &Path, further: &[String]) -> Result<Self, String> {
        let listener = bound(at, "--secure 0.0.0.0:7444").await?;
        let at = listener.local_addr().map_err(|error| error.to_string())?;
        let listener = listener.into_std().map_err(|error| error.to_string())?;
        let (names, today) = (Names::own(further), today());
        let said = |error: crate::secure::NotSecure| error.to_string();
        let authority = Authority::open(book, &names, today).map_err(said)?;
        let config = authority.config(&names, today).map_err(said)?;
        for name in names.dns.difference(&authority.vouched(&names).dns) {
            eprintln!(
                "steamside: the authority of this box was made before it was called {name:?} and \
                 does not vouch for it. Everything else works. Screens use an address instead"
            );
        }
        let kept = Kept { authority, further: further.to_vec(), made: (names, today) };
        Ok(Self { listener, at, config: RustlsConfig::from_config(Arc::new(config)), kept })
    }

    /// The address, and what everybody may know of the authority.
    pub fn public(&self) -> (SocketAddr, Public) {
        let Kept { authority, .. } = &self.kept;
        let certificate = authority.certificate().to_vec();
        (self.at, Public { certificate, fingerprint: authority.fingerprint() })
    }

    /// The names under which this box is secure.
    pub fn names(&self) -> Vec<String> {
        self.kept.authority.vouched(&self.kept.made.0).dns.into_iter().collect()
    }

    /// Serves until the program is to end.
    pub async fn serve(self, pages: Router) {
        let Self { listener, config, kept, .. } = self;
        let handle = Handle::new();
        tokio::spawn(renew(kept, config.clone()));
        let ending = handle.clone();
        tokio::spawn(async move {
            stopped().await;
            ending.graceful_shutdown(Some(ENDING));
        });
        let pages = pages.into_make_service_with_connect_info::<SocketAddr>();
        let served = match axum_server::from_tcp_rustls(listener, config) {
            Ok(server) => server.handle(handle).serve(pages).await,
            Err(error) => Err(error),
        };
        if let Err(error) = served {
            eprintln!(
                "steamside: the secure address has failed ({error}); start the program again"
            );
        }
    }
}

/// Makes the certificate again when the box has other names or addresses, or a day has gone.
async fn renew(mut kept: Kept, config: RustlsConfig) {
    loop {
        tokio::time::sleep(LOOK_AGAIN).await;
        let (names, today) = (Names::own(&kept.further), today());
        let old = (today - kept.made.1).get_days() >= OLD_DAYS;
        if names == kept.made.0 && !old {
            continue;
        }
        match kept.authority.config(&names, today) {
            Ok(fresh) => {
                config.reload_from_config(Arc::new(fresh));
                kept.made = (names, today);
            }
            // The certificate before is good for months.
            Err(error) => eprintln!("steamside: {error}"),
        }
    }
}
