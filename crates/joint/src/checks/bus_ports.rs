//! Has every port of the bus a leg or a blank with its insulating plug, and do all of them mate with it?
//!
//! A port without either would be live and bare, so anything missing is a fail, never left open.
//!
//! Source: the bus's own instructions.

use super::{Check, Inputs, Judge, Rated};
use crate::catalogue::Bus;
use crate::job::JointKind;
use crate::limit::{Ruling, Subject, Word, fact_table as fact};
use crate::said::{Of, PartKind};

pub(super) const CHECK: Check = Check {
    slug: "bus_ports",
    question: "Has every port of the bus a leg or a blank with its insulating plug?",
    judge: Judge::Joint(judge),
};

fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    if inputs.kind() != JointKind::Separable {
        return Vec::new();
    }
    let job = &inputs.order.job;
    let Some(bus) = job
        .bus
        .as_deref()
        .and_then(|id| inputs.order.catalogue.bus(id))
    else {
        let why = "no bus is named, so its ports cannot be counted";
        let ruling = Ruling::not_judged(CHECK.slug, Subject::joint(), why);
        return vec![ruling.asking(fact::BUS.of(Of::Bus))];
    };
    let source = Word::Instructions(bus.head.source().into());
    let rated = Rated {
        check: CHECK.slug,
        subject: Subject::joint(),
        part: &bus.head,
        rated_kv: bus.system_greatest_kv,
        highest_kv: job.system.highest_kv,
    };
    let mut rulings = vec![rated.rule()];
    rulings.extend((1..=bus.ports).map(|port| on_port(inputs, bus, port, &source)));
    let beyond = inputs
        .legs
        .iter()
        .filter_map(|l| l.leg.port)
        .chain(job.blanks.iter().map(|b| b.port))
        .filter(|p| *p > bus.ports);
    rulings.extend(beyond.map(|port| {
        Ruling::on_words(
            CHECK.slug,
            Subject::joint(),
            format!("port {port}"),
            format!("ports 1 to {}", bus.ports),
            source.clone(),
        )
        .failing(
            format!(
                "the job names port {port}, but {} has {} ports",
                bus.head.id, bus.ports
            ),
            "Use a bus with enough ports.",
        )
    }));
    rulings
}

fn on_port(inputs: &Inputs<'_>, bus: &Bus, port: i64, source: &Word) -> Ruling {
    let leg = inputs.legs.iter().find(|l| l.leg.port == Some(port));
    let blank = inputs.order.job.blanks.iter().find(|b| b.port == port);
    let plug = blank
        .and_then(|b| b.plug.as_deref())
        .and_then(|id| inputs.order.catalogue.plug(id));
    let subject = leg.map_or_else(Subject::joint, |l| l.subject());
    let rule = |found: String| {
        Ruling::on_words(
            CHECK.slug,
            subject.clone(),
            found,
            format!(
                "port {port}: a leg or an insulating plug, interface {}",
                bus.interface
            ),
            source.to_owned(),
        )
    };
    const STOP: &str =
        "Stop. An open port must not be left: order the part that mates before anything is cut.";
    match (leg, blank, plug) {
        (Some(leg), _, _) => {
            let interface = leg.chosen.body.and_then(|b| b.interface.as_deref());
            match (leg.chosen.body, interface) {
                (None, _) => Ruling::not_judged(
                    CHECK.slug,
                    subject.clone(),
                    format!("port {port}: no body is named for leg {}", leg.leg.id),
                )
                .asking(leg.missing(inputs).part(PartKind::Body)),
                (Some(body), Some(found)) if found == bus.interface => {
                    rule(format!("leg {} with {}", leg.leg.id, body.head.id))
                }
                (Some(body), found) => {
                    let found = found.unwrap_or("none");
                    rule(format!("{} with interface {found}", body.head.id)).failing(
                        format!(
                            "port {port}: {} mates with {found}, the bus with {}",
                            body.head.id, bus.interface
                        ),
                        STOP,
                    )
                }
            }
        }
        (None, Some(_), Some(plug))
            if plug.interface == bus.interface
                && plug.system_greatest_kv >= inputs.order.job.system.highest_kv =>
        {
            rule(format!("blank with {}", plug.head.id))
        }
        (None, Some(_), Some(plug)) => rule(plug.head.id.clone()).failing(
            format!(
                "port {port}: {} (interface {}, {} kV) does not serve on this bus and system",
                plug.head.id, plug.interface, plug.system_greatest_kv
            ),
            STOP,
        ),
        (None, Some(_), None) => rule("blank without a plug".to_owned()).failing(
            format!("port {port} is blank and has no insulating plug"),
            STOP,
        ),
        (None, None, _) => rule("nothing".to_owned()).failing(
            format!("port {port} has neither a leg nor a blank with its insulating plug"),
            STOP,
        ),
    }
}
