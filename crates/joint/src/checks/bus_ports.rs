//! Has every port of the bus a leg or a blank with its insulating plug, and do all of them mate with it?
//!
//! A port with neither would be live and bare, so a missing item fails; it is never left open.
//!
//! Source: the bus's own instructions.

use super::{Inputs, Rated, slug};
use crate::catalogue::Bus;
use crate::job::JointKind;
use crate::limit::{Ruling, Subject, Word, fact_table as fact};
use crate::said::{BusSaid, Of, PartKind, Said};

const CHECK: &str = slug(module_path!());

pub(super) fn judge(inputs: &Inputs<'_>) -> Vec<Ruling> {
    if inputs.kind() != JointKind::Separable {
        return Vec::new();
    }
    let job = &inputs.order.job;
    let Some(bus) = job
        .bus
        .as_deref()
        .and_then(|id| inputs.order.catalogue.bus(id))
    else {
        let ruling = Ruling::not_judged(CHECK, Subject::joint(), BusSaid::NotNamed);
        return vec![ruling.asking(fact::BUS.of(Of::Bus))];
    };
    let source = Word::Instructions(bus.head.source().into());
    let rated = Rated {
        check: CHECK,
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
            CHECK,
            Subject::joint(),
            BusSaid::Port { port },
            BusSaid::Ports { n_ports: bus.ports },
            source.clone(),
        )
        .failing(
            BusSaid::PortBeyond {
                port,
                bus: bus.head.id.clone(),
                n_ports: bus.ports,
            },
            BusSaid::UseWithPorts,
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
    let rule = |found: Said| {
        let wants = BusSaid::PortWants {
            port,
            interface: bus.interface.clone(),
        };
        Ruling::on_words(CHECK, subject.clone(), found, wants, source)
    };
    match (leg, blank, plug) {
        (Some(leg), _, _) => {
            let Some(body) = leg.chosen.body else {
                let leg_id = leg.leg.id.clone();
                let why = BusSaid::BodyOpen { port, leg: leg_id };
                let ruling = Ruling::not_judged(CHECK, subject.clone(), why);
                return ruling.asking(leg.missing(inputs).part(PartKind::Body));
            };
            let (leg, body, interface) =
                (leg.leg.id.clone(), body.head.id.clone(), &body.interface);
            if interface.as_ref() == Some(&bus.interface) {
                return rule(BusSaid::LegWith { leg, body }.into());
            }
            let why = BusSaid::MatesWithOther {
                port,
                body: body.clone(),
                interface: interface.clone(),
                of_bus: bus.interface.clone(),
            };
            let interface = interface.clone();
            let found = BusSaid::WithInterface { body, interface };
            rule(found.into()).failing(why, BusSaid::OrderWhatMates)
        }
        (None, Some(_), Some(plug))
            if plug.interface == bus.interface
                && plug.system_greatest_kv >= inputs.order.job.system.highest_kv =>
        {
            let plug = plug.head.id.clone();
            rule(BusSaid::BlankWith { plug }.into())
        }
        (None, Some(_), Some(plug)) => {
            let why = BusSaid::PlugDoesNotServe {
                port,
                plug: plug.head.id.clone(),
                interface: plug.interface.clone(),
                greatest_kv: plug.system_greatest_kv,
            };
            rule((&plug.head.id).into()).failing(why, BusSaid::OrderWhatMates)
        }
        (None, Some(_), None) => rule(BusSaid::BlankWithoutPlug.into())
            .failing(BusSaid::PlugMissing { port }, BusSaid::OrderWhatMates),
        (None, None, _) => rule(BusSaid::Nothing.into())
            .failing(BusSaid::PortEmpty { port }, BusSaid::OrderWhatMates),
    }
}
