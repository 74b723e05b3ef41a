import { expect, test } from "vitest";
import { textOfBoxes } from "../../renderer/state/text-of-boxes.ts";
import { boxId, laundryDrawing } from "../builders/drawing.ts";

test("a box in plain words: its make, its devices, where its cables go, what is joined", () => {
  const text = textOfBoxes(laundryDrawing().project.asFound, new Set([boxId("B1")]));
  const lines = text.split("\n");
  expect(lines[0]).toBe("B1 laundry: 4 in. square × 2-1/8");
  expect(lines.filter((line) => /^ {2}R\d: /.test(line))).toHaveLength(1);
  expect(lines.filter((line) => /^ {2}C\d: 12\/2 to (P|B\d)/.test(line))).toHaveLength(5);
  expect(text).toContain("  Splice X: C1 BK, C2 BK, C3 BK, C4 BK, C5 BK, p BK; twist-on, large");
});

test("boxes stand apart, in the order of the drawing, and no other is told", () => {
  const text = textOfBoxes(laundryDrawing().project.asFound, new Set([boxId("B3"), boxId("B2")]));
  expect(text.split("\n\n").map((part) => part.split(" ")[0])).toEqual(["B2", "B3"]);
});
