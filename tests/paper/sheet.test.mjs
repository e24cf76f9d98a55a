// The make-up sheet as a reader of PDF sees it: texts, sizes of type and marks, read back by poppler.
//
// Run after a build: node tests/paper/sheet.test.mjs; needs pdftotext, pdftohtml and pdfinfo (Debian: poppler-utils).
// What it compares with is plan.json, which the same run writes.

import assert from "node:assert/strict";
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { after, test } from "node:test";
import { fileURLToPath } from "node:url";

const tree = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const target = process.env.CARGO_TARGET_DIR ?? join(tree, "target");
const program = join(target, "release", "jointwright");
const folder = mkdtempSync(join(tmpdir(), "jointwright-paper-"));
after(() => rmSync(folder, { recursive: true, force: true }));

// When each plan is made, so that two runs say the same.
const MADE = "2026-03-09 14:05 UTC+01:00";

/** Plans a job file into a folder of its own. */
function planned(job, name) {
  const out = join(folder, name);
  const ran = spawnSync(program, ["plan", job, "--out", out, "--made", MADE], { encoding: "utf8" });
  assert.ok([0, 1, 3].includes(ran.status), `${name} ended with ${ran.status}: ${ran.stderr}`);
  return read(out);
}

/** What a folder of a plan holds. */
function read(out) {
  const pdf = join(out, "make-up-sheet.pdf");
  const pages = execFileSync("pdftotext", ["-raw", pdf, "-"], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "ignore"],
  })
    .split("\f")
    .slice(0, -1);
  // What crews measure by; the figures of rulings behind it are rounded to their own error.
  const ruled = pages.findIndex((page) => /^Rulings$/m.test(page));
  assert.ok(ruled > 0, `the rulings have a heading: ${pdf}`);
  const measured = [...pages.slice(0, ruled), pages[ruled].split(/^Rulings$/m)[0]];
  return { out, pdf, pages, measured, plan: JSON.parse(readFileSync(join(out, "plan.json"), "utf8")) };
}

const slugs = readdirSync(join(tree, "examples"), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);
// A run of cable has no joint, and no sheet.
const isJoint = (slug) =>
  !/^kind = "cable"$/m.test(readFileSync(join(tree, "examples", slug, "job.toml"), "utf8"));
const jobs = new Map(slugs.filter(isJoint).map((slug) => [slug, planned(join(tree, "examples", slug, "job.toml"), slug)]));
const iecText = readFileSync(join(tree, "examples", "dock-straight-not-pressed", "job.toml"), "utf8");
writeFileSync(join(folder, "iec.toml"), iecText.replace('words = "us"', 'words = "iec"'));
jobs.set("iec-words", planned(join(folder, "iec.toml"), "iec-words"));

// Words of a job as long as they may be: the front page still is one page.
const longText = readFileSync(join(tree, "examples", "dock-straight-not-pressed", "job.toml"), "utf8");
const long = "Long words of a place and a person, and more of them ".repeat(12);
writeFileSync(
  join(folder, "long.toml"),
  longText
    .replace(/title = "[^"]*"/, `title = "${long}"`)
    .replace(/goes_to = "[^"]*"/g, `goes_to = "${long}"`)
    .replace(/name = "Vault[^"]*"/, `name = "${long}"`),
);
jobs.set("long-words", planned(join(folder, "long.toml"), "long-words"));

const squeezed = (text) => text.replace(/\s+/g, " ");
const fails = (job) => job.plan.outcome === "fail";

/** Text pieces of a page with the size of their type, points. */
function typed(pdf, page) {
  const xml = execFileSync(
    "pdftohtml",
    ["-xml", "-i", "-stdout", "-zoom", "1", "-f", String(page), "-l", String(page), pdf],
    { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] },
  );
  const sizes = new Map();
  for (const [, id, size] of xml.matchAll(/<fontspec id="(\d+)" size="(\d+)"/g)) sizes.set(id, Number(size));
  const pieces = [];
  for (const [, font, text] of xml.matchAll(/<text [^>]*font="(\d+)"[^>]*>(.*?)<\/text>/gs)) {
    const plain = text.replace(/<[^>]+>/g, "").replace(/&amp;/g, "&").replace(/[\u00a0\u2002]|&#160;/g, " ").trim();
    pieces.push({ size: sizes.get(font), text: plain });
  }
  return pieces;
}

/** Number of the front page of an end, from 1. */
function frontOf(job, end) {
  return 1 + job.pages.findIndex((text) => text.includes(`front page of ${end}`));
}

