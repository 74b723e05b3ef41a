import { expect, test } from "vitest";
import { type ConductorKey, cableEnd } from "../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId } from "../builders/ids.ts";
import { findingsOf, inShort, proofs } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";

const project = openSample("bath-fan-light");

test("nothing to find in either state", () => {
  expect(findingsOf(project, "as-found")).toEqual([]);
  expect(findingsOf(project, "proposed")).toEqual([]);
});

test("as found the receptacle protects its own face; proposed the fan and the light too", () => {
  expect(proofs(project, "as-found")).toEqual(["FL/lower by nothing", "FL/upper by nothing", "R1 by R1"]);
  expect(proofs(project, "proposed")).toEqual(["FL/lower by R1", "FL/upper by R1", "R1 by R1"]);
});

test("both conductors of W2 go to LOAD together", () => {
  const places = project.proposed?.enclosures[boxId("B1")]?.places;
  for (const [conductor, terminal] of [
    ["bk", "LOAD_H"],
    ["wh", "LOAD_N"],
  ] as const) {
    const end = cableEnd(cableId("W2"), conductor as ConductorKey, "a");
    expect(places?.[end]?.at).toMatchObject({ kind: "terminal", device: deviceId("R1"), terminal });
  }
});

/** With one of the two left on LINE the whole current of the fan is a leak to the device: the slip that the notes warn of. */
test("one alone is found, whichever it is", () => {
  const white = new SampleDrawing(project, "proposed").land("W2.wh@B1", "R1.LINE_N#2");
  expect(inShort(findingsOf(white.project, "proposed"))).toEqual([
    "downstream-neutral-on-line FL/lower",
    "downstream-neutral-on-line FL/upper",
  ]);
  const black = new SampleDrawing(project, "proposed").land("W2.bk@B1", "R1.LINE_H#2");
  expect(inShort(findingsOf(black.project, "proposed"))).toEqual([
    "downstream-hot-on-line FL/lower",
    "downstream-hot-on-line FL/upper",
  ]);
});
