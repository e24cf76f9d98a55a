// The hatch of the core (crates/hatch) as Node opens it, and the native answers to hold against it.

import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Folder of the repository, with a slash at its end. */
export const root = fileURLToPath(new URL("../../", import.meta.url));

const target = process.env.CARGO_TARGET_DIR || join(root, "target");
const wasm = join(
    target,
    "wasm32-unknown-unknown",
    "release",
    "jointwright_hatch.wasm",
);
const native = join(target, "release", "examples", "native");

const module = () => WebAssembly.compile(readFileSync(wasm));

/** What the module needs from outside. */
export async function imports() {
    return WebAssembly.Module.imports(await module());
}

// A module of its own for each question: what one leaves behind, the next cannot lean on.
async function question(text, ask) {
    const hatch = (await WebAssembly.instantiate(await module())).exports;
    for (const byte of new TextEncoder().encode(text)) {
        hatch.put(byte);
    }
    const answer = new Uint8Array(ask(hatch));
    for (let index = 0; index < answer.length; index += 1) {
        answer[index] = hatch.take(index);
    }
    return new TextDecoder("utf-8", { fatal: true }).decode(answer);
}

/** Answers in WebAssembly: the text of a document. */
export const here = {
    solve: (text, most) => question(text, (hatch) => hatch.solve(most)),
    plan: (text) => question(text, (hatch) => hatch.plan()),
};

const run = (text, words) =>
    execFileSync(native, words, { input: text, encoding: "utf8" });

/** The same answers natively. */
export const there = {
    solve: (text, most) => run(text, ["solve", String(most)]),
    plan: (text) => run(text, ["plan"]),
};

/**
 * Where two documents differ, as sentences; none if they agree.
 *
 * Everything must be equal, but numbers only within `tolerance`, a share of
 * the larger one.
 */
export function differences(one, other, tolerance, path = "answer") {
    if (typeof one === "number" && typeof other === "number") {
        const most = tolerance * Math.max(Math.abs(one), Math.abs(other));
        const is_close = Math.abs(one - other) <= most;
        return is_close ? [] : [`${path}: ${one} and ${other}`];
    }
    const is_tree = (value) => typeof value === "object" && value !== null;
    if (!is_tree(one) || !is_tree(other)) {
        return Object.is(one, other) ? [] : [`${path}: ${one} and ${other}`];
    }
    const [keys, others] = [Object.keys(one), Object.keys(other)];
    if (keys.join() !== others.join()) {
        return [`${path}: has ${keys}, and ${others}`];
    }
    return keys.flatMap((key) =>
        differences(one[key], other[key], tolerance, `${path}.${key}`),
    );
}

/**
 * Answers of two documents that differ by more than the errors both state, as
 * sentences; none if they agree. Where a peak lies may differ.
 */
export function beyond(one, other) {
    const kinds = (document) =>
        document.answers.map(({ name, kind, unit }) => [name, kind, unit]);
    const said = differences(kinds(one), kinds(other), 0);
    one.answers.forEach((ours, index) => {
        const native = other.answers[index];
        const most = ours.error_estimate + native.error_estimate;
        if (!(Math.abs(ours.value - native.value) <= most)) {
            said.push(`${ours.name}: ${ours.value} and ${native.value}`);
        }
        // A complex number off by `most` turns by at most this angle.
        const angle = (most / Math.abs(native.value)) * (180 / Math.PI);
        const turn = (ours.phase_deg ?? 0) - (native.phase_deg ?? 0);
        const shortest = Math.min(Math.abs(turn), 360 - Math.abs(turn));
        if (!(shortest <= angle)) {
            said.push(`${ours.name}: turned by ${turn} deg`);
        }
    });
    return said;
}