for (const [name, job] of jobs) {
  const { plan, pages } = job;
  const ends = plan.legs.flatMap((leg) => leg.ends.map((end) => ({ leg, end: `${leg.mark}${end.phase}` })));

  test(`${name}: the demonstration mark stands across every page, picture and document`, () => {
    assert.ok(plan.invented);
    for (const [at, page] of pages.entries()) {
      const flat = squeezed(page).replace(/ /g, "");
      assert.ok(flat.includes("INVENTEDDEMONSTRATIONDATA"), `page ${at + 1}`);
      assert.ok(flat.includes("NOTFORANYCABLE"), `page ${at + 1}`);
    }
    for (const leg of plan.legs) {
      const svg = readFileSync(join(job.out, `leg-${leg.mark}.svg`), "utf8");
      assert.ok(svg.includes("INVENTED DEMONSTRATION DATA"), leg.mark);
    }
  });

  test(`${name}: the mark of the plan stands large on every page, on every strip and picture, and in every document`, () => {
    const { short, aloud, whole, issue_words: issue } = plan.plan_mark;
    assert.match(short, /^[CDFHJKMNPRTWX347]{4}-[CDFHJKMNPRTWX347]{4}$/);
    assert.match(whole, /^[0-9a-f]{64}$/);
    for (const [at, page] of pages.entries()) {
      const flat = squeezed(page);
      assert.ok(flat.includes(`PLAN ${short}`), `page ${at + 1}`);
      assert.ok(flat.includes(issue), `page ${at + 1}: ${issue}`);
      assert.ok(flat.includes(`made ${MADE}`), `page ${at + 1}`);
      const large = typed(job.pdf, at + 1).filter((piece) => piece.text === `PLAN ${short}` && piece.size >= 14);
      assert.ok(large.length > 0, `page ${at + 1}: the mark is not there in 14 points`);
      // Once at the foot, and once on each strip.
      const strips = flat.split(/ZERO: square-cut|THIS EDGE IS NOT ZERO/).length - 1;
      if (strips > 0) assert.ok(flat.split(`PLAN ${short}`).length - 1 > strips, `page ${at + 1}`);
    }
    for (const leg of plan.legs) {
      const svg = readFileSync(join(job.out, `leg-${leg.mark}.svg`), "utf8");
      assert.ok(svg.includes(`PLAN ${short}`) && svg.includes(issue), leg.mark);
    }
    const page = readFileSync(join(job.out, "plan.txt"), "utf8").split("\n").slice(0, 4).join(" ");
    assert.ok(page.includes(`PLAN ${short}: ${aloud}`) && page.includes(issue) && page.includes(MADE), page);
    assert.ok(squeezed(pages.join(" ")).includes(aloud));
  });

  test(`${name}: it is tagged PDF/A with the date of the job`, () => {
    const info = execFileSync("pdfinfo", ["-isodates", job.pdf], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
    assert.match(info, /Tagged: +yes/);
    assert.match(info, new RegExp(`CreationDate: +${plan.job.date}`));
    const paper = plan.job.words === "iec" ? /595\.\d+ x 841\.\d+ pts \(A4\)/ : /612 x 792 pts \(letter\)/;
    assert.match(info, paper);
    const meta = execFileSync("pdfinfo", ["-meta", job.pdf], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
    assert.match(meta, /pdfaid:part>2</);
    assert.match(meta, /pdfaid:conformance>A</);
  });

  if (fails(job)) {
    test(`${name}: where a check fails no number to cut to is printed, and no strip`, () => {
      const all = squeezed(pages.join(" "));
      assert.ok(squeezed(pages[0]).includes("CUT NOTHING. CALL"));
      assert.ok(!all.includes("front page of") && !all.includes("Marking strips"));
      for (const leg of plan.legs)
        for (const cut of leg.cuts.filter((c) => c.kind !== "mark" && c.inch))
          for (const text of [`${cut.inch} in `, `${cut.mark_mm} mm`, ` ${cut.nominal_mm} `])
            assert.ok(!all.includes(text), `${cut.plane}: ${text} stands somewhere`);
    });
    continue;
  }

  test(`${name}: one front page an end, at most eight numbers, each at least 18 points`, () => {
    for (const { leg, end } of ends) {
      const page = frontOf(job, end);
      assert.ok(page > 0, `${end} has no front page`);
      assert.equal(pages.filter((text) => text.includes(`front page of ${end}`)).length, 1, `${end} fills more than one page`);
      const flat = squeezed(pages[page - 1]);
      const pieces = typed(job.pdf, page);
      assert.ok(leg.cuts.length + 1 <= 8);
      for (const cut of leg.cuts) {
        const large = plan.job.words === "us" && cut.inch ? cut.inch : cut.mark_mm;
        if (large == null) continue;
        const found = pieces.filter((piece) => piece.text.startsWith(large) && piece.size >= 18);
        assert.ok(found.length > 0, `${end} ${cut.plane}: ${large} is not there in 18 points`);
        assert.ok(flat.includes(`${cut.mark_mm} mm`), `${end} ${cut.plane}: ${cut.mark_mm} mm`);
      }
      for (const cut of leg.cuts)
        for (const rung of cut.growth_ladder ?? []) {
          const large = plan.job.words === "us" && rung.inch ? rung.inch : rung.mark_mm;
          if (large == null) continue;
          assert.ok(
            pieces.some((piece) => piece.text.startsWith(large) && piece.size >= 18),
            `${end}: rung ${large} is not there in 18 points`,
          );
          const window = rung.printed_window;
          if (window) assert.ok(flat.includes(`${window.mm[0]} to ${window.mm[1]} mm`), `${end}: where the rung ${large} may lie`);
        }
      for (const word of ["kPa", "kV/mm"]) assert.ok(!flat.includes(word), word);
      assert.ok(flat.includes("square-cut conductor"), "the datum is named");
      assert.ok(flat.includes(`stop and call ${plan.job.stop_and_call.name}`));
      assert.ok(flat.includes("Not judged:"));
    }
  });

  test(`${name}: every length on front pages, strips and figures is a text of plan.json`, () => {
    const texts = squeezed(JSON.stringify(plan));
    // What is measured between the two lines of a join.
    const known = new Set(["25.4"]);
    const add = (text) => text != null && known.add(text);
    for (const leg of plan.legs) {
      for (const cut of leg.cuts)
        for (const place of [cut, ...(cut.growth_ladder ?? [])]) {
          add(place.inch);
          add(place.mark_mm);
          for (const bound of [...(place.printed_window?.inch ?? []), ...(place.printed_window?.mm ?? [])]) add(bound);
          if (place.grew_inch) add(place.grew_inch.replace(" in", ""));
          if (place.grew_mm != null) add(String(place.grew_mm));
        }
    }
    let n = 0;
    for (const { end } of ends) {
      for (const { text } of typed(job.pdf, frontOf(job, end)))
        for (const [, inch] of text.matchAll(/(?<![\w\/-])((?:\d+ )?\d+\/\d+|\d+) in(?![\w.])(?! th)/g)) {
          assert.ok(known.has(inch) || texts.includes(`${inch} in`), `${end}: ${inch} in is no text of the plan`);
          n += 1;
        }
    }
    for (const page of job.measured)
      for (const [, mm] of squeezed(page).matchAll(/(?<![\d./])(\d+\.\d+) mm\b/g)) {
        assert.ok(known.has(mm) || texts.includes(mm), `${mm} mm is no text of the plan`);
        n += 1;
      }
    assert.ok(n > 20, `${n} lengths were compared`);
  });

  test(`${name}: no length of a cut stands in two roundings`, () => {
    const printed = new Set();
    for (const page of job.measured)
      for (const [, mm] of squeezed(page).matchAll(/(?<![\d./])(\d+(?:\.\d+)?)(?= mm\b| to \d+(?:\.\d+)? mm\b)/g)) printed.add(mm);
    const cuts = new Set();
    for (const leg of plan.legs)
      for (const cut of leg.cuts) {
        if (cut.mark_mm) cuts.add(cut.mark_mm);
        for (const rung of cut.growth_ladder ?? []) if (rung.mark_mm) cuts.add(rung.mark_mm);
        for (const bound of cut.printed_window?.mm ?? []) cuts.add(bound);
      }
    for (const cut of [...cuts].filter((text) => printed.has(text)))
      for (const other of printed) {
        const decimals = (text) => (text.split(".")[1] ?? "").length;
        const isRounding =
          decimals(other) !== decimals(cut) &&
          Math.abs(Number(other) - Number(cut)) <= 0.5 * 10 ** -Math.min(decimals(other), decimals(cut)) &&
          Number(other) !== Number(cut);
        assert.ok(!isRounding, `${cut} mm stands as ${other} mm too`);
      }
  });

  test(`${name}: every step stands in the order of the plan, with its cautions and holds`, () => {
    const all = squeezed(pages.join(" "));
    let from = all.indexOf("In this order: what comes before a step");
    assert.ok(from > 0);
    for (const step of plan.make_up.steps) {
      const at = all.indexOf(step.title, from);
      assert.ok(at >= from, step.id);
      from = at;
    }
    const n = (word) => all.split(word).length - 1;
    const holds = plan.make_up.steps.reduce((sum, step) => sum + (step.hold ?? []).length, 0);
    const cautions = plan.make_up.steps.reduce((sum, step) => sum + step.cautions.length, 0);
    assert.equal(n("HOLD "), holds);
    assert.equal(n("CAUTION "), cautions);
  });

  test(`${name}: every cut and mark with a place stands on some strip, and every strip but the last goes on`, () => {
    const strips = squeezed(pages.filter((text) => text.includes("Marking strips of leg")).join(" "));
    for (const leg of plan.legs) {
      const here = squeezed(pages.filter((text) => text.includes(`Marking strips of leg ${leg.mark}:`)).join(" "));
      for (const cut of leg.cuts.filter((c) => c.mark_mm != null)) assert.ok(here.includes(`${cut.mark_mm} mm`), `${leg.mark} ${cut.plane}`);
    }
    assert.ok(!strips.includes("too far"));
    assert.equal(strips.includes("JOIN 1a"), strips.includes("THIS EDGE IS NOT ZERO"));
  });

  test(`${name}: the warning of the strip stands on every page of strips`, () => {
    const strips = pages.filter((text) => text.includes("Marking strips of leg"));
    assert.ok(strips.length > 0);
    for (const page of strips) {
      const flat = squeezed(page);
      for (const words of ["print at 100 %", "toner", "carbon", "last wipe"]) assert.ok(flat.includes(words), words);
    }
  });
}

test("a row copied from the demonstration, renamed and unmarked, still marks every page", () => {
  const catalogue = readFileSync(join(tree, "data", "catalogue", "demonstration.toml"), "utf8")
    .replaceAll("demonstration = true\n", "")
    .replaceAll('"demo-', '"own-')
    .replaceAll("nvented", "wn");
  const job = readFileSync(join(tree, "examples", "dock-straight-pressed", "job.toml"), "utf8")
    .replace('catalogues = ["demonstration"]', 'catalogues = ["own.toml"]')
    .replaceAll('"demo-', '"own-')
    .replace("invented = true\n", "")
    .replaceAll("nvented", "wn");
  writeFileSync(join(folder, "own.toml"), catalogue);
  writeFileSync(join(folder, "own-job.toml"), job);
  const copied = planned(join(folder, "own-job.toml"), "copied");
  for (const page of copied.pages) assert.ok(squeezed(page).replace(/ /g, "").includes("NOTFORANYCABLE"));
});

test("the line on pressure of every end stands there whole, whose limit it is included", () => {
  let n = 0;
  for (const [name, job] of jobs) {
    // Hyphens that end a line of the page are no part of the text, nor are its spaces.
    const bare = (text) => text.replace(/[\s\u00ad\u2010-]+/g, "");
    const text = bare(job.pages.join(" "));
    for (const leg of job.plan.legs) {
      for (const end of leg.ends) {
        if (!end.pressure) continue;
        n += 1;
        assert.ok(text.includes(bare(end.pressure.line)), `${name} ${leg.mark}: ${end.pressure.line}`);
        assert.ok(!text.includes(bare(`${end.pressure.line} and more`)));
      }
    }
  }
  assert.ok(n >= 15, `${n} ends`);
});

test("no two plans share a mark, and one reading more or less is another plan", () => {
  const marks = [...jobs.values()].map((job) => job.plan.plan_mark.short);
  assert.equal(new Set(marks).size, marks.length);
  const text = readFileSync(join(tree, "examples", "dock-straight-pressed", "job.toml"), "utf8");
  writeFileSync(join(folder, "other.toml"), text.replace('load = "320 A"', 'load = "319 A"'));
  const other = planned(join(folder, "other.toml"), "other");
  assert.ok(!marks.includes(other.plan.plan_mark.short));
  assert.equal(other.plan.plan_mark.issue_words, "issue 1");
});

test("a second issue says on every page which one it replaces", () => {
  for (const page of jobs.get("larkspur-three-way").pages) assert.ok(squeezed(page).includes("issue 2, replaces 1, destroy it"));
});

test("the same job gives the same bytes", () => {
  const first = jobs.get("larkspur-three-way");
  const again = planned(join(tree, "examples", "larkspur-three-way", "job.toml"), "again");
  assert.ok(readFileSync(first.pdf).equals(readFileSync(again.pdf)));
});
