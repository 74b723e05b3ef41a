/** Bends of cables, and boxes that stay where they are. */
import { describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { boxId, cableId, drawing, laundryDrawing } from "../builders/drawing.ts";
import { refused, titleOf } from "./asking.ts";

const BENDS = [
  { x: 320, y: 160 },
  { x: 640, y: 160 },
];

describe("bend-cable", () => {
  const bent = () => laundryDrawing().run("bend-cable", { cable: cableId("C3"), bends: BENDS });

  test("keeps bends in their order until the cable is straightened", () => {
    expect(bent().project.layout.cables).toEqual({ [cableId("C3")]: BENDS });
    expect(bent().run("bend-cable", { cable: cableId("C3"), bends: [] }).project.layout.cables).toEqual({});
    expect(titleOf(laundryDrawing().project, "bend-cable", { cable: cableId("C3"), bends: BENDS })).toBe("Bend C3");
    expect(titleOf(bent().project, "bend-cable", { cable: cableId("C3"), bends: [] })).toBe("Straighten C3");
  });

  test("a cable that is gone, and bends without end, are refused", () => {
    const { project } = laundryDrawing();
    expect(refused(project, "bend-cable", { cable: cableId("C99"), bends: BENDS })).toBe("unknown-item");
    const bends = Array.from({ length: 61 }, (_, i) => ({ x: i, y: i }));
    expect(refused(project, "bend-cable", { cable: cableId("C3"), bends })).toBe("too-many-bends");
    const most = laundryDrawing().run("bend-cable", { cable: cableId("C3"), bends: bends.slice(1) });
    expect(most.project.layout.cables[cableId("C3")]).toHaveLength(60);
  });

  test("bends go along where both boxes move the same way, and stay where one moves", () => {
    const { layout } = bent().project;
    const to = (name: string, dx: number) => {
      const { x, y } = layout.enclosures[boxId(name)] ?? { x: 0, y: 0 };
      return { id: boxId(name), to: { x: x + dx, y: y + 32 } };
    };
    const both = bent().run("move-enclosures", { moves: [to("B1", 16), to("B4", 16)] });
    expect(both.project.layout.cables[cableId("C3")]).toEqual([
      { x: 336, y: 192 },
      { x: 656, y: 192 },
    ]);
    for (const moves of [[to("B1", 16)], [to("B1", 16), to("B4", 32)]])
      expect(bent().run("move-enclosures", { moves }).project.layout.cables[cableId("C3")]).toEqual(BENDS);
  });

  test("they go with the cable", () => {
    const gone = bent().run("remove-items", { items: [{ kind: "cable", id: cableId("C3") }] });
    expect(gone.project.layout.cables).toEqual({});
  });
});

describe("pin-enclosures", () => {
  const pins = (project: ReturnType<typeof laundryDrawing>["project"]) => project.layout.pinned;
  const pinned = () => laundryDrawing().run("pin-enclosures", { enclosures: [boxId("B1"), boxId("B2")], pinned: true });

  test("boxes are pinned and unpinned; without any there is no table", () => {
    expect(pins(pinned().project)).toEqual({ [boxId("B1")]: true, [boxId("B2")]: true });
    const one = pinned().run("pin-enclosures", { enclosures: [boxId("B1")], pinned: false });
    expect(pins(one.project)).toEqual({ [boxId("B2")]: true });
    const none = one.run("pin-enclosures", { enclosures: [boxId("B2")], pinned: false });
    expect("pinned" in none.project.layout).toBe(false);
    const ask = { enclosures: [boxId("B1")], pinned: true };
    expect(titleOf(laundryDrawing().project, "pin-enclosures", ask)).toBe("Pin B1");
    expect(titleOf(pinned().project, "pin-enclosures", { ...ask, pinned: false })).toBe("Unpin B1");
  });

  test("a pin goes with its box, and stays while the other state has the box", () => {
    const removed = (house: ReturnType<typeof laundryDrawing>) =>
      house.run("remove-items", { items: [{ kind: "enclosure", id: boxId("B2") }] });
    expect(pins(removed(pinned()).project)).toEqual({ [boxId("B1")]: true });
    const alone = drawing()
      .box("B1")
      .run("pin-enclosures", { enclosures: [boxId("B1")], pinned: true });
    const empty = alone.run("remove-items", { items: [{ kind: "enclosure", id: boxId("B1") }] });
    expect("pinned" in empty.project.layout).toBe(false);
    expect(refused(alone.project, "pin-enclosures", { enclosures: [boxId("B9")], pinned: true })).toBe("unknown-item");
  });

  test("a file keeps pins and bends; a pin on nothing is said to be wrong", () => {
    const house = pinned().run("bend-cable", { cable: cableId("C3"), bends: BENDS }).project;
    const read = parseProject(textToSave(house));
    expect(read.ok && read.value.project.layout).toEqual(house.layout);
    const wrong = textToSave({ ...house, layout: { ...house.layout, pinned: { [boxId("B99")]: true } } });
    const parsed = parseProject(wrong);
    expect(parsed.ok ? [] : parsed.problems.map(({ path }) => path)).toEqual([`/layout/pinned/${boxId("B99")}`]);
  });
});
