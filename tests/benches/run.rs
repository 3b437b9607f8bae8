//! How long the engine takes for what the page asks of it, on the example: a day in steps of ten seconds.

#![expect(
    clippy::unwrap_used,
    reason = "a benchmark that cannot run its scenario has to fail"
)]

use criterion::{Criterion, criterion_group, criterion_main};
use noonday_engine::advice::{advise, levers};
use noonday_engine::scenario::{Scenario, example};
use noonday_engine::simulation::Prepared;
use std::hint::black_box;

fn benches(criterion: &mut Criterion) {
    let scenario = Scenario::new(example()).unwrap();
    let prepared = Prepared::new(&scenario).unwrap();
    criterion.bench_function("run of a day", |bencher| {
        bencher.iter(|| black_box(&prepared).run().unwrap());
    });
    let floating = prepared.without_cooler();
    criterion.bench_function("run of a day without cooler", |bencher| {
        bencher.iter(|| black_box(&floating).run().unwrap());
    });
    criterion.bench_function("preparing", |bencher| {
        bencher.iter(|| Prepared::new(black_box(&scenario)).unwrap());
    });
    criterion.bench_function("advice", |bencher| {
        bencher.iter(|| advise(black_box(&scenario)).unwrap());
    });
    criterion.bench_function("levers", |bencher| {
        bencher.iter(|| levers(black_box(&scenario)).unwrap());
    });
}

criterion_group!(group, benches);
criterion_main!(group);
