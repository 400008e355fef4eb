//! What was acknowledged stays.

use std::io::Read;

use crate::child;
use crate::support::{id, scene};

/// That a killed process loses nothing shows that nothing is kept back in memory; whether the disk has it, only cutting
/// the power could show.
#[test]
fn every_acknowledged_record_outlives_a_kill() {
    let scene = scene();
    scene.recorded(0);
    for round in 1..=3 {
        let (mut process, mut output) = child::start("appends_until_killed", scene.folder.path());
        for _ in 0..20 * round {
            child::wait_for(&mut output, "saved").expect("the process goes on saving");
        }
        process.kill().unwrap();
        process.wait().unwrap();
        let mut rest = String::new();
        output.read_to_string(&mut rest).unwrap();
        let reading = scene.folder.read(&id("s")).unwrap();
        assert_eq!(reading.report.damage, None);
        let last = rest
            .lines()
            .filter_map(|line| line.strip_prefix("saved "))
            .next_back();
        let acknowledged = last.map_or(20 * round, |number| number.parse::<usize>().unwrap() + 1);
        assert!(
            reading.records.len() >= acknowledged,
            "{acknowledged} were acknowledged"
        );
        for (number, record) in reading.records.iter().enumerate() {
            assert_eq!(
                record.event.get(),
                format!(r#"{{"reading":"flame current","number":{number}}}"#)
            );
        }
    }
}
