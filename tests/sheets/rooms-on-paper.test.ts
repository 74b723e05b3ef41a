/** Rooms on the whole drawing, and words of cables that run along the edge of a page. */
import { expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Mark } from "../../shared-model/sheets/display-list.ts";
import { drawingSheet } from "../../shared-model/sheets/drawing/drawing-sheet.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { inputOf, sampleProject } from "./sheet-inputs.ts";

const laundry = sampleProject("laundry-proposed.loadside");
const house = sampleProject("house-twelve-circuits.loadside");

test("every room of the laundry job is outlined and named, over its boxes", () => {
  const [page] = drawingSheet(inputOf(laundry, { state: "proposed" }));
  const texts = textsOf(page?.marks ?? []);
  const at = (words: string) => texts.find(({ text }) => text === words)?.box;
  for (const [room, box] of [
    ["LAUNDRY", "B1"],
    ["PORCH", "B3"],
    ["STAIR", "B7"],
    ["HALL, FIRST FLOOR", "B6"],
  ] as const) {
    expect(at(room), room).toBeDefined();
    expect(at(room)?.y, room).toBeLessThan(at(box)?.y ?? 0);
  }
});

test("without rooms nothing is outlined", () => {
  const bare = { ...laundry, rooms: {} };
  const [page] = drawingSheet(inputOf(bare, { state: "proposed" }));
  expect(textsOf(page?.marks ?? []).map(({ text }) => text)).not.toContain("LAUNDRY");
});

/** Texts in groups that are cut, with what is left of the group, in the coordinates of the group. */
function cutTexts(marks: readonly Mark[], clip?: Rect): readonly string[] {
  return marks.flatMap((mark): readonly string[] => {
    if (mark.kind === "group") return cutTexts(mark.marks, mark.clip ?? (mark.shift === undefined ? clip : undefined));
    if (mark.kind !== "text" || clip === undefined) return [];
    const { x, y, width, height } = mark.box;
    const isWhole =
      x >= clip.x && y >= clip.y && x + width <= clip.x + clip.width && y + height <= clip.y + clip.height;
    const isGone = x >= clip.x + clip.width || y >= clip.y + clip.height || x + width <= clip.x || y + height <= clip.y;
    return isWhole || isGone ? [] : [mark.text];
  });
}

test("no words are cut off at the edge of a part", () => {
  for (const paper of ["letter", "a4", "tabloid", "a3"] as const)
    expect(
      drawingSheet(inputOf(house, { paper })).flatMap(({ marks }) => cutTexts(marks)),
      paper,
    ).toEqual([]);
});
