import { describe, expect, test } from "vitest";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Place } from "../../shared-model/model/place.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { boxId, deviceId } from "../builders/ids.ts";
import { findingsOf, inShort, isSerious } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const project = openSample("laundry-proposed");
const b1 = project.proposed?.enclosures[boxId("B1")];

test("as found is the laundry box, end by end; the directory alone was written", () => {
  const { directory, ...asFound } = project.asFound;
  const { directory: _none, ...box } = openSample("laundry-box").asFound;
  expect(asFound).toEqual(box);
  expect(Object.keys(directory)).toEqual([deviceId("Q14")]);
});

test("proposed has of dangers and violations what its notes leave to settle, the arc-fault protection of R1b, nor anything existing shown as less, by any edition that is judged", () => {
  for (const edition of [2017, 2020, 2023, 2026] as const) {
    const found = findingsOf({ ...project, edition }, "proposed").filter((one) => isSerious(one) || one.existing);
    expect(inShort(found)).toEqual(["replace-needs-afci R1b"]);
  }
});

test("the clamps of B1 are out, external connectors in", () => {
  if (b1?.kind !== "box") throw new Error("No B1.");
  expect(b1.internalClamps).toBe("none");
  expect(inOrder(b1.entries).map(({ means }) => means)).toEqual(Array(5).fill("external-connector"));
});

test("R1b replaces R1, R4b replaces R4", () => {
  const devices = Object.values(project.proposed?.enclosures ?? {}).flatMap((box) => Object.values(box.devices));
  expect(devices.flatMap(({ name, replaces }) => (replaces ? [[name, replaces]] : [])).sort()).toEqual([
    ["R1b", deviceId("R1")],
    ["R4b", deviceId("R4")],
  ]);
});

/** What is joined and landed in B1, as the worked job that the sample follows lays it down: six joints, jumpers a to g. */
describe("the make-up of B1", () => {
  test.each([
    ["HL", "C1 bk, C3 bk, C4 bk, a", "twist-large"],
    ["NL", "C1 wh, C3 wh, C4 wh, b", "twist-large"],
    ["HD", "C2 bk, C5 bk, c", "twist-medium"],
    ["ND", "C2 wh, C5 wh, d", "twist-medium"],
    ["E1", "C1 cu, C2 cu, C3 cu, C4 cu, g", "twist-large"],
    ["E2", "C5 cu, e, f, g", "twist-large"],
  ])("%s holds %s", (joint, members, connector) => {
    const splice = Object.values(b1?.splices ?? {}).find(({ name }) => name === joint);
    const ends = Object.entries(b1?.places ?? {}).filter(
      ([, { at }]) => at.kind === "splice" && at.splice === splice?.id,
    );
    expect(
      ends
        .map(([end]) => nameOf(end))
        .sort()
        .join(", "),
    ).toBe(members);
    expect(splice?.connector).toBe(connector);
  });

  test("jumpers lead to the terminals and to the metal, and the two LINE and two LOAD screws have one each", () => {
    const landed = Object.entries(b1?.places ?? {}).filter(([, { at }]) => at.kind !== "splice");
    expect(landed.map(([end, place]) => `${nameOf(end)} ${spotOf(place)}`).sort()).toEqual([
      "a LINE_H",
      "b LINE_N",
      "c LOAD_H",
      "d LOAD_N",
      "e G",
      "f bond",
    ]);
  });
});

/** "C1 bk" for an end of a cable, the jumper's name for an end of a jumper. */
function nameOf(end: string): string {
  const [owner = "", conductor] = (end as EndKey).split(".");
  const jumper = Object.values(b1?.jumpers ?? {}).find(({ id }) => id === owner);
  return jumper?.name ?? `${owner.replace("cable-", "")} ${conductor}`;
}

const spotOf = ({ at }: Place): string => (at.kind === "terminal" ? at.terminal : at.kind);
