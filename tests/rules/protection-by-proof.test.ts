import fc from "fast-check";
import { describe, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { proveState } from "../../shared-model/analysis/prove-state.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { asId, type RoomId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { outletNotProtected } from "../../shared-model/rules/checks/outlet-not-protected.ts";
import type { RuleWatch } from "../../shared-model/rules/run-rules.ts";
import { watts } from "../../shared-model/units/quantity.ts";
import { withMistakes } from "../builders/mistakes.ts";
import { Picker } from "../builders/picker.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { ARRANGEMENTS, drawnWithLengths } from "../solver/circuit/counter-examples.ts";
import { randomDrawing } from "../solver/random-drawing.ts";
import { checkDocument, rawAnswers } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";

/*
 * `outlet-not-protected` rests on the proof by currents. Here every box is put into a crawl space, where the list of 2020 asks
 * for the protection of receptacles and of lights: NFPA 70 210.8(A)(4) and (C).
 */
const EVERYWHERE = asId<RoomId>("everywhere");

function everywhereRequired(project: Project): Project {
  const rooms = { ...project.rooms, [EVERYWHERE]: { id: EVERYWHERE, name: "Crawl", kinds: ["crawl-space"], order: 0 } };
  const copy = structuredClone({ ...project, edition: 2020, rooms }) as Project;
  for (const state of [copy.asFound, copy.proposed]) {
    for (const enclosure of Object.values(state?.enclosures ?? {}))
      if (enclosure.kind === "box") Object.assign(enclosure, { roomId: EVERYWHERE });
  }
  return copy;
}

const required = (drawing: Drawing): Project => everywhereRequired(drawing.project());

const ALONE: RuleWatch = { skips: (rule) => rule !== outletNotProtected.id, begins: () => {} };

/** What the rule says, before anything is folded under its cause: outlet, failing test, message. */
const reportsOf = (project: Project, state: StateName = "as-found") =>
  rawAnswers(project, state, ALONE)
    .flat()
    .flatMap(({ reports }) => reports)
    .filter(({ rule }) => rule === outletNotProtected)
    .map(({ report }) => ({ on: `${report.subjects[0]?.id}`, test: report.data?.test, message: report.message }));

const namesOf = (reports: readonly { readonly on: string }[]) => reports.map(({ on }) => on).sort();

describe("arrangements in which a search from LOAD says yes", () => {
  test.each(ARRANGEMENTS)("$name", (arrangement) => {
    const project = required(drawnWithLengths(arrangement));
    const reports = reportsOf(project);
    expect(namesOf(reports)).toEqual(arrangement.open);
    for (const { outlet, fails } of arrangement.failures) {
      const tests = fails.map((one) => one.slice(0, 2));
      const found = reports.find(({ on }) => on === outlet);
      if (found?.test !== undefined && found.message.includes(arrangement.failures[0]?.device ?? ""))
        expect([outlet, tests.includes(`${found.test}`)]).toEqual([outlet, true]);
    }
    // Folded, each still counts under what is told.
    const { findings } = checkDocument(project);
    const told = new Set(findings.flatMap((one) => [...one.subjects, ...one.foldedSubjects].map(({ id }) => `${id}`)));
    expect(arrangement.open.filter((outlet) => !told.has(outlet))).toEqual([]);
    // The window shows the same.
    const answers = openSession(project)
      .answers(0)
      .changed.flatMap(({ outlets }) => Object.values(outlets));
    const unprotected = answers.flatMap((all) => all ?? []).filter(({ protectedBy }) => protectedBy.length === 0);
    expect(unprotected.map(({ outlet }) => `${outlet}`).sort()).toEqual(arrangement.open);
  });

  test.each<readonly [string, string, string, RegExp]>([
    ["1: second hot path around the contacts", "R3", "P1", /its hot comes round R1b: jumper y .* 2[0-9] %/],
    [
      "2: hot on LOAD, neutral on LINE",
      "R5",
      "P1",
      /its neutral goes round R1b: C5 WH leaves splice NL in B1; .*100 %/,
    ],
    ["3: neutral of another circuit", "R5", "P1", /its neutral goes round R1b: C9 WH leaves/],
    ["4: LINE and LOAD exchanged", "R2", "P5", /R1b is fed on its LOAD terminals/],
    ["7: no neutral on LINE", "R2", "P4", /R1b has no neutral on its LINE to work with/],
    ["8b: the same, and the hot of an outlet before the switch", "R5", "P1", /its hot comes round R1b/],
    [
      "9: LOAD in one position of a three-way switch, LINE in the other",
      "RX",
      "P1",
      /with SX down its hot comes round R1b/,
    ],
    ["12: white and ground in contact at R3", "R3", "P2", /50 % of what it uses goes round R1b: jumper y/],
  ])("%s: %s fails %s, and where", (name, outlet, wanted, words) => {
    const arrangement = ARRANGEMENTS.find((one) => one.name === name);
    if (arrangement === undefined) throw new Error(`No arrangement ${name}.`);
    const found = reportsOf(required(drawnWithLengths(arrangement))).find(({ on }) => on === outlet);
    expect(found?.test).toBe(wanted);
    expect(found?.message).toMatch(words);
  });
});

/*
 * Where isolation by reachability and the proof differ, what is right was worked out by hand.
 */
describe("where the search for what reaches it and the proof differ", () => {
  /** RX hangs behind R1b with SX up and behind R8 with it down. */
  const byTurns = (): Drawing =>
    laundryProposed()
      .device("R8", "gfci-receptacle-15", "B1")
      .device("SX", "switch-3way", "B1")
      .device("RX", "receptacle-15", "B1")
      .jumper("l", "B1", "HL", "R8.LINE_H")
      .jumper("m", "B1", "ND", "R8.LINE_N")
      .jumper("n", "B1", "R8.LOAD_N", "RX.N1")
      .jumper("h1", "B1", "HD", "SX.T1")
      .jumper("h2", "B1", "R8.LOAD_H", "SX.T2")
      .jumper("h3", "B1", "SX.C", "RX.H1");

  test("two devices that take turns protect: whatever the switch, one of them opens", () => {
    const names = namesOf(reportsOf(required(byTurns())));
    expect(names).not.toContain("RX");
    expect(namesOf(reportsOf(required(byTurns().setDevice("R8", { type: "afci-receptacle-15" }))))).toContain("RX");
  });

  /** RX is split: its upper half on LOAD, its lower on LINE, and its neutral whole on LOAD. */
  const split = (): Drawing =>
    laundryProposed()
      .device("RX", "receptacle-15", "B1", { hotTab: "removed" })
      .jumper("x", "B1", "HD", "RX.H1")
      .jumper("y", "B1", "HL", "RX.H2")
      .jumper("z", "B1", "ND", "RX.N1");

  test("a plugged lamp that feeds round the open device: its neutral side stays live for everybody on LOAD", () => {
    expect(namesOf(reportsOf(required(split())))).toEqual(["L1", "RX/lower"]);
    const used = reportsOf(required(split().load("Lamp", "lamp-60", "RX/lower")));
    expect(namesOf(used)).toEqual(["L1", "R2", "R3", "R5", "RX/lower", "RX/upper"]);
    expect(used.find(({ on }) => on === "R2")?.message).toContain("a load still brings a live conductor to it");
    // The face of R1b has contacts of its own, which part it from LOAD. One fault, told once.
    const { findings } = checkDocument(required(split().load("Lamp", "lamp-60", "RX/lower")));
    expect(
      findings.filter(({ rule }) => rule === "outlet-not-protected").map(({ subjects }) => subjects[0]?.id),
    ).toEqual(["L1"]);
  });

  test("an open neutral is told as that: what leaks from the hot still opens the device", () => {
    const open = required(laundryProposed().put({ "C5.wh@B1": "cap" }));
    expect(namesOf(reportsOf(open))).toEqual(["L1"]);
    expect(checkDocument(open).findings.map(({ rule, subjects }) => `${rule} ${subjects[0]?.id}`)).toContain(
      "open-neutral R5",
    );
    // Where its box is still being surveyed, nothing is said of the loose end, and nothing of protection either.
    const surveyed = laundryProposed().put({ "C5.wh@B6": "loose" }).setBox("B6", { beingSurveyed: true });
    expect(namesOf(reportsOf(required(surveyed)))).toEqual(["L1"]);
    // Past a device that it does not pass it stays a violation.
    const past = laundryProposed().put({ "C5.wh@B1": "cap", "C5.bk@B1": "HL" });
    expect(namesOf(reportsOf(required(past)))).toEqual(["L1", "R5"]);
  });
});

const started = (project: Project): readonly (readonly [Project, StateName])[] =>
  project.proposed === undefined
    ? [[project, "as-found"]]
    : [
        [project, "as-found"],
        [project, "proposed"],
      ];

const sampleProjects = (): readonly Project[] =>
  samples.map(({ file }) => openSample(file.replace(/[.]loadside$/, "")));

function* judged(): Generator<readonly [string, Project, StateName]> {
  for (const [index, project] of sampleProjects().entries())
    for (const [one, state] of started(everywhereRequired(project))) yield [`sample ${index} ${state}`, one, state];
  const starts = sampleProjects().filter(({ proposed }) => proposed !== undefined);
  for (let seed = 0; seed < 60; seed++) {
    const { project } = withMistakes(starts[seed % starts.length] as Project, new Picker(500 + seed), 4);
    yield [`mistakes ${seed}`, everywhereRequired(project), "proposed"];
  }
}

describe("the rule and the schedule of protection", () => {
  test("say the same of the same outlet, in the same words", { timeout: 300_000 }, () => {
    let same = 0;
    for (const [name, project, state] of judged()) {
      const reports = new Map(reportsOf(project, state).map((one) => [one.on, one]));
      for (const { proof, isProtected, reason } of proveState(project, state).lines) {
        const { key } = proof.standing.outlet;
        const said = reports.get(key);
        if (isProtected) expect([name, key, said]).toEqual([name, key, undefined]);
        if (said === undefined || said.message.includes("exchanged")) continue;
        expect([name, key, isProtected]).toEqual([name, key, false]);
        const [, words = reason] = /^P\d[^:]*: (.*?)[.]( It stops.*| P6.*)?$/s.exec(reason) ?? [];
        const shown = words.replace(/^No ground/, "no ground").replace(/[.]$/, "");
        expect([name, key, said.message]).toEqual([name, key, expect.stringContaining(shown)]);
        same++;
      }
    }
    expect(same).toBeGreaterThan(100);
  });
});

describe("a protected outlet", () => {
  /** Every load with another use, or none: at devices and plugged in. */
  function switched(project: Project, state: StateName, which: Picker): Project {
    const copy = structuredClone(project);
    const installation = state === "as-found" ? copy.asFound : copy.proposed;
    const other = () => watts(which.from([0, 40, 1500], 0));
    for (const { devices } of Object.values(installation?.enclosures ?? {}))
      for (const device of Object.values(devices))
        if (which.chance(0.5) && device.loadW !== undefined) Object.assign(device, { loadW: other() });
    for (const load of Object.values(installation?.loads ?? {}))
      if (which.chance(0.5)) Object.assign(load, { loadW: other() });
    return copy;
  }

  test("stays protected when a load anywhere is switched", { timeout: 300_000 }, () => {
    let kept = 0;
    for (const [name, project, state] of judged()) {
      const before = namesOf(reportsOf(project, state));
      const after = namesOf(reportsOf(switched(project, state, new Picker(kept)), state));
      expect([name, after]).toEqual([name, before]);
      kept++;
    }
    expect(kept).toBeGreaterThan(60);
  });

  test("on drawings of nothing in particular too", { timeout: 300_000 }, () => {
    fc.assert(
      fc.property(randomDrawing, fc.nat(), (drawing, seed) => {
        const project = required(drawing);
        expect(namesOf(reportsOf(switched(project, "as-found", new Picker(seed)), "as-found"))).toEqual(
          namesOf(reportsOf(project)),
        );
      }),
      { numRuns: 60 },
    );
  });

  test("and a lamp plugged in at it takes its protection from nobody", () => {
    const plain = namesOf(reportsOf(required(laundryProposed())));
    for (const outlet of ["R1b", "R2", "R3", "R4b", "R5"])
      expect(namesOf(reportsOf(required(laundryProposed().load("Lamp", "lamp-60", outlet))))).toEqual(plain);
  });
});
