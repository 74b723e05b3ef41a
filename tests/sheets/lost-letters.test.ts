/** What paper cannot show is told with its place, and what can be said in other letters is. */
import { describe, expect, test } from "vitest";
import type { Project } from "../../shared-model/model/project.ts";
import { lostLetters } from "../../shared-model/sheets/job/lost-letters.ts";
import { losesLetters, printable } from "../../shared-model/sheets/page/measure.ts";
import { findSheet } from "../../shared-model/sheets/registry.ts";
import { inputOf, sampleProject } from "./sheet-inputs.ts";

describe("letters that the face lacks", () => {
  // Compatibility forms and marks by the Unicode Character Database (UAX 15).
  test.each([
    ["Ễ ﬁ ① № Ⅳ ㎜", "E fi 1 No IV mm"],
    ["x\u0302 ȟ", "x h"],
    ["20 ℃ ≈ 68 ℉", "20 °C about 68 °F"],
    ["μF µF → Ω", "uF uF to ohm"],
    ["Müller – “Küche” „á ł ő”…", "Müller – “Küche” „á ł ő”…"],
  ])("%s is printed as %s, and nothing is lost", (written, read) => {
    expect(printable(written)).toBe(read);
    expect(losesLetters(written)).toBe(false);
  });

  test.each(["Спальня", "キッチン", "🔥", "⚡️"])("%s is lost, one question mark a sign", (written) => {
    expect(losesLetters(written)).toBe(true);
    expect(printable(written)).toBe("?".repeat([...written.replace("\ufe0f", "")].length));
  });
});

/** The sample with words put at places of it. */
function worded(change: (project: Project) => void): Project {
  const project = structuredClone(sampleProject("laundry-proposed.loadside"));
  change(project);
  return project;
}

const named = (project: Project, name: string) =>
  Object.values(project.proposed?.enclosures ?? {}).find((one) => one.name === name) ?? {};

const pagesOf = (project: Project, kind: string, box?: string) =>
  findSheet(kind)?.make(inputOf(project, { state: "proposed", ...(box !== undefined && { box }) })) ?? [];

describe("texts that lose letters", () => {
  const project = worded((it) => {
    Object.assign(it, { title: "Haus 日本" });
    // The card of B1 says where its cable to B4 goes; B3 is farther away.
    Object.assign(named(it, "B4"), { note: "тёплый пол" });
    Object.assign(named(it, "B3"), { note: "крыльцо" });
    const [device] = Object.values((named(it, "B1") as { devices?: object }).devices ?? {});
    Object.assign(device ?? {}, { name: "R1⚡" });
    for (const id of Object.keys(it.proposed?.directory ?? {}))
      Object.assign(it.proposed?.directory ?? {}, { [id]: "Küche 🔥" });
  });

  test("are told with what they are and the first page that shows them", () => {
    const fileName = "plan 計.loadside";
    const pages = findSheet("make-up")?.make({ ...inputOf(project, { state: "proposed" }), fileName }) ?? [];
    const told = lostLetters(project, pages, fileName);
    expect(told).toEqual([
      { text: "R1⚡", where: "name of a device in B1", page: 1 },
      { text: "тёплый пол", where: "note of box B4", page: 1 },
      { text: "Haus 日本", where: "title of the drawing", page: 1 },
      { text: "plan 計.loadside", where: "name of the file", page: 1 },
    ]);
  });

  test("are not told where the sheet does not show them", () => {
    const wheres = lostLetters(project, pagesOf(project, "make-up", "B1"), undefined).map(({ where }) => where);
    expect(wheres).toEqual(["name of a device in B1", "note of box B4", "title of the drawing"]);
    const far = lostLetters(project, pagesOf(project, "make-up", "B4"), undefined).map(({ where }) => where);
    expect(far).toEqual(["name of a device in B1", "note of box B4", "title of the drawing"]);
    const door = lostLetters(project, pagesOf(project, "directory"), undefined).map(({ where }) => where);
    expect(door).toContain("line of the panel directory");
  });

  test("are none in the samples as they are", () => {
    const sample = sampleProject("laundry-proposed.loadside");
    expect(lostLetters(sample, pagesOf(sample, "make-up"), "a.loadside")).toEqual([]);
  });
});
