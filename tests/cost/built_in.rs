//! The built-in library, priced.

use proofwalk::bench::cost::cost;
use proofwalk::library::load;
use proofwalk::source::Files;

#[test]
fn look() {
    let files = proofwalk::store::read_layers(Some(std::path::Path::new("trees")), &[]).unwrap();
    let (library, problems) = load(Files::new(files));
    assert!(problems.is_empty());
    let started = std::time::Instant::now();
    let cost = cost(&library);
    println!("{:?}", started.elapsed());
    for tree in &cost.trees {
        println!(
            "{:30} {:4} {:5} {:5} {:7.2} {:?} {:?} {:?} {:?} calls {:?} amb {:?}",
            library.trees[tree.tree].name, tree.faults.len(), tree.ways, tree.cut, tree.minutes, tree.known, tree.least, tree.floor,
            tree.isolated.fraction(1), tree.calls.mean(), tree.ambiguous
        );
        for proposal in &tree.proposals {
            let names = |steps: &[proofwalk::library::Id<proofwalk::library::Step>]| {
                steps.iter().map(|step| library[*step].name.clone()).collect::<Vec<_>>().join(", ")
            };
            println!("      {:?} {:.3}: {} -> {}", proposal.basis, proposal.gain, names(&proposal.now), names(&proposal.then));
        }
    }
    println!("{:?} {:?}", cost.detected, cost.isolated.fraction(1));
    println!("without {:?} unpriced {:?}", cost.without, cost.unpriced.len());
}
