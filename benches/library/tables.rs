//! How time and memory grow with a library, and what extreme shapes take.

use std::time::Duration;

use crate::made::Shape;
use crate::once::{Took, in_a_process_of_its_own};

/// A line for each size of a mixed library; the factors are against the line before, and 1.0 is in proportion.
pub fn growth(sizes: &[usize]) {
    println!("\n{} {:>10} {:>10}", heading("mixed"), "time x", "memory x");
    let mut before: Option<Took> = None;
    for &size in sizes {
        let took = in_a_process_of_its_own(Shape::Mixed, size);
        let factors = before.map(|before| {
            let larger = took.bytes as f64 / before.bytes as f64;
            let longer = took.whole().as_secs_f64() / before.whole().as_secs_f64();
            let more = took.memory as f64 / before.memory as f64;
            format!(" {:10.2} {:10.2}", longer / larger, more / larger)
        });
        println!("{}{}", line(&took, ""), factors.unwrap_or_default());
        before = Some(took);
    }
}

/// A line for each shape, in a thread with the default stack.
pub fn shapes(shapes: &[(Shape, usize)]) {
    println!("\n{}", heading("shape"));
    for &(shape, size) in shapes {
        let took = in_a_process_of_its_own(shape, size);
        println!("{}", line(&took, &format!("{shape:?} {size}")));
    }
}

fn heading(what: &str) -> String {
    format!(
        "{what:18} {:>9} {:>8} {:>9} {:>9} {:>9} {:>9} {:>8} {:>8} {:>7}",
        "steps", "MB", "read ms", "resolve", "check", "all", "us/step", "peak MB", "peak x"
    )
}

fn line(took: &Took, name: &str) -> String {
    let ms = |time: Duration| time.as_secs_f64() * 1e3;
    let megabytes = |bytes: usize| bytes as f64 / 1e6;
    format!(
        "{name:18} {:9} {:8.1} {:9.1} {:9.1} {:9.1} {:9.1} {:8.2} {:8.1} {:7.1}",
        took.steps,
        megabytes(took.bytes),
        ms(took.read),
        ms(took.resolve),
        ms(took.check),
        ms(took.whole()),
        ms(took.whole()) * 1e3 / took.steps as f64,
        megabytes(took.memory),
        took.memory as f64 / took.bytes as f64,
    )
}
