/** The common boxes that the program offers to begin with. */
import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { DATED_EDITIONS, type Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, cableId } from "../builders/ids.ts";
import { findingsOf, isSerious } from "../builders/samples/look-into.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";
import { drawnTemplates } from "../builders/templates/index.ts";

const WRITES = process.env.LOADSIDE_WRITE === "1";
const urlOf = (file: string) => new URL(`../../assets/templates/${file}`, import.meta.url);
const textOf = (name: string): string => readFileSync(urlOf(`${name}.loadside`), "utf8");

function open(name: string): Project {
  const parsed = parseProject(textOf(name));
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  return parsed.value.project;
}

const serious = (project: Project) =>
  findingsOf(project, "as-found")
    .filter(isSerious)
    .map(({ message }) => message);

test("the list is what is drawn: eight common boxes or more (LOADSIDE_WRITE=1 writes it anew)", () => {
  const list = Object.entries(drawnTemplates).map(([name, { title, about }]) => ({ name, title, about }));
  const text = `${JSON.stringify(list, undefined, 1)}\n`;
  if (WRITES) writeFileSync(urlOf("index.json"), text);
  expect(JSON.parse(readFileSync(urlOf("index.json"), "utf8"))).toEqual(list);
  expect(list.length).toBeGreaterThanOrEqual(8);
  expect(new Set(list.map(({ title }) => title)).size).toBe(list.length);
  for (const { about } of list) expect(about).toMatch(/^[A-Z].*[.]$/);
});

describe.each(Object.entries(drawnTemplates))("%s", (name, { title, draw }) => {
  test("is drawn by commands, and opens as it was drawn (LOADSIDE_WRITE=1 draws it anew)", () => {
    const text = textToSave(draw(title));
    if (WRITES) writeFileSync(urlOf(`${name}.loadside`), text);
    expect(textOf(name)).toBe(text);
    expect(invariantProblems(open(name))).toEqual([]);
    expect(open(name)).toMatchObject({ title, notes: expect.stringMatching(/^.{40,}[.]$/) });
  });

  test.each(DATED_EDITIONS)("has no danger, violation or caution by the edition of %d", (edition) => {
    const { findings } = openSession(open(name), { edition }).report("as-found");
    expect(findings.filter(({ severity }) => severity !== "advice").map(({ message }) => message)).toEqual([]);
  });

  test("is made up: every end is landed, or capped and marked as spare", () => {
    for (const { places, name: box } of Object.values(open(name).asFound.enclosures))
      for (const [end, { at, spare }] of Object.entries(places))
        expect([box, end, at.kind !== "loose" && (at.kind !== "capped" || spare === true)]).toEqual([box, end, true]);
  });

  test("knows which cable brings the supply, and that nothing of it was seen", () => {
    const { asFound } = open(name);
    expect(Object.values(asFound.intent.boxes).flatMap(({ supply }) => supply ?? [])).toEqual([cableId("C1")]);
    const marks = Object.values(asFound.enclosures).flatMap(({ evidence = {} }) => Object.values(evidence));
    expect(marks.filter((mark) => mark === "seen" || mark === "measured")).toEqual([]);
  });

  test("is right with its supply drawn as well: C1 from a panel", () => {
    expect(serious(supplied(open(name)))).toEqual([]);
  });
});

test("a template with hot and neutral changed about is not called right", () => {
  const wrong = new SampleDrawing(supplied(open("receptacle-end")), "as-found")
    .land("C1.bk@B1", "capped")
    .land("C1.wh@B1", "R1.H1")
    .land("C1.bk@B1", "R1.N1").project;
  expect(serious(wrong)).not.toEqual([]);
});

/**
 * The template with its C1 brought to a new service panel and landed there, the multiwire one on two poles. The red of the
 * half-switched receptacle stays capped: its switch is elsewhere.
 */
function supplied(project: Project): Project {
  const drawing = new SampleDrawing(project, "as-found")
    .panel("P", "panel-16", { at: { x: -2000, y: 0 }, set: { mainBond: "here" } })
    .run("move-cable-side", {
      cable: cableId("C1"),
      side: "b",
      to: { enclosure: boxId("P"), newEntry: "e-p" as never, means: "external-connector" },
    });
  const cable = drawing.cableNamed("C1");
  const isMultiwire = project.title.startsWith("Multiwire");
  const ratingA = cable.item.startsWith("nm-14") ? 15 : 20;
  drawing.breaker("Q1", "P", { ratingA, type: isMultiwire ? "breaker-2" : "breaker-1" });
  if (isMultiwire) {
    drawing
      .land("C1.bk@P", "Q1.OUT1")
      .land("C1.rd@P", "Q1.OUT2")
      .land("C1.wh@P", "P neutral.BAR")
      .land("C1.cu@P", "P ground.BAR");
    return drawing.project;
  }
  drawing.home("C1", "Q1");
  return drawing.project;
}
