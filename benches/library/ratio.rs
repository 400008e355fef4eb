//! Checking a library, beside parsing its files alone.

use std::time::Duration;

use proofwalk::{check, library};

use crate::clock::timed;
use crate::made::{self, Shape};
use crate::yardstick;

/// How often each is measured: the best counts, the others were disturbed.
const ROUNDS: usize = 9;

/// One after the other and round again, so that what disturbs one disturbs all.
pub fn table(steps: usize) {
    let files = made::library(Shape::Mixed, steps);
    let work: [(&str, &dyn Fn()); 5] = [
        ("parse, plain", &|| yardstick::plain(&files)),
        ("parse, with places", &|| yardstick::placed(&files)),
        ("read", &|| {
            drop(std::hint::black_box(library::read(files.clone())))
        }),
        ("read, resolve", &|| {
            drop(std::hint::black_box(library::load(files.clone())))
        }),
        ("read, resolve, check", &|| {
            let (library, problems) = library::load(files.clone());
            assert_eq!(check::run(&library, &problems), []);
        }),
    ];
    let mut best = [Duration::MAX; 5];
    for _ in 0..ROUNDS {
        for (best, (_, work)) in best.iter_mut().zip(work) {
            *best = timed(work).1.min(*best);
        }
    }
    let megabytes = made::bytes(&files) as f64 / 1e6;
    println!(
        "\n{megabytes:.1} MB in {} files, {steps} steps, best of {ROUNDS}\n",
        files.as_slice().len()
    );
    println!(
        "{:22} {:>9} {:>7} {:>9} {:>12} {:>9}",
        "", "ms", "MB/s", "of plain", "of places", "of read"
    );
    for (time, (name, _)) in best.iter().zip(work) {
        let of = |other: Duration| time.as_secs_f64() / other.as_secs_f64();
        println!(
            "{name:22} {:9.1} {:7.1} {:9.2} {:12.2} {:9.2}",
            time.as_secs_f64() * 1e3,
            megabytes / time.as_secs_f64(),
            of(best[0]),
            of(best[1]),
            of(best[2]),
        );
    }
}
