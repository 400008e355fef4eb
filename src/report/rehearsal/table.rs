//! Tables of a page: in columns where they fit; else with the cells of a row below its name, or each by what it is called.

use super::Page;

/// Columns that stand in front of cells below their name.
const INDENT: usize = 2;

/// What a table's columns are called, and how wide they are.
pub(super) struct Table<'a, const N: usize> {
    /// Columns of the names that its rows begin with.
    pub names: usize,
    /// What its other columns are called.
    pub heads: [&'a str; N],
    /// How wide those are, each behind a blank.
    pub wide: [usize; N],
}

impl<const N: usize> Table<'_, N> {
    fn cells(&self, cells: &[String; N]) -> String {
        let cells = cells.iter().zip(self.wide);
        cells.map(|(cell, wide)| format!(" {cell:>wide$}")).collect()
    }

    fn width(&self) -> usize {
        self.wide.iter().map(|wide| 1 + wide).sum()
    }
}

impl Page {
    /// What stands over a table.
    pub(super) fn head<const N: usize>(&mut self, table: &Table<'_, N>, title: &str) {
        match INDENT + table.width() <= self.columns() {
            true => self.row(table, title, table.heads.map(str::to_owned)),
            // Every cell says what it is.
            false => self.line(0, title),
        }
    }

    /// A row of a table.
    pub(super) fn row<const N: usize>(&mut self, table: &Table<'_, N>, name: &str, cells: [String; N]) {
        let name = self.shown(name).cut(table.names);
        // Without ≥ a sign takes two columns.
        let cells = cells.map(|cell| self.shown(&cell).to_string());
        let in_columns = table.cells(&cells);
        if table.names + table.width() <= self.columns() {
            let names = table.names;
            self.text
                .push_str(&format!("{:names$}{in_columns}\n", name.as_str()));
            return;
        }
        self.text.push_str(&format!("{name}\n"));
        if INDENT + table.width() <= self.columns() {
            self.text.push_str(&format!("{:INDENT$}{in_columns}\n", ""));
            return;
        }
        let named = table.heads.iter().zip(cells);
        let named: Vec<String> = named.map(|(head, cell)| format!("{head} {cell}")).collect();
        self.hanging(INDENT, 0, &named.join(", "));
    }
}
