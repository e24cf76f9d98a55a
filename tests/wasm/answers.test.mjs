// Does the core answer in WebAssembly what it answers natively?
//
// `cargo xtask wasm` and the example `native` of crates/hatch must be built.
// Run by ./test (suite wasm), or by hand: node tests/wasm/answers.test.mjs

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { beyond, differences, here, imports, root, there } from "./hatch.mjs";

// Stops a refinement that would not end; the sections below need fewer.
const N_UNKNOWNS_MOST = 30_000;

// A section without arcs: its mesh needs no sine, so it is the same in both,
// and the numbers differ by the order of sums alone (fused and vector
// arithmetic natively). Seen: at most 1.2e-14. Allowed: what such an order can
// do at the condition of these equations, and far less than any error
// estimate.
const SAME_MESH = "A1a";
const TOLERANCE = 1e-9;

// Sections where sines and arctangents of two libraries differ in the last
// bit, after which a tie may fall the other way and give another mesh; one
// with complex potentials. Here the answers must agree within the errors that
// both state.
const OTHER_MESH = ["A2-R0.25", "A5-15-long5", "A6-linear-1e-06"];

const JOB = "examples/larkspur-three-way/job.toml";

const read = (path) => readFileSync(`${root}${path}`, "utf8");
const section = (name) => read(`tests/published/field-sections/${name}.case.json`);

/** The text with one place changed, which must be there. */
function changed(text, from, to) {
    assert.equal(text.split(from).length, 2, `${from} stands there once`);
    return text.replace(from, to);
}

/** Answers in WebAssembly to one text, and natively to another. */
async function both(text, other = text, most = N_UNKNOWNS_MOST) {
    const one = JSON.parse(await here.solve(text, most));
    const two = JSON.parse(there.solve(other, most));
    for (const document of [one, two]) {
        assert.ok(document.answers?.length > 0, JSON.stringify(document));
    }
    return [one, two];
}

test("the module asks nothing of the world around it", async () => {
    assert.deepEqual(await imports(), []);
});

test(`section ${SAME_MESH} has its native answers, number by number`, async () => {
    const [one, two] = await both(section(SAME_MESH));
    assert.deepEqual(differences(one, two, TOLERANCE), []);
});

test("a potential changed in its seventh digit is told apart", async () => {
    const text = section(SAME_MESH);
    const [one, two] = await both(changed(text, '"cond": 8.7', '"cond": 8.700001'), text);
    assert.notDeepEqual(differences(one, two, TOLERANCE), []);
});

for (const name of OTHER_MESH) {
    test(`section ${name} has its native answers within their errors`, async () => {
        const [one, two] = await both(section(name));
        assert.deepEqual(beyond(one, two), []);
    });
    test(`section ${name} with another permittivity is told apart`, async () => {
        const text = section(name);
        const other = changed(text, '"eps_r": 2.3', '"eps_r": 2.4');
        const [one, two] = await both(other, text);
        assert.notDeepEqual(beyond(one, two), []);
    });
}

// Cases of another physics: what is read, a passage, and another that must be told apart.
const OTHER_PHYSICS = [
    ["tests/published/heat-sections/B-steady-250.case.json", '"h_w_per_m2k": 8.0', '"h_w_per_m2k": 8.1'],
    ["examples/tube.case.json", '"stretch": 1.5', '"stretch": 1.50001'],
];

for (const [path, from, to] of OTHER_PHYSICS) {
    test(`${path} has its native answers within their errors`, async () => {
        const text = read(path);
        const [one, two] = await both(text, text, 60_000);
        assert.ok(one.answers.every((answer) => answer.error_estimate !== null));
        assert.deepEqual(beyond(one, two), []);
        const [other, native] = await both(changed(text, from, to), text, 60_000);
        assert.notDeepEqual(beyond(other, native), []);
    });
}

const OF_FIELD = /_stress$|^gap_discharge$/;

