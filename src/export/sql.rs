//! The audit as SQL: one file for every program that knows the standard.

use jiff::Timestamp;

use crate::audit::Window;

const AUDIT: &str = include_str!("audit.sql");

/// The line of it that says the window.
const DAYS: &str = "CAST(30 AS BIGINT) AS window_days";

/// The line of it that says up to which time a call's clock is believed: any.
const LATEST: &str = "CAST(9223372036854775807 AS BIGINT) AS latest_ns";

/// The audit as SQL, with the window of a run, and the latest time that a call can have where some are ahead of it.
pub fn sql(window: Window, latest: Option<Timestamp>) -> String {
    let latest = latest.and_then(|latest| i64::try_from(latest.as_nanosecond()).ok());
    AUDIT
        .replace(DAYS, &format!("CAST({} AS BIGINT) AS window_days", window.days))
        .replace(
            LATEST,
            &format!("CAST({} AS BIGINT) AS latest_ns", latest.unwrap_or(i64::MAX)),
        )
}

#[cfg(test)]
mod tests {
    use super::{AUDIT, DAYS, LATEST, sql};
    use crate::audit::Window;

    #[test]
    fn the_window_is_the_one_of_the_run() {
        assert_eq!(AUDIT.matches(DAYS).count(), 1);
        assert!(sql(Window { days: 7 }, None).contains("CAST(7 AS BIGINT) AS window_days"));
        assert_eq!(AUDIT.matches(LATEST).count(), 1);
        let latest = sql(Window { days: 7 }, "1970-01-01T00:00:01Z".parse().ok());
        assert!(latest.contains("CAST(1000000000 AS BIGINT) AS latest_ns"));
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
