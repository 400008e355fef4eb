//! The audit as SQL: one file for every program that knows the standard.

use crate::audit::Window;

const AUDIT: &str = include_str!("audit.sql");

/// The line of it that says the window.
const DAYS: &str = "CAST(30 AS BIGINT) AS window_days";

/// The audit as SQL, with the window of a run.
pub fn sql(window: Window) -> String {
    AUDIT.replace(DAYS, &format!("CAST({} AS BIGINT) AS window_days", window.days))
}

#[cfg(test)]
mod tests {
    use super::{AUDIT, DAYS, sql};
    use crate::audit::Window;

    #[test]
    fn the_window_is_the_one_of_the_run() {
        assert_eq!(AUDIT.matches(DAYS).count(), 1);
        assert!(sql(Window { days: 7 }).contains("CAST(7 AS BIGINT) AS window_days"));
    }

    #[test]
    fn a_program_may_take_it_apart_at_each_semicolon() {
        let code = |line: &str| !line.starts_with("--");
        let comments = AUDIT.lines().filter(|line| !code(line));
        assert!(comments.into_iter().all(|line| !line.contains(';')));
        let statements = AUDIT.split(';').map(|statement| {
            let lines = statement.lines().filter(|line| code(line) && !line.is_empty());
            lines.collect::<String>()
        });
        let statements: Vec<_> = statements.filter(|statement| !statement.is_empty()).collect();
        assert!(statements.len() > 10);
        for statement in statements {
            assert!(
                statement.starts_with("CREATE OR REPLACE TEMPORARY VIEW audit_"),
                "{statement}"
            );
        }
    }
}
