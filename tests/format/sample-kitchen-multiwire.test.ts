import { describe, expect, test } from "vitest";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { boxId, deviceId } from "../builders/ids.ts";
import { findingsOf, inShort, liveWithOpen, onlySection, proofs } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";

const project = openSample("kitchen-multiwire");

test("two legs of one two-pole breaker, opened together", () => {
  const { devices } = project.asFound.enclosures[boxId("P")] ?? {};
  expect(devices?.[deviceId("Q6/8")]).toMatchObject({
    type: "breaker-2",
    breakerRatingA: 20,
    legs: ["A", "B"],
    slot: 6,
  });
});

/** The freezer stays on the circuit of the counter: noted, not ours. */
const EXISTING = ["kitchen-circuit-lights Q6/8"];

/** The places of the 2020 list: kitchen counters and unfinished basements; a refrigerator's wall is not on it. */
test("as found the counters and the freezer lack protection, the refrigerator needs none by the 2020 edition", () => {
  // The directory says "Kitchen" alone; a basement freezer hangs on the circuit of the counter, NFPA 70 210.52(B).
  const ofTheFreezer = ["directory-mismatch Q6/8", "kitchen-circuit-lights Q6/8"];
  expect(inShort(findingsOf(project, "as-found"))).toEqual([
    ...ofTheFreezer,
    // One multiwire circuit without a device: told once, at an outlet as near to the panel as any, with K1, K2 and K3.
    "outlet-not-protected F1",
  ]);
});

test("by the 2023 edition the refrigerator's outlet is on the list too", () => {
  const in2023 = inShort(findingsOf({ ...project, edition: 2023 }, "proposed"));
  expect(in2023).toEqual([...EXISTING, "outlet-not-protected F2"]);
});

test("proposed: protection after the split on each leg, the freezer by itself", () => {
  expect(findingsOf(project, "proposed").map(({ rule, severity }) => `${rule} ${severity}`)).toEqual([
    "kitchen-circuit-lights caution",
  ]);
  expect(proofs(project, "proposed")).toEqual(["F1b by F1b", "F2 by nothing", "K1b by K1b", "K2 by K1b", "K3b by K3b"]);
  expect(liveWithOpen(project, "proposed", "K1b")).toEqual(["F1b", "F2", "K3b"]);
  expect(liveWithOpen(project, "proposed", "F1b")).toEqual(["F2", "K1b", "K2", "K3b"]);
  expect(liveWithOpen(project, "proposed", "K3b")).toEqual(["F1b", "F2", "K1b", "K2"]);
});

/** Taking a receptacle out must leave the white of the two legs whole: NFPA 70 300.13(B). */
describe.each(["as-found", "proposed"] as const)("the shared white, %s", (state) => {
  const before = neutrals(project, state);
  test.each([...before])("stays joined for the others with %s taken out", (name) => {
    const drawing = new SampleDrawing(project, state).remove({ kind: "device", id: deviceId(name) });
    const behind = name === "K1b" ? ["K2"] : [];
    expect(neutrals(drawing.project, state)).toEqual(before.filter((one) => one !== name && !behind.includes(one)));
  });
});

/** Outlets whose neutral reaches the supply. K2 hangs on LOAD of K1b, so it goes with it: by then on one leg alone. */
function neutrals(drawn: Project, state: StateName): readonly string[] {
  const section = onlySection(drawn, state);
  const reach = section.reach();
  return section
    .outlets()
    .filter(({ outlet }) => reach.isAlwaysGrounded({ device: outlet.device.id, node: outlet.neutral }))
    .map(({ outlet }) => outlet.name);
}
