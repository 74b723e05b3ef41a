/** What a person changes of an intent: each change leaves one use for each cable, and nothing else changes. */
import { describe, expect, test } from "vitest";
import {
  type CableUse,
  deviceProtected,
  feedOf,
  legOf,
  protectOf,
  usageOf,
  withDevice,
  withReplacing,
  withSide,
  withSupply,
  withUse,
} from "../../renderer/state/make-up/intent-edits.ts";
import type { MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import { asId, type ConductorKey } from "../../shared-model/model/ids.ts";
import { USUAL_STYLE } from "../../shared-model/planning/joint-group.ts";
import { cableId, deviceId } from "../builders/ids.ts";

const [C1, C2, C3, C4] = ["C1", "C2", "C3", "C4"].map(cableId) as [
  ReturnType<typeof cableId>,
  ReturnType<typeof cableId>,
  ReturnType<typeof cableId>,
  ReturnType<typeof cableId>,
];
const S1 = deviceId("S1");
const L1 = deviceId("L1");

const start: MakeUpIntent = {
  supply: { cable: C1, as: "feed" },
  downstream: [
    { cable: C2, protect: true },
    { cable: C3, protect: false },
    { cable: C4, protect: false },
  ],
  switched: [],
  loops: [],
  travellers: [],
  devices: [{ device: L1, protect: false }],
  replace: [],
  style: USUAL_STYLE,
};

/** How often a cable is named as something. */
const uses = ({ supply, downstream, switched, loops, travellers }: MakeUpIntent): readonly string[] =>
  [
    supply.cable,
    ...[...downstream, ...switched, ...loops, ...travellers].map(({ cable }) => cable),
    ...loops.flatMap(({ feedsCables }) => feedsCables),
  ].sort();

describe("cables", () => {
  test.each<[CableUse]>([
    [{ as: "switched", by: S1 }],
    [{ as: "travellers", by: S1 }],
    [{ as: "loop" }],
    [{ as: "downstream" }],
  ])("%o and back keeps its side", (use) => {
    const other = withUse(start, C2, use);
    expect(usageOf(other, C2)).toEqual(use);
    expect(protectOf(other, C2)).toBe(true);
    expect(uses(other)).toEqual([C1, C2, C3, C4]);
    expect(uses(withUse(other, C2, { as: "downstream" }))).toEqual([C1, C2, C3, C4]);
  });

  test("what a loop feeds has no side of its own, and is let go with another use", () => {
    const fed = withUse(withUse(start, C2, { as: "loop" }), C3, { as: "by-loop", loop: C2 });
    expect(usageOf(fed, C3)).toEqual({ as: "by-loop", loop: C2 });
    expect(protectOf(fed, C3)).toBeUndefined();
    expect(uses(fed)).toEqual([C1, C2, C3, C4]);
    expect(usageOf(withUse(fed, C3, { as: "downstream" }), C3)).toEqual({ as: "downstream" });
    expect(withUse(fed, C3, { as: "downstream" }).loops[0]?.feedsCables).toEqual([]);
  });

  test("another supply changes places with the one before", () => {
    const other = withSupply(start, C2);
    expect(other.supply).toEqual({ cable: C2, as: "feed" });
    expect(usageOf(other, C1)).toEqual({ as: "downstream" });
    expect(uses(other)).toEqual([C1, C2, C3, C4]);
    expect(withSupply(start, C1)).toBe(start);
  });

  test("side and leg of one cable alone", () => {
    const other = withSide(start, C3, { protect: true, leg: asId<ConductorKey>("rd") });
    expect([protectOf(other, C3), legOf(other, C3)]).toEqual([true, "rd"]);
    expect(other.downstream.filter(({ cable }) => cable !== C3)).toEqual(
      start.downstream.filter(({ cable }) => cable !== C3),
    );
  });
});

describe("devices", () => {
  test("fed by a switch, by a loop, always on: one at a time", () => {
    const looped = withUse(start, C2, { as: "loop" });
    const bySwitch = withDevice(looped, { device: L1 }, { by: "switch", id: S1 }, true);
    expect(feedOf(bySwitch, { device: L1 })).toEqual({ by: "switch", id: S1 });
    expect(deviceProtected(bySwitch, { device: L1 })).toBe(true);
    const byLoop = withDevice(bySwitch, { device: L1 }, { by: "loop", id: C2 }, true);
    expect(feedOf(byLoop, { device: L1 })).toEqual({ by: "loop", id: C2 });
    expect(byLoop.devices).toEqual([]);
    const always = withDevice(byLoop, { device: L1 }, { by: "always" }, false);
    expect(feedOf(always, { device: L1 })).toEqual({ by: "always" });
    expect(always.loops[0]?.feedsDevices).toEqual([]);
  });

  test("half by half", () => {
    const looped = withUse(start, C2, { as: "loop" });
    const upper = { device: deviceId("R"), half: "upper" } as const;
    const lower = { device: deviceId("R"), half: "lower" } as const;
    const one = withDevice(looped, upper, { by: "loop", id: C2 }, false);
    const both = withDevice(one, lower, { by: "switch", id: S1 }, false);
    expect([feedOf(both, upper), feedOf(both, lower)]).toEqual([
      { by: "loop", id: C2 },
      { by: "switch", id: S1 },
    ]);
    expect(both.loops[0]?.feedsHalves).toEqual(["device-R/upper"]);
  });

  test("one replacement a device, or none", () => {
    const once = withReplacing(start, L1, "gfci-blank");
    expect(withReplacing(once, L1, "gfci-receptacle-15").replace).toEqual([{ device: L1, type: "gfci-receptacle-15" }]);
    expect(withReplacing(once, L1, undefined).replace).toEqual([]);
  });
});
