//! What this computer is called and where it is on the network, and for which of it its authority
//! may vouch.

use rcgen::{CidrSubnet, GeneralSubtree};
use std::collections::BTreeSet;
use std::net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr, UdpSocket};

/// Names and addresses of this computer.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Names {
    /// Names, in small letters.
    pub dns: BTreeSet<String>,
    /// Addresses.
    pub addresses: BTreeSet<IpAddr>,
}

/// Addresses that are asked for a way to: whatever answers, this computer's own address on that way
/// comes out. One of each kind that a salon's network may use (RFC 1918, RFC 4193), and one of
/// nobody's (RFC 5737) for the common way out. Nothing is sent.
const TOWARDS: [&str; 5] =
    ["192.0.2.1:9", "192.168.0.1:9", "10.0.0.1:9", "172.16.0.1:9", "[fd00::1]:9"];

impl Names {
    /// As this computer is called now, with further names.
    pub fn own(further: &[String]) -> Self {
        let mut dns: BTreeSet<String> =
            further.iter().map(|name| name.to_ascii_lowercase()).filter(|it| is_name(it)).collect();
        dns.insert("localhost".to_owned());
        if let Some(host) = host_name() {
            if !host.contains('.') {
                dns.insert(format!("{host}.local"));
            }
            dns.insert(host);
        }
        let mut addresses =
            BTreeSet::from([IpAddr::V4(Ipv4Addr::LOCALHOST), IpAddr::V6(Ipv6Addr::LOCALHOST)]);
        addresses.extend(on_network());
        Self { dns, addresses }
    }
}

/// This computer's addresses on the network, the common one first.
pub fn on_network() -> Vec<IpAddr> {
    let mut found = Vec::new();
    for towards in TOWARDS.iter().filter_map(|text| text.parse::<SocketAddr>().ok()) {
        let any: IpAddr = match towards {
            SocketAddr::V4(_) => Ipv4Addr::UNSPECIFIED.into(),
            SocketAddr::V6(_) => Ipv6Addr::UNSPECIFIED.into(),
        };
        let own = UdpSocket::bind((any, 0))
            .and_then(|socket| socket.connect(towards).and_then(|()| socket.local_addr()));
        // A network that is not there has no address of ours.
        if let Ok(own) = own
            && !own.ip().is_unspecified()
            && !own.ip().is_loopback()
            && !found.contains(&own.ip())
        {
            found.push(own.ip());
        }
    }
    found
}

/// What the system calls this computer, where it says so.
fn host_name() -> Option<String> {
    let told = std::fs::read_to_string("/proc/sys/kernel/hostname")
        .or_else(|_| std::fs::read_to_string("/etc/hostname"))
        .ok()
        .or_else(|| std::env::var("COMPUTERNAME").ok())
        .or_else(|| std::env::var("HOSTNAME").ok())?;
    Some(told.trim().to_ascii_lowercase()).filter(|name| is_name(name))
}

/// Letters, digits, hyphens and dots, as a name on a network has them.
fn is_name(name: &str) -> bool {
    let label = |label: &str| {
        !label.is_empty()
            && label.len() < 64
            && label.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'-')
    };
    name.len() < 200 && name.split('.').all(label)
}

/// Address and length of what is fixed in it, for the addresses that are nobody's beyond a house
/// (RFC 1918, RFC 3927, RFC 4193, RFC 4291).
const IN_HOUSE: [&str; 8] = [
    "127.0.0.0/8",
    "10.0.0.0/8",
    "172.16.0.0/12",
    "192.168.0.0/16",
    "169.254.0.0/16",
    "::1/128",
    "fc00::/7",
    "fe80::/10",
];

/// What an authority vouches for: names with all below them, and ranges of addresses.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Vouches {
    dns: BTreeSet<String>,
    ranges: BTreeSet<(IpAddr, u8)>,
}

impl Vouches {
    /// For a computer with these names: they themselves, names of the house (`.local`), addresses of
    /// a house, and an address beyond those only if it is its own.
    pub fn around(names: &Names) -> Self {
        let mut dns = names.dns.clone();
        dns.insert("local".to_owned());
        let ranges = IN_HOUSE.iter().filter_map(|text| range(text)).collect();
        let mut vouches = Self { dns, ranges };
        for address in &names.addresses {
            if !vouches.covers(*address) {
                let whole = if address.is_ipv4() { 32 } else { 128 };
                vouches.ranges.insert((*address, whole));
            }
        }
        vouches
    }

    /// A line each.
    pub fn text(&self) -> String {
        let ranges = self.ranges.iter().map(|(address, fixed)| format!("{address}/{fixed}"));
        self.dns.iter().cloned().chain(ranges).map(|line| line + "\n").collect()
    }

