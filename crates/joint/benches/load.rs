//! Times of a joint's temperatures under load: two legs and three, with the load to the limit and an emergency.

use criterion::{Criterion, criterion_group, criterion_main};
use jointwright_joint::catalogue::{DEMONSTRATION, DEMONSTRATION_TEXT};
use jointwright_joint::form::Source;
use jointwright_joint::job::{Order, read_order};
use jointwright_joint::judge::judge_unsolved;
use jointwright_joint::survey::EndSurvey;
use jointwright_joint::warm::{LegSubject, Warm, warm};
use std::hint::black_box;

const JOINTS: [(&str, &str); 2] = [
    (
        "two_legs",
        include_str!("../../../examples/dock-straight-pressed/job.toml"),
    ),
    (
        "three_legs",
        include_str!("../../../examples/larkspur-three-way/job.toml"),
    ),
];

fn order(text: &str) -> Order {
    let job = Source::new("job.toml", text.to_owned());
    let catalogue = Source::new(DEMONSTRATION, DEMONSTRATION_TEXT.to_owned());
    read_order(&job, &[catalogue]).expect("the example reads")
}

fn joints_under_load(c: &mut Criterion) {
    for (name, text) in JOINTS {
        let order = order(text);
        let judged = judge_unsolved(&order).expect("the example's rows agree");
        let legs = &judged.inputs.legs;
        let surveys: Vec<Vec<EndSurvey>> = legs
            .iter()
            .map(|leg| {
                leg.ends
                    .iter()
                    .map(|end| end.survey.as_ref().clone())
                    .collect()
            })
            .collect();
        let subjects: Vec<LegSubject<'_>> = legs
            .iter()
            .zip(&surveys)
            .map(|(leg, surveys)| LegSubject {
                leg: leg.leg,
                chosen: &leg.chosen,
                cutback: &leg.cutback,
                surveys,
            })
            .collect();
        let bus = order.job.bus.as_deref();
        let bus = bus.and_then(|id| order.catalogue.bus(id));
        let solved = warm(&order.job, bus, &subjects);
        assert!(matches!(solved, Warm::Done(_)), "{name}: {solved:?}");
        c.bench_function(name, |b| {
            b.iter(|| warm(black_box(&order.job), bus, &subjects));
        });
    }
}

criterion_group!(benches, joints_under_load);
criterion_main!(benches);
