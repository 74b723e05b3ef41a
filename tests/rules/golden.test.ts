/**
 * The laundry circuit as proposed, and what each slip on the way there must say.
 *
 * Expected rules, subjects and live outlets: our computed golden table, G2 to G8 and G12, made by an independent
 * implementation that searches every switch setting and solves the circuit. Rules that are not held yet are left out of
 * its rows: terminal-gauge, egc-too-small, egc-broken-by-removal.
 * As there, a joint that an edit changes gets the smallest connector that takes it.
 */
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { formatVolume } from "../../shared-model/units/volume.ts";
import { boxId, deviceId } from "../builders/ids.ts";
import { findingsOf, inShort, isSerious, liveWithOpen, onlySection, proofs } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";
import { both, type Edit, move, ROWS } from "./golden-rows.ts";

/** Joints of B1: HL, NL and E1 are X, Y and Z of as found, so they keep those ids. */
const JOINTS = ["X", "Y", "HD", "ND", "Z", "E2"];

const plan = (): SampleDrawing => new SampleDrawing(openSample("laundry-proposed"), "proposed");

function edited(edit: Edit): SampleDrawing {
  const drawing = plan();
  edit(drawing);
  for (const joint of JOINTS) drawing.fitConnector("B1", joint);
  return drawing;
}

/** What an edit of the plan brings and what it takes away. */
function brings(edit: Edit): { readonly brought: readonly Finding[]; readonly gone: readonly string[] } {
  const before = findingsOf(plan().project, "proposed");
  const after = findingsOf(edited(edit).project, "proposed");
  const keys = (all: readonly Finding[]) => new Set(all.map(({ key }) => key));
  const [was, is] = [keys(before), keys(after)];
  return {
    brought: after.filter(({ key }) => !was.has(key)),
    gone: inShort(before.filter(({ key }) => !is.has(key))),
  };
}

describe("G1, box fill of the drawings", () => {
  test.each([
    ["laundry-proposed", "as-found", 2017, "31.50"],
    ["laundry-proposed", "as-found", 2020, "32.0625"],
    ["laundry-proposed", "proposed", 2017, "29.25"],
    ["laundry-proposed", "proposed", 2020, "29.8125"],
    ["laundry-proposed", "proposed", 2023, "29.8125"],
    ["two-wire-bedroom", "as-found", 2020, "14.00"],
    ["two-wire-bedroom", "proposed", 2020, "14.00"],
  ] as const)("B1 of %s, %s, %i: %s in³", (name, state, edition, total) => {
    const { ledgers } = openSession(openSample(name), { edition }).report(state);
    const ledger = ledgers[boxId("B1")];
    expect(ledger && formatVolume(ledger.total, 2)).toBe(total);
  });
});

describe("G2, the plan and what it repairs", () => {
  test("proposed: no danger, and of violations the arc-fault protection of R1b alone", () => {
    const findings = findingsOf(plan().project, "proposed");
    const full = ["B1", "B2", "B5", "B6"].map((box) => `fill-nearly-full ${box}`);
    const notes = ["egc-edition-difference B1", ...full, "laundry-circuit-mixed Q14"];
    expect(inShort(findings)).toEqual([...notes, "replace-needs-afci R1b", "voltage-drop-advice R3"]);
    expect(inShort(findings.filter(isSerious))).toEqual(["replace-needs-afci R1b"]);
    expect(findings.filter(({ severity }) => severity === "caution").map(({ rule }) => rule)).toEqual([
      "laundry-circuit-mixed",
    ]);
  });

  test("a dual-function receptacle in the same place leaves no violation, and says the same else", () => {
    const dual = plan().run("replace-device", {
      device: deviceId("R1b"),
      id: deviceId("R1d"),
      type: "dual-function-receptacle-15",
      name: "R1d",
    });
    const plain = inShort(findingsOf(plan().project, "proposed"));
    expect(inShort(findingsOf(dual.project, "proposed"))).toEqual(
      plain.filter((one) => !one.startsWith("replace-needs")),
    );
    expect(findingsOf(dual.project, "proposed").filter(isSerious)).toEqual([]);
    expect(proofs(dual.project, "proposed")).toContain("R3 by R1d");
  });

  test("as found: what is repaired, and what stays", () => {
    const findings = findingsOf(plan().project, "as-found");
    const standing = (wanted: string) => inShort(findings.filter((finding) => finding.standing === wanted));
    expect(standing("repaired")).toEqual([
      "box-overfull B1",
      "outlet-not-protected R1",
      "splice-over-capacity X",
      "splice-over-capacity Y",
      "splice-over-capacity Z",
      "wish-not-protected R5",
    ]);
    const full = ["fill-nearly-full B2", "fill-nearly-full B5", "fill-nearly-full B6"];
    const notes = ["egc-edition-difference B1", ...full, "laundry-circuit-mixed Q14"];
    expect(standing("stays")).toEqual([...notes, "voltage-drop-advice R3"]);
    expect(findings).toHaveLength(12);
  });

  test("proposed: B1 nearly full is ours, the others were there before", () => {
    const by = findingsOf(plan().project, "proposed").map(
      ({ subjects, standing }) => `${subjects[0]?.name} ${standing}`,
    );
    expect(by.sort()).toEqual([
      "B1 inherited-touched",
      "B1 introduced",
      "B2 inherited",
      "B5 inherited",
      "B6 inherited",
      "Q14 inherited",
      "R1b introduced",
      "R3 inherited",
    ]);
  });

  test("who protects whom", () => {
    expect(proofs(plan().project, "proposed")).toEqual([
      "L1 by nothing",
      "R1b by R1b",
      "R2 by R1b",
      "R3 by R1b",
      "R4b by R4b",
      "R5 by R1b",
    ]);
  });
});