/** A plan without what rests on a solved field. */
function withoutFields(text) {
    const plan = JSON.parse(text);
    plan.rulings = plan.rulings.filter((ruling) => !OF_FIELD.test(ruling.check));
    for (const leg of plan.legs) delete leg.field;
    // Shares of a rise are what is left of larger ones: they are sure to a millionth of a kelvin, not to so many figures.
    for (const leg of plan.warm?.legs ?? [])
        for (const share of leg.hotter_from ?? []) share.k = Number(share.k.toFixed(6));
    // The states of a star in time are those of its columns that are not alike; the last bit decides about one that nearly is.
    for (const { at_emergency: at } of plan.warm?.legs ?? [])
        for (const key of Object.keys(at ?? {}).filter((key) => key.endsWith("_degc")))
            at[key] = Number(at[key].toFixed(4));
    return plan;
}

/**
 * Where two plans differ beside their fields. Every text is the same; pressures
 * take exponentials and logarithms of two libraries, which differ in the last
 * bit.
 */
function apart(one, other) {
    return differences(withoutFields(one), withoutFields(other), TOLERANCE, "plan");
}

/** Where the fields of two plans differ by more than both say that they may be off, or rulings turn. */
function fieldsApart(one, two) {
    const apart = [];
    for (const [index, leg] of one.legs.entries()) {
        const [a, b] = [leg.field, two.legs[index].field];
        if (a.state !== b.state || a.stresses.length !== b.stresses.length) apart.push(leg.mark);
        for (const [n, stress] of a.stresses.entries()) {
            const other = b.stresses[n];
            const error = stress.error_kv_per_mm + other.error_kv_per_mm;
            if (!(Math.abs(stress.kv_per_mm - other.kv_per_mm) <= error)) {
                apart.push(`${leg.mark}: ${stress.words}`);
            }
        }
    }
    const judged = (plan) => plan.rulings.filter((ruling) => OF_FIELD.test(ruling.check));
    for (const [index, ruling] of judged(one).entries()) {
        const pair = [ruling.ruling, judged(two)[index]?.ruling];
        if (pair[0] !== pair[1] && !pair.includes("not-judged")) apart.push(ruling.check);
    }
    return apart;
}

test("a plan is the same text, its fields within their errors", async () => {
    const text = read(JOB);
    const [plan, native] = [await here.plan(text), there.plan(text)];
    assert.match(plan, /^\{"format":"jointwright-plan-/);
    assert.deepEqual(apart(plan, native), []);
    const [one, two] = [JSON.parse(plan), JSON.parse(native)];
    assert.ok(one.legs.every((leg) => leg.field.stresses.length === 5));
    const bodies = one.legs.flatMap((leg) => leg.ends.map((end) => end.pressure.parts[0]));
    assert.ok(bodies.every((body) => body.computed.pressure_kpa > 0));
    assert.deepEqual(fieldsApart(one, two), []);
});

test("a plan of another permittivity is told apart by its fields", async () => {
    const text = read(JOB);
    const other = changed(text, "permittivity = 2.9", "permittivity = 4.9");
    const [one, two] = [JSON.parse(await here.plan(other)), JSON.parse(there.plan(text))];
    assert.notDeepEqual(fieldsApart(one, two), []);
});

test("a plan of another reading is told apart", async () => {
    const text = read(JOB);
    const other = changed(text, '"32.65 mm"', '"32.66 mm"');
    assert.notDeepEqual(apart(await here.plan(other), there.plan(text)), []);
});

test("what cannot be used is complained of in the same words", async () => {
    const text = changed(section(SAME_MESH), '"capacitance"', '"capacity"');
    const said = await here.solve(text, N_UNKNOWNS_MOST);
    assert.match(said, /^\{"complaints":\["[^"]+/);
    assert.equal(said, there.solve(text, N_UNKNOWNS_MOST));
});

test("a plan of a colder place is told apart by its pressures alone", async () => {
    const text = read(JOB);
    const other = changed(text, 'ambient_least = "5 degC"', 'ambient_least = "4 degC"');
    const said = apart(await here.plan(other), there.plan(text));
    assert.ok(said.some((line) => /pressure.*\.ratio: /.test(line)), said.join("\n"));
});
