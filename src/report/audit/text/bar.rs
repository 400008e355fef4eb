//! A rate and its interval, drawn as a bar.

/// Columns of a bar.
pub(super) const COLUMNS: usize = 23;

/// What arithmetic may leave of a place that is a whole number.
const ROUNDING: f64 = 1e-9;

/// The scale of a list of bars: from nothing to a share, with the rate of all marked.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    /// The share at the right end.
    pub most: f64,
    /// The rate of all; none where there is nothing to compare with.
    pub all: Option<f64>,
    pub ascii: bool,
}

impl Scale {
    /// The next scale that shows a share: ends at a share that is easily read.
    pub fn up_to(share: f64, all: Option<f64>, ascii: bool) -> Self {
        let ends = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.8];
        let most = ends.into_iter().find(|end| share <= *end).unwrap_or(1.0);
        Self { most, all, ascii }
    }

    /// What ends a bar that goes on beyond the scale.
    pub fn beyond(is_ascii: bool) -> char {
        if is_ascii { '>' } else { '▶' }
    }

    /// Whether a share lies beyond the scale.
    pub fn is_beyond(&self, share: f64) -> bool {
        share > self.most + ROUNDING
    }

    /// The bar of a rate: its interval as a line, the rate on it, and a sign at the end where either goes on.
    pub fn bar(&self, rate: Option<f64>, interval: Option<(f64, f64)>) -> String {
        let [empty, line, point, all] = match self.ascii {
            true => ['.', '=', 'o', '|'],
            false => ['·', '━', '●', '┊'],
        };
        let mut cells = [empty; COLUMNS];
        if let Some(rate) = self.all {
            cells[self.column(rate)] = all;
        }
        if let Some((low, high)) = interval {
            cells[self.column(low)..=self.column(high)].fill(line);
            if self.is_beyond(high) {
                cells[COLUMNS - 1] = Self::beyond(self.ascii);
            }
        }
        if let Some(rate) = rate.filter(|rate| !self.is_beyond(*rate)) {
            cells[self.column(rate)] = point;
        }
        cells.iter().collect()
    }

    fn column(&self, share: f64) -> usize {
        let place = share / self.most * COLUMNS as f64;
        ((place + ROUNDING).max(0.0) as usize).min(COLUMNS - 1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bar_shows_the_rate_on_its_interval_and_where_all_lie() {
        let scale = Scale::up_to(0.35, Some(0.05), true);
        assert_eq!(scale.most, 0.4);
        assert_eq!(scale.bar(Some(0.2), Some((0.1, 0.3))), "..|..======o======.....");
        assert_eq!(scale.bar(None, Some((0.1, 0.3))), "..|..=============.....");
        assert_eq!(scale.bar(None, None), "..|....................");
        assert_eq!(scale.bar(Some(0.35), Some((0.3, 0.5))), "..|..............===o=>");
        assert_eq!(scale.bar(Some(0.5), Some((0.3, 0.6))), "..|..............=====>");
        assert_eq!(
            Scale::up_to(2.0, None, true).bar(Some(1.0), Some((0.9, 1.0))),
            "....................==o"
        );
    }
}
