//! What fits into a run.

use super::super::table::{CycleTable, Table};
use super::ground::Counts;

/// All loads of a cycle to which nothing can be added; the empty one where nothing fits.
#[derive(Debug)]
pub(super) struct Filling<'t> {
    pub table: &'t Table,
    pub cycle: &'t CycleTable,
    /// No more than this of each kind.
    pub most: Counts,
}

impl Filling<'_> {
    /// One after the other.
    pub fn each(&self, look: &mut dyn FnMut(&Counts)) {
        self.from(0, self.holds(), &mut Counts::default(), look);
    }

    /// All of them joined: of each kind what fits alone.
    pub fn joined(&self) -> Counts {
        let mut most = Counts::default();
        for (k, most) in most.iter_mut().enumerate().take(self.table.kinds) {
            let fits = |i: usize| self.holds()[i].checked_div(self.size(k)[i]).unwrap_or(u32::MAX);
            *most = u32::from(self.most[k]).min(fits(0)).min(fits(1)) as u8;
        }
        most
    }

    /// Mass and area that the cycle holds.
    fn holds(&self) -> [u32; 2] {
        [self.cycle.max_mass, if self.cycle.wrapped { self.cycle.max_area } else { u32::MAX }]
    }

    /// Mass and, where it counts, area of a set.
    fn size(&self, k: usize) -> [u32; 2] {
        [self.table.mass[k], if self.cycle.wrapped { self.table.area[k] } else { 0 }]
    }

    fn from(&self, k: usize, left: [u32; 2], load: &mut Counts, look: &mut dyn FnMut(&Counts)) {
        if k == self.table.kinds {
            let room =
                |k: usize| load[k] < self.most[k] && (0..2).all(|i| self.size(k)[i] <= left[i]);
            if !(0..k).any(room) {
                look(load);
            }
            return;
        }
        let size = self.size(k);
        let fits = |i: usize| left[i].checked_div(size[i]).unwrap_or(u32::MAX);
        let most = u32::from(self.most[k]).min(fits(0)).min(fits(1));
        // The last kind takes what room there is: less would not be full.
        let least = if k + 1 == self.table.kinds { most } else { 0 };
        for n in least..=most {
            load[k] = n as u8;
            self.from(k + 1, [left[0] - n * size[0], left[1] - n * size[1]], load, look);
        }
        load[k] = 0;
    }
}
