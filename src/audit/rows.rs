//! Lists of which each row is made when it is asked for: an archive may name each of its sessions in one, and texts for all of them
//! take far more than what they are made of.

use std::fmt;
use std::sync::Arc;

use serde::{Serialize, Serializer};

use super::summary::SessionRef;
use super::visits::Visits;

/// A list of which each row is made when it is asked for.
pub struct Rows<T> {
    len: usize,
    row: Arc<dyn Fn(usize) -> T + Send + Sync>,
}

/// The sessions of a finding.
pub type Sessions = Rows<SessionRef>;

/// The rows of a list, one after the other.
pub struct Each<'r, T> {
    rows: &'r Rows<T>,
    at: usize,
}

impl<T> Rows<T> {
    /// What is told of each of these.
    pub(super) fn of<K: Send + Sync + 'static>(
        visits: &Arc<Visits>,
        mut kept: Vec<K>,
        tell: fn(&Visits, &K) -> T,
    ) -> Self
    where
        T: 'static,
    {
        let visits = Arc::clone(visits);
        kept.shrink_to_fit();
        Self::made(kept.len(), move |at| tell(&visits, &kept[at]))
    }

    /// So many rows, each made by its place.
    pub(super) fn made(len: usize, row: impl Fn(usize) -> T + Send + Sync + 'static) -> Self {
        let row = Arc::new(row);
        Self { len, row }
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.len
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.len == 0
    }

    /// A row by its place.
    pub fn get(&self, at: usize) -> Option<T> {
        (at < self.len).then(|| (self.row)(at))
    }

    /// How many rows stand before the first of which this does not hold, where it holds of none behind that.
    pub fn partition_point(&self, holds: impl Fn(&T) -> bool) -> usize {
        let (mut begin, mut end) = (0, self.len);
        while begin < end {
            let middle = begin.midpoint(end);
            match holds(&(self.row)(middle)) {
                true => begin = middle + 1,
                false => end = middle,
            }
        }
        begin
    }

    /// Each of them.
    pub fn iter(&self) -> Each<'_, T> {
        Each { rows: self, at: 0 }
    }
}

impl Sessions {
    /// The sessions of these calls.
    pub(super) fn of_calls(visits: &Arc<Visits>, numbers: Vec<u32>) -> Self {
        Self::of(visits, numbers, |visits, number| visits.session(*number))
    }
}

impl<T> Iterator for Each<'_, T> {
    type Item = T;

    fn next(&mut self) -> Option<T> {
        let row = self.rows.get(self.at);
        self.at += usize::from(row.is_some());
        row
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let left = self.rows.len - self.at;
        (left, Some(left))
    }
}

impl<T> ExactSizeIterator for Each<'_, T> {}

impl<'r, T> IntoIterator for &'r Rows<T> {
    type Item = T;
    type IntoIter = Each<'r, T>;

    fn into_iter(self) -> Each<'r, T> {
        self.iter()
    }
}

impl<T> Clone for Rows<T> {
    fn clone(&self) -> Self {
        let row = Arc::clone(&self.row);
        Self { len: self.len, row }
    }
}

impl<T: PartialEq> PartialEq for Rows<T> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other)
    }
}

impl<T: fmt::Debug> fmt::Debug for Rows<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self).finish()
    }
}

impl<T: Serialize> Serialize for Rows<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self)
    }
}

#[cfg(test)]
mod tests {
    use super::Rows;

    #[test]
    fn rows_are_parted_where_a_slice_is() {
        for list in [&[][..], &[3], &[1, 1, 2, 5, 5, 5, 9]] {
            let owned = list.to_vec();
            let rows = Rows::made(list.len(), move |at| owned[at]);
            for least in 0..11 {
                assert_eq!(
                    rows.partition_point(|item| *item < least),
                    list.partition_point(|item| *item < least),
                    "{list:?} {least}"
                );
            }
        }
    }
}
