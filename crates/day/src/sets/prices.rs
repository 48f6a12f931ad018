//! What a purchase buys in a year, in days, clients and money.

use super::share::Gain;
use super::tally::{Days, Tally, tally};
use super::what_if::Purchase;
use crate::plan::{Problem, Unusable};

/// What things cost, in the salon's money. The defaults are assumptions; a salon knows its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prices {
    /// One more set of implements.
    pub set: f64,
    /// One more machine.
    pub machine: f64,
    /// A longer lunch, each day it is taken.
    pub lunch_a_day: f64,
    /// A client who waits: what is given away, and the chance that she does not come again.
    pub waiting: f64,
    /// Days a year on which the salon is open.
    pub working_days: f64,
}

impl Default for Prices {
    fn default() -> Self {
        Self { set: 60.0, machine: 3_000.0, lunch_a_day: 15.0, waiting: 20.0, working_days: 300.0 }
    }
}

/// A purchase and what it buys.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bought {
    /// What is bought.
    pub purchase: Purchase,
    /// Good days gained, as a share of all days.
    pub gain: Gain,
    /// Good days gained in a year.
    pub days_a_year: f64,
    /// Clients a year who do not wait any more; below 0 where more would.
    pub clients_a_year: f64,
    /// Paid once.
    pub price: f64,
    /// Money a year: what the clients who waited cost, less what is paid each day.
    pub saved_a_year: f64,
    /// After how many years the price has come back; `None` where it never does.
    pub pays_back_years: Option<f64>,
}

/// What `purchase` buys for `problem`, whose days came to `before`; the same days are lived again.
///
/// # Errors
/// What cannot be bought or simulated.
pub fn buy(
    problem: &Problem,
    before: &Tally,
    purchase: Purchase,
    days: &Days<'_>,
    prices: &Prices,
) -> Result<Bought, Unusable> {
    let after = tally(&purchase.bought(problem)?, days)?;
    let gain = after.gain_over(before);
    let clients_a_year = (before.waiting_a_day() - after.waiting_a_day()) * prices.working_days;
    let (price, a_day) = match purchase {
        Purchase::Set(_) => (prices.set, 0.0),
        Purchase::Machine => (prices.machine, 0.0),
        Purchase::Lunch(_) => (0.0, prices.lunch_a_day),
    };
    let saved_a_year = clients_a_year * prices.waiting - a_day * prices.working_days;
    Ok(Bought {
        purchase,
        gain,
        days_a_year: gain.share * prices.working_days,
        clients_a_year,
        price,
        saved_a_year,
        pays_back_years: (saved_a_year > 0.0).then(|| price / saved_a_year),
    })
}
