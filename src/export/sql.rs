//! The audit as SQL: one file for every program that knows the standard.

use jiff::Timestamp;

use crate::audit::Window;

const AUDIT: &str = include_str!("audit.sql");

/// The line of it that says the window.
const DAYS: &str = "CAST(30 AS BIGINT) AS window_days";

/// The line of it that says up to which time a call's clock is believed: any.
const LATEST: &str = "CAST(9223372036854775807 AS BIGINT) AS latest_ns";

/// The line of it that says from which time on: any.
const EARLIEST: &str = "CAST(-9223372036854775807 AS BIGINT) AS earliest_ns";

/// The times between which clocks are believed, where some are doubted.
#[derive(Clone, Copy, Debug, Default)]
pub struct Believed {
    /// The first opening of a call.
    pub earliest: Option<Timestamp>,
    /// The latest time that a call can have.
    pub latest: Option<Timestamp>,
}

/// The audit as SQL, with the window of a run, and the times between which clocks are believed.
pub fn sql(window: Window, believed: Believed) -> String {
    let nanoseconds = |time: Timestamp| i64::try_from(time.as_nanosecond()).ok();
    let (earliest, latest) = (
        believed.earliest.and_then(nanoseconds),
        believed.latest.and_then(nanoseconds),
    );
    AUDIT
        .replace(DAYS, &format!("CAST({} AS BIGINT) AS window_days", window.days))
        .replace(
            LATEST,
            &format!("CAST({} AS BIGINT) AS latest_ns", latest.unwrap_or(i64::MAX)),
        )
        .replace(
            EARLIEST,
            &format!("CAST({} AS BIGINT) AS earliest_ns", earliest.unwrap_or(-i64::MAX)),
        )
}

#[cfg(test)]
mod tests {
    use super::{AUDIT, Believed, DAYS, EARLIEST, LATEST, sql};
    use crate::audit::Window;

    #[test]
    fn the_window_is_the_one_of_the_run() {
        assert_eq!(AUDIT.matches(DAYS).count(), 1);
        let window = Window { days: 7 };
        assert!(sql(window, Believed::default()).contains("CAST(7 AS BIGINT) AS window_days"));
        assert_eq!(AUDIT.matches(LATEST).count(), 1);
        assert_eq!(AUDIT.matches(EARLIEST).count(), 1);
        let believed = Believed {
            earliest: "1970-01-01T00:00:01Z".parse().ok(),
            latest: "1970-01-01T00:00:02Z".parse().ok(),
        };
        let text = sql(window, believed);
        assert!(text.contains("CAST(1000000000 AS BIGINT) AS earliest_ns"));
        assert!(text.contains("CAST(2000000000 AS BIGINT) AS latest_ns"));
        let text = sql(window, Believed::default());
        assert!(text.contains(EARLIEST) && text.contains(LATEST), "any");
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
