import { Resvg } from "@resvg/resvg-js";
import { describe, expect, test } from "vitest";
import type { Project } from "../../shared-model/model/project.ts";
import type { Page } from "../../shared-model/sheets/display-list.ts";
import { group, path, rect, text } from "../../shared-model/sheets/marks.ts";
import { measure } from "../../shared-model/sheets/page/measure.ts";
import { SHEETS } from "../../shared-model/sheets/registry.ts";
import { svgOf } from "../../shared-model/sheets/svg-writer.ts";
import { inputOf, sampleProject } from "./sheet-inputs.ts";

const ELEMENTS = new Set(["svg", "title", "defs", "clipPath", "g", "path", "rect", "text"]);
const ATTRIBUTES = new Set(
  `xmlns width height viewBox font-family fill x y rx d fill-rule clip-rule stroke stroke-width stroke-dasharray
   stroke-linecap stroke-linejoin clip-path id transform font-size font-weight textLength lengthAdjust xml:space`.split(
    /\s+/,
  ),
);

/** Elements and attributes that are not expected, values that lead out of the file. */
function strangers(svg: string): readonly string[] {
  const found: string[] = [];
  for (const [, name = "", rest = ""] of svg.matchAll(/<\/?([^\s/>?!]+)((?:\s+[^\s=]+="[^"]*")*)\s*\/?>/g)) {
    if (!ELEMENTS.has(name)) found.push(`<${name}>`);
    for (const [, attribute = "", value = ""] of rest.matchAll(/([^\s=]+)="([^"]*)"/g)) {
      if (!ATTRIBUTES.has(attribute)) found.push(attribute);
      if (/url\(/.test(value) && !/^url\(#c\d+\)$/.test(value)) found.push(value);
      if (/script:|data:|https?:/i.test(value) && attribute !== "xmlns") found.push(value);
    }
  }
  // Outside of what was matched there is text, in which a mark would begin an element.
  const left = svg.replace(/<\?xml[^>]*\?>/, "").replace(/<\/?[^\s/>?!]+(?:\s+[^\s=]+="[^"]*")*\s*\/?>/g, "");
  if (/[<>]/.test(left)) found.push(`loose mark in ${left.slice(left.search(/[<>]/), 80)}`);
  return found;
}

const HOSTILE = [
  "<script>alert(1)</script>",
  `"><image href="https://example.org/x"/>`,
  "a & b ]]> <!-- -->",
  "\u0000\u0007\u001b[31mred",
  "\u202egnirts\u202c \u200f\u05d0\u05d1\u05d2",
  "\ud800 lone \udfff",
  "url(javascript:alert(1))",
  "x".repeat(400),
];

function named(project: Project, name: string): Project {
  const renamed = (installation: Project["asFound"]): Project["asFound"] => ({
    ...installation,
    enclosures: Object.fromEntries(
      Object.entries(installation.enclosures).map(([id, box]) => [
        id,
        {
          ...box,
          name: `${name}${box.name}`,
          note: name,
          devices: Object.fromEntries(
            Object.entries(box.devices).map(([key, device]) => [key, { ...device, name: `${name}${device.name}` }]),
          ),
        },
      ]),
    ),
    cables: Object.fromEntries(
      Object.entries(installation.cables).map(([id, cable]) => [id, { ...cable, name: `${name}${cable.name}` }]),
    ),
  });
  return {
    ...project,
    title: name,
    asFound: renamed(project.asFound),
    ...(project.proposed && { proposed: renamed(project.proposed) }),
  };
}

describe.each(HOSTILE)("with things named %j", (name) => {
  test("every sheet becomes a file of the few elements that are allowed, and one that can be drawn", () => {
    const input = inputOf(named(sampleProject("laundry-proposed.loadside"), name), { state: "proposed" });
    for (const { kind, make } of SHEETS) {
      const [page] = make(input);
      if (page === undefined) throw new Error(`No page of ${kind}.`);
      const svg = svgOf(page);
      expect(strangers(svg), kind).toEqual([]);
      expect(() => new Resvg(svg, { font: { loadSystemFonts: false } }), kind).not.toThrow();
    }
  });
});

const pageOf = (...marks: Page["marks"]): Page => ({
  sheet: "drawing",
  title: "",
  width: 210,
  height: 297,
  margin: 10,
  marks,
});

test("it is as large as its paper, in millimetres", () => {
  expect(svgOf(pageOf())).toContain(`width="210mm" height="297mm" viewBox="0 0 210 297"`);
});

test("what is no path and no colour does not come into the file", () => {
  expect(() => svgOf(pageOf(path(`M0 0"/><script>`, { fill: "#000000" })))).toThrow("Not a path");
  expect(() => svgOf(pageOf(rect({ x: 0, y: 0, width: 1, height: 1 }, { fill: "#zzzzzz" })))).toThrow("Not a colour");
});

test("a text is set to the width that was measured, in a group and by itself", () => {
  const mark = text("B1 make-up", 20, 30, { size: 4, weight: 700 });
  const long = Math.round(measure("B1 make-up", 4, 700) * 1000) / 1000;
  expect(svgOf(pageOf(mark))).toContain(`x="20" textLength="${long}"`);
  expect(svgOf(pageOf(group([mark], { shift: { x: 5, y: 6 }, scale: 2 })))).toContain(
    `transform="translate(5 6) scale(2)"`,
  );
});

test("figures of one width stand under each other, whichever they are", () => {
  const ends = (words: string): readonly number[] =>
    / x="([^"]*)"/
      .exec(
        svgOf(pageOf(text(words, 100, 10, { size: 4, anchor: "end", tabular: true })))
          .split("<text")
          .pop() ?? "",
      )?.[1]
      ?.split(" ")
      .map(Number) ?? [];
  const [ones, eights] = [ends("11.1"), ends("88.8")];
  // The point is as wide in both, so that it stands at the same place.
  expect(ones[2]).toBeCloseTo(eights[2] ?? 0, 6);
});