    /// What [`Vouches::text`] wrote; `None` where a line is neither name nor range.
    pub fn read(text: &str) -> Option<Self> {
        let mut vouches = Self::default();
        for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
            if let Some(range) = range(line) {
                vouches.ranges.insert(range);
            } else if is_name(line) {
                vouches.dns.insert(line.to_owned());
            } else {
                return None;
            }
        }
        (!vouches.dns.is_empty()).then_some(vouches)
    }

    /// For the certificate of the authority.
    pub fn subtrees(&self) -> Vec<GeneralSubtree> {
        let names = self.dns.iter().cloned().map(GeneralSubtree::DnsName);
        let ranges = self.ranges.iter().map(|(address, fixed)| {
            GeneralSubtree::IpAddress(CidrSubnet::from_addr_prefix(*address, *fixed))
        });
        names.chain(ranges).collect()
    }

    /// What of these names is vouched for.
    pub fn of(&self, names: &Names) -> Names {
        let below = |name: &String| {
            self.dns.iter().any(|known| {
                name == known
                    || name.strip_suffix(known.as_str()).is_some_and(|rest| rest.ends_with('.'))
            })
        };
        Names {
            dns: names.dns.iter().filter(|name| below(name)).cloned().collect(),
            addresses: names.addresses.iter().copied().filter(|ip| self.covers(*ip)).collect(),
        }
    }

    fn covers(&self, address: IpAddr) -> bool {
        self.ranges.iter().any(|(range, fixed)| same_start(*range, address, *fixed))
    }
}

/// `10.0.0.0/8`.
fn range(text: &str) -> Option<(IpAddr, u8)> {
    let (address, fixed) = text.split_once('/')?;
    let address: IpAddr = address.parse().ok()?;
    let fixed: u8 = fixed.parse().ok()?;
    (fixed <= if address.is_ipv4() { 32 } else { 128 }).then_some((address, fixed))
}

fn same_start(a: IpAddr, b: IpAddr, fixed: u8) -> bool {
    let shift = |all: u32| all.saturating_sub(fixed.into());
    match (a, b) {
        (IpAddr::V4(a), IpAddr::V4(b)) => {
            let differs = a.to_bits() ^ b.to_bits();
            differs.checked_shr(shift(32)).unwrap_or(0) == 0
        }
        (IpAddr::V6(a), IpAddr::V6(b)) => {
            let differs = a.to_bits() ^ b.to_bits();
            differs.checked_shr(shift(128)).unwrap_or(0) == 0
        }
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // tests may stop at once
    use super::*;

    fn names(dns: &[&str], addresses: &[&str]) -> Names {
        Names {
            dns: dns.iter().map(|&name| name.to_owned()).collect(),
            addresses: addresses.iter().map(|text| text.parse().unwrap()).collect(),
        }
    }

    #[test]
    fn an_authority_vouches_for_a_house_and_for_nothing_beyond() {
        let vouches = Vouches::around(&names(&["box"], &["192.0.2.7"]));
        assert_eq!(Vouches::read(&vouches.text()), Some(vouches.clone()));
        // Ends of the ranges of RFC 1918 and one beyond each; the own address and its neighbour.
        let asked = names(
            &["box", "salon.local", "a.box", "inbox", "example.org", "local.example.org"],
            &[
                "10.255.255.255",
                "11.0.0.0",
                "172.31.255.255",
                "172.32.0.0",
                "192.168.7.7",
                "192.169.0.0",
                "192.0.2.7",
                "192.0.2.8",
                "fd00::2",
                "2001:db8::1",
            ],
        );
        let vouched = names(
            &["box", "salon.local", "a.box"],
            &["10.255.255.255", "172.31.255.255", "192.168.7.7", "192.0.2.7", "fd00::2"],
        );
        assert_eq!(vouches.of(&asked), vouched);
        for bad in ["", "two words\n", "name\n10.0.0.0/33\n", "name\n-/8\n"] {
            assert_eq!(Vouches::read(bad), None, "{bad:?}");
        }
    }

    #[test]
    fn this_computer_has_a_name_and_its_own_addresses() {
        let own = Names::own(&["Salon.LAN".to_owned(), "no name".to_owned()]);
        assert!(own.dns.contains("localhost") && own.dns.contains("salon.lan"));
        assert!(!own.dns.contains("no name"));
        assert!(own.addresses.iter().any(IpAddr::is_loopback));
        assert!(on_network().iter().all(|ip| own.addresses.contains(ip)));
    }
}
