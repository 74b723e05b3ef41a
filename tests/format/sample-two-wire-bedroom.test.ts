import { expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { formatVolume } from "../../shared-model/units/volume.ts";
import { boxId, deviceId } from "../builders/ids.ts";
import { findingsOf, inShort, isSerious, liveWithOpen, proofs } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const project = openSample("two-wire-bedroom");

test("14/2 without a ground in both states, behind 15 A", () => {
  for (const state of [project.asFound, project.proposed]) {
    const cables = Object.values(state?.cables ?? {});
    expect(cables.map(({ item }) => item)).toEqual(["nm-14-2", "nm-14-2", "nm-14-2", "nm-14-2", "nm-14-2"]);
    expect(cables.flatMap(({ conductors }) => Object.values(conductors)).some(({ grounding }) => grounding)).toBe(
      false,
    );
  }
  expect(project.asFound.enclosures[boxId("P")]?.devices[deviceId("Q4")]?.breakerRatingA).toBe(15);
});

/** NFPA 70 Table 314.16(B), 14 AWG: four conductors 8.00, clamps 2.00, a yoke 4.00, no grounds. */
test("boxes fed through are exactly full before and after, which passes", () => {
  for (const state of ["as-found", "proposed"] as const) {
    const { ledgers } = openSession(project).report(state);
    for (const name of ["B1", "B2", "B3"]) {
      const ledger = ledgers[boxId(name)];
      expect(ledger && formatVolume(ledger.total, 2)).toBe("14.00");
    }
  }
});

test("as found nothing is wrong by these rules but that the boxes are full, the run is long and the switch has no neutral: nothing without a ground asks for one", () => {
  const full = ["fill-nearly-full B1", "fill-nearly-full B2", "fill-nearly-full B3"];
  // The light switch hangs on a loop of two wires, as was usual; NFPA 70 404.2(C) asks for more of new work alone.
  const loop = "no-neutral-at-switch B5";
  // 74 ft of 14 AWG to R3, 5.05 ohm in 1000 ft there and back, at 12 A: 4.5 V of 120.
  expect(inShort(findingsOf(project, "as-found"))).toEqual([...full, loop, "voltage-drop-advice R3"]);
  const proposed = findingsOf(project, "proposed");
  // Protection stands in for the ground; what must be grounded still has no place to be plugged in.
  expect(inShort(proposed)).toEqual(["egc-missing R1b", ...full, loop, "voltage-drop-advice R3b"]);
  expect(proposed.filter(isSerious)).toEqual([]);
});

/** Labels as NFPA 70 (2020) 406.4(D)(2)(b) and (c) ask for them; no ground leads on from the first outlet. */
test("proposed: protection at the first outlet, three slots behind it, labelled, no ground carried on", () => {
  expect(proofs(project, "proposed")).toEqual(["L1 by R1b", "R1b by R1b", "R2b by R1b", "R3b by R1b"]);
  expect(liveWithOpen(project, "proposed", "R1b")).toEqual([]);
  const labels = inOrder(project.proposed?.labels ?? {}).map(({ wording, on }) => [
    "device" in on && on.device,
    wording,
  ]);
  expect(labels).toEqual([
    [deviceId("R1b"), "No Equipment Ground"],
    [deviceId("R2b"), "GFCI Protected"],
    [deviceId("R2b"), "No Equipment Ground"],
    [deviceId("R3b"), "GFCI Protected"],
    [deviceId("R3b"), "No Equipment Ground"],
  ]);
  const boxes = Object.values(project.proposed?.enclosures ?? {});
  const onGround = boxes
    .flatMap(({ places }) => Object.values(places))
    .filter(({ at }) => at.kind === "terminal" && at.terminal === "G");
  expect(onGround).toEqual([]);
});

test("each new receptacle is linked to the one it replaces", () => {
  const devices = Object.values(project.proposed?.enclosures ?? {}).flatMap((box) => Object.values(box.devices));
  const links = devices.flatMap(({ id, replaces }) => (replaces === undefined ? [] : [[id, replaces]]));
  expect(links.sort()).toEqual([1, 2, 3].map((n) => [deviceId(`R${n}b`), deviceId(`R${n}`)]));
});
