//! What is let in: this computer's own names only, and no form that another site sent.
//!
//! A page of another site cannot post here (its `Origin` differs), and a name that somebody else
//! points at this computer is not answered (its `Host` is unknown). What goes out tells the
//! browser to load nothing from elsewhere.

use super::Served;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use std::net::IpAddr;

/// Names by which this computer may be called, beside its addresses and `localhost`.
#[derive(Debug, Default)]
pub struct Hosts {
    /// Further names, in small letters.
    pub names: Vec<String>,
}

impl Hosts {
    fn knows(&self, host: &str) -> bool {
        let name = without_port(host).to_ascii_lowercase();
        let address = name.trim_start_matches('[').trim_end_matches(']');
        name == "localhost" || address.parse::<IpAddr>().is_ok() || self.names.contains(&name)
    }
}

/// The name without the port.
pub fn without_port(host: &str) -> &str {
    match host.rsplit_once(':') {
        Some((name, port)) if port.bytes().all(|b| b.is_ascii_digit()) && !name.ends_with(':') => {
            name
        }
        _ => host,
    }
}

fn text<'a>(headers: &'a HeaderMap, name: &str) -> Option<&'a str> {
    headers.get(name).and_then(|value| value.to_str().ok())
}

/// Did this form come from one of our own pages? Programs that send neither header are let in:
/// no browser is behind them, so nobody's cookies are abused.
fn own_form(headers: &HeaderMap, host: &str) -> bool {
    if let Some(site) = text(headers, "sec-fetch-site") {
        return matches!(site, "same-origin" | "none");
    }
    match text(headers, "origin") {
        Some(origin) => origin.split_once("://").is_some_and(|(_, from)| from == host),
        None => true,
    }
}

/// Lets a request in, or says why not.
pub async fn guard(State(served): State<Served>, request: Request, next: Next) -> Response {
    let headers = request.headers();
    let host = text(headers, "host").unwrap_or_default().to_owned();
    if !served.hosts.knows(&host) {
        let said = "This computer is not known under that name. Nothing was done. \
                    Use its address, or start it with --name.";
        return (StatusCode::MISDIRECTED_REQUEST, said).into_response();
    }
    if request.method() != Method::GET && !own_form(headers, &host) {
        let said = "This form came from another site. Nothing was done. Open the page again.";
        return (StatusCode::FORBIDDEN, said).into_response();
    }
    let mut response = next.run(request).await;
    let out = response.headers_mut();
    for (name, value) in [
        (
            header::CONTENT_SECURITY_POLICY,
            "default-src 'self'; img-src 'self' data:; style-src 'self' 'unsafe-inline'; \
             frame-ancestors 'none'; form-action 'self'; base-uri 'none'",
        ),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "same-origin"),
    ] {
        out.insert(name, HeaderValue::from_static(value));
    }
    out.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}
#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_own_names_are_known() {
        let hosts = Hosts { names: vec!["salon.local".to_owned()] };
        for known in ["localhost:7420", "127.0.0.1", "[::1]:7420", "192.168.1.4:80", "SALON.local"]
        {
            assert!(hosts.knows(known), "{known}");
        }
        for strange in ["", "evil.example", "localhost.evil.example:7420", "salon.local.evil"] {
            assert!(!hosts.knows(strange), "{strange}");
        }
    }

    #[test]
    fn a_form_of_another_site_is_not_ours() {
        let form = |pairs: &[(&'static str, &'static str)]| {
            let mut headers = HeaderMap::new();
            for (name, value) in pairs {
                headers.insert(*name, HeaderValue::from_static(value));
            }
            own_form(&headers, "localhost:7420")
        };
        assert!(form(&[("origin", "http://localhost:7420")]));
        assert!(form(&[("sec-fetch-site", "same-origin"), ("origin", "null")]));
        assert!(form(&[]));
        assert!(!form(&[("origin", "http://evil.example")]));
        assert!(!form(&[("origin", "null")]));
        assert!(!form(&[("sec-fetch-site", "cross-site")]));
    }
}
