import { beforeEach, describe, expect, test } from "vitest";
import { besideCable, beyond } from "../../renderer/sheet/walk/beyond.ts";
import { hereStore, isAt, wentFrom } from "../../renderer/sheet/walk/here.ts";
import type { Place } from "../../renderer/sheet/walk/place.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { boxId, cableId, deviceId, laundryDrawing, spliceId } from "../builders/drawing.ts";

const item = (box: string, key: string): Place => ({ kind: "item", box: boxId(box), key });
const box = (name: string): Place => ({ kind: "box", box: boxId(name) });
const cable = (name: string, from: string): Place => ({ kind: "cable", cable: cableId(name), box: boxId(from) });

const house = (): Installation => laundryDrawing().project.asFound;

/** Goes on until there is no way, at most so many steps. */
function walk(installation: Installation, start: Place, steps: number): readonly (Place | string)[] {
  const way: Place[] = [];
  let at = start;
  for (let step = 0; step < steps; step += 1) {
    const found = beyond(installation, at, way.at(-1));
    if ("why" in found) return [...way, at, found.why].slice(1);
    way.push(at);
    at = found.to;
  }
  return [...way, at].slice(1);
}

describe("along what is connected", () => {
  test("from a box to its cables and over them to the next box, on by the cable after the one come by", () => {
    expect(walk(house(), box("B7"), 4)).toEqual([cable("C7", "B7"), box("B5"), cable("C4", "B5"), box("B1")]);
    expect(walk(house(), box("P"), 3)).toEqual([cable("C1", "P"), box("B1"), cable("C2", "B1")]);
  });

  test("a conductor leads to its place, over it to another one there, and by that to the next box", () => {
    const start = item("B5", `end ${cableId("C4")}.bk.b`);
    expect(walk(house(), start, 4)).toEqual([
      item("B5", `device ${deviceId("S1")}`),
      item("B5", `end ${cableId("C7")}.bk.a`),
      item("B7", `end ${cableId("C7")}.bk.b`),
      item("B7", `device ${deviceId("L1")}`),
    ]);
  });

  test("a splice leads through all its members, one after the one that was come by", () => {
    const installation = house();
    const splice = item("B1", `splice ${spliceId("X")}`);
    const seen = new Set<string>();
    let from: Place | undefined;
    for (let turn = 0; turn < 6; turn += 1) {
      const found = beyond(installation, splice, from);
      if (!("to" in found) || found.to.kind !== "item") throw new Error("A splice has members.");
      seen.add(found.to.key);
      from = found.to;
    }
    // Five cables and the pigtail.
    expect(seen.size).toBe(6);
  });

  test("where nothing goes on, it says why", () => {
    const drawn = laundryDrawing();
    drawn.land("C3.bk@B4", "capped");
    const { asFound } = drawn.project;
    const [far, why] = walk(asFound, item("B4", `end ${cableId("C3")}.bk.b`), 1);
    expect([far, why]).toEqual([item("B1", `end ${cableId("C3")}.bk.a`), undefined]);
    const lone = drawn.box("B9", "device-3-2-3-1-2").project.asFound;
    expect(beyond(lone, box("B9"), undefined)).toEqual({ why: "No cable comes to B9." });
    const out = drawn.outside("C9", "B9").project.asFound;
    expect(beyond(out, cable("C9", "B9"), box("B9"))).toEqual({ why: "C9 leaves this drawing." });
    expect(beyond(out, item("B9", `end ${cableId("C9")}.bk.a`), undefined)).toEqual({ why: "C9 leaves this drawing." });
    expect(beyond(out, item("B9", `cable ${cableId("C9")} a`), undefined)).toEqual({ why: "C9 leaves this drawing." });
    expect(beyond(out, box("gone"), undefined)).toHaveProperty("why");
  });

  test("every thing of the house leads somewhere or says why, and never to what is not there", () => {
    const installation = house();
    let led = 0;
    for (const { id, devices, splices, places } of Object.values(installation.enclosures)) {
      const keys = [
        ...Object.keys(devices).map((key) => `device ${key}`),
        ...Object.keys(splices).map((key) => `splice ${key}`),
        ...Object.keys(places).map((key) => `end ${key}`),
      ];
      for (const key of keys) {
        const found = beyond(installation, { kind: "item", box: id, key }, undefined);
        if ("why" in found) {
          expect(found.why, key).toMatch(/\.$/);
          continue;
        }
        led += 1;
        const there = installation.enclosures[found.to.box];
        const [kind = "", to = ""] = found.to.kind === "item" ? found.to.key.split(" ") : [];
        const table = { device: there?.devices, splice: there?.splices, end: there?.places }[kind];
        expect(Object.keys(table ?? {}), key).toContain(to);
      }
    }
    expect(led).toBeGreaterThan(60);
  });

  test("arrows on a cable go through the cables of the box it was come to from", () => {
    const at = { kind: "cable", cable: cableId("C1"), box: boxId("B1") } as const;
    expect(besideCable(house(), at, 1)).toEqual(cable("C2", "B1"));
    expect(besideCable(house(), at, -1)).toEqual(cable("C5", "B1"));
  });
});

describe("where the person is", () => {
  beforeEach(() => hereStore.set({ at: undefined, trail: [], stop: undefined }));

  test("a place come to by other means leaves the cable that was shown", () => {
    hereStore.merge({ at: cable("C1", "B1"), stop: cable("C1", "B1") });
    isAt(cable("C1", "B1"));
    expect(hereStore.get().stop).toEqual(cable("C1", "B1"));
    isAt(box("B1"));
    expect(hereStore.get()).toMatchObject({ at: box("B1"), stop: undefined });
  });

  test("the way back is remembered, but not for ever", () => {
    for (let step = 0; step < 300; step += 1) wentFrom(box(`B${step}`));
    const { trail } = hereStore.get();
    expect(trail.length).toBe(100);
    expect(trail.at(-1)).toEqual(box("B299"));
  });
});