describe("who is dead, who lives", () => {
  test("R1b trips: R1b, R2, R3 and R5 dead, the freezer and the stair light live", () => {
    expect(liveWithOpen(plan().project, "proposed", "R1b")).toEqual(["L1", "R4b"]);
  });

  test("R4b trips: it alone is dead", () => {
    expect(liveWithOpen(plan().project, "proposed", "R4b")).toEqual(["L1", "R1b", "R2", "R3", "R5"]);
  });

  test("breaker 14 feeds all of them, and nothing else does", () => {
    const outlets = ["L1", "R1b", "R2", "R3", "R4b", "R5"];
    const section = onlySection(plan().project, "proposed");
    expect([...section.circuitOf(deviceId("Q14")).outlets].sort()).toEqual(outlets.map(deviceId).sort());
    expect(section.breakers().map(({ device }) => device.name)).toEqual(["Q14"]);
    const off = plan().land("C1.bk@P", "capped");
    expect(
      onlySection(off.project, "proposed")
        .outlets()
        .filter(({ live }) => live),
    ).toEqual([]);
  });
});

describe.each(ROWS)("$name", ({ edit, brings: wanted, folds, takes = [], live }) => {
  test("brings exactly these findings and takes no others away", () => {
    const { brought, gone } = brings(edit);
    expect(inShort(brought)).toEqual(wanted);
    if (folds !== undefined) expect(brought[0]?.foldedSubjects.map(({ name }) => name)).toEqual([...folds].sort());
    expect(gone).toEqual(takes);
  });

  if (live !== undefined)
    test("after TEST of R1b these are live", () => {
      expect(liveWithOpen(edited(edit).project, "proposed", "R1b")).toEqual(live);
    });
});

describe("severity where the table tells it", () => {
  const severities = (edit: Edit) =>
    brings(edit).brought.map(({ severity, existing }) => [severity, existing === true]);

  test("G3: a violation at required outlets, by our own work", () => {
    expect(severities(move("C2", "wh", "Y"))).toEqual([
      ["violation", false],
      ["violation", false],
    ]);
  });

  test("G3b: a caution where protection is a wish", () => {
    expect(severities(move("C5", "wh", "Y"))).toEqual([["caution", false]]);
  });

  test("G4: as it was found, at boxes that nobody opens: existing", () => {
    expect(severities(both(move("C2", "bk", "X"), move("C2", "wh", "Y")))).toEqual([["caution", true]]);
  });
});

describe("G12, grounds with R1b taken out", () => {
  const grounded = (drawing: SampleDrawing): readonly string[] => {
    const section = onlySection(drawing.project, "proposed");
    const reach = section.reach();
    const devices = ["L1", "R2", "R3", "R4b", "R5", "S1"].map((name) => ({ name, device: deviceId(name), node: "G" }));
    const metal = ["B1", "B2", "B3", "B4", "B5", "B6", "B7"].map((name) => ({
      name,
      bond: boxId(name) as EnclosureId,
    }));
    return [...devices, ...metal].filter((spot) => reach.isOnGround(spot)).map(({ name }) => name);
  };
  const withoutR1b = (edit: Edit): SampleDrawing => edited(edit).remove({ kind: "device", id: deviceId("R1b") });

  test("every device and every box keeps its ground", () => {
    const all = ["L1", "R2", "R3", "R4b", "R5", "S1", "B1", "B2", "B3", "B4", "B5", "B6", "B7"];
    expect(grounded(withoutR1b(() => undefined))).toEqual(all);
  });

  test("with C5 bare on the ground screw of R1b, the hall loses its own", () => {
    const throughYoke: Edit = (drawing) => drawing.land("C5.cu@B1", "R1b.G");
    expect(grounded(edited(throughYoke))).toContain("R5");
    const left = grounded(withoutR1b(throughYoke));
    expect([left.includes("R5"), left.includes("B6"), left.length]).toEqual([false, false, 11]);
  });
});

test("the moves of the plan at B1: ten ends let go, sixteen brought", () => {
  const { asFound, proposed } = plan().project;
  const was = asFound.enclosures[boxId("B1")]?.places ?? {};
  const is = proposed?.enclosures[boxId("B1")]?.places ?? {};
  const at = (places: typeof was, end: string) => JSON.stringify(places[end as keyof typeof was]?.at);
  const moved = Object.keys(is).filter((end) => at(was, end) !== at(is, end));
  expect(Object.keys(was).filter((end) => at(was, end) !== at(is, end))).toHaveLength(10);
  expect(moved).toHaveLength(16);
});
