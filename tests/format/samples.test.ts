import { writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { drawnSamples } from "../builders/samples/index.ts";
import { openSample, sampleText, sampleUrl } from "../builders/samples/open-sample.ts";

describe.each(samples)("$name", ({ name, title, about, file }) => {
  test("opens, is written as the program writes, and is called in the list what it calls itself", () => {
    const project = openSample(name);
    expect(textToSave(project)).toBe(sampleText(name));
    expect([file, project.title]).toEqual([`${name}.loadside`, title]);
    expect(about).toMatch(/^[A-Z][^.]*\.$/);
  });

  test("is sound in every state, and its notes tell its story", () => {
    const project = openSample(name);
    expect(invariantProblems(project)).toEqual([]);
    expect(project.notes.length).toBeGreaterThan(100);
  });

  test("everything drawn has a place on the sheet of its own", () => {
    const { layout, asFound, proposed } = openSample(name);
    const drawn = new Set([...Object.keys(asFound.enclosures), ...Object.keys(proposed?.enclosures ?? {})]);
    expect(Object.keys(layout.enclosures).sort()).toEqual([...drawn].sort());
    const places = Object.values(layout.enclosures);
    for (const [index, a] of places.entries())
      for (const b of places.slice(index + 1))
        expect(Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y))).toBeGreaterThanOrEqual(1000);
  });

  test("as found, how each box, device and landing is known is marked", () => {
    for (const { name: at, evidence, devices, places } of Object.values(openSample(name).asFound.enclosures)) {
      expect(evidence, at).toBeDefined();
      for (const { evidence: marks, slot, type } of Object.values(devices))
        if (!type.endsWith("-bar"))
          expect([at, marks?.type ?? (slot && marks?.breakerRatingA)]).toEqual([at, expect.any(String)]);
      for (const [end, place] of Object.entries(places))
        expect([end, place.evidence?.at]).toEqual([end, expect.stringMatching(/^(seen|told|assumed)$/)]);
    }
  });
});

test.each(Object.entries(drawnSamples))("%s is drawn by commands (LOADSIDE_WRITE=1 draws it anew)", (name, draw) => {
  const text = textToSave(draw());
  if (process.env.LOADSIDE_WRITE === "1") writeFileSync(sampleUrl(name), text);
  expect(sampleText(name)).toBe(text);
});
