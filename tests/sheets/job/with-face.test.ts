/** A picture of a page carries the cuts of the face that its text is set in, and no other. */
import { expect, test } from "vitest";
import type { Weight } from "../../../shared-model/sheets/display-list.ts";
import { withFace } from "../../../shared-model/sheets/job/with-face.ts";
import { text } from "../../../shared-model/sheets/marks.ts";
import { svgOf } from "../../../shared-model/sheets/svg-writer.ts";
import { pageOf } from "./drawn-sheets.ts";

const FACE = ([400, 600, 700] as const).flatMap((weight) =>
  (["latin", "extended"] as const).map((subset) => ({ subset, weight, dataAddress: `data:${subset}-${weight}` })),
);

const faced = (words: string, ...weights: readonly Weight[]): string => {
  const page = pageOf("drawing", "t");
  const marks = weights.map((weight) => text(words, 20, 20, { size: 4, weight }));
  return withFace(svgOf({ ...page, marks }), FACE);
};
const inside = (svg: string): readonly string[] =>
  [...svg.matchAll(/url\(data:([^)]+)\)/g)].map(([, name = ""]) => name);

test("only the cuts that come up are in it", () => {
  expect(inside(faced("Box", 400))).toEqual(["latin-400"]);
  expect(inside(faced("Box", 600, 700))).toEqual(["latin-600", "latin-700"]);
  expect(inside(faced("Box"))).toEqual([]);
});

test("letters beyond the plain ones bring their file, which is asked after the plain one", () => {
  expect(inside(faced("Łódź", 400))).toEqual(["extended-400", "latin-400"]);
});

test("it stays one picture with everything in its place", () => {
  const svg = faced("Box", 400);
  expect(svg.match(/<style>/g)).toHaveLength(1);
  expect(svg.indexOf("<style>")).toBeLessThan(svg.indexOf("<text"));
  expect(svg).not.toMatch(/https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
});
