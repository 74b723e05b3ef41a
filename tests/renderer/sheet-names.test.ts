import { beforeEach, describe, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { boxItems } from "../../renderer/sheet/box-items.ts";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { boxName } from "../../renderer/sheet/item-names.ts";
import { itemNews } from "../../renderer/sheet/item-news.ts";
import { boxWords } from "../../renderer/sheet/to-flow.ts";
import { answerWords, circuitWords } from "../../renderer/state/answer-words.ts";
import { documentStore, openDocument, shownInstallation } from "../../renderer/state/document-store.ts";
import type { CannotTell, Finding, Severity, SubjectKind } from "../../shared-model/answers/finding.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId, deviceId, laundryAsFound, spliceId } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const finding = (kind: SubjectKind, id: string, severity: Severity): Finding =>
  ({
    key: `${kind} ${id} ${severity}`,
    severity,
    subjects: [{ kind, id, name: id }],
    message: "",
  }) as unknown as Finding;
const open = (kind: SubjectKind, id: string): CannotTell =>
  ({ key: `${kind} ${id}`, subjects: [{ kind, id, name: id }], message: "" }) as unknown as CannotTell;

function namesIn(project: Project, id: EnclosureId, news?: ReadonlyMap<string, string>) {
  openDocument({ project });
  return namesHere(id, news);
}

function namesHere(id: EnclosureId, news?: ReadonlyMap<string, string>) {
  const installation = shownInstallation();
  const enclosure = installation.enclosures[id];
  const drawing = drawingOf(documentStore.get(), id);
  if (enclosure === undefined || drawing === undefined) throw new Error(`There is no box ${id}.`);
  return { drawing, items: boxItems(installation, enclosure, drawing, undefined, news) };
}

describe("what the checks say", () => {
  test("is counted by severity, worst first, and what could not be told comes last", () => {
    const all = [
      finding("device", "d", "advice"),
      finding("device", "d", "danger"),
      open("device", "d"),
      finding("device", "d", "danger"),
    ];
    expect(answerWords(all)).toBe("2 dangers, 1 advice, 1 cannot tell");
    expect(answerWords([])).toBe("");
    expect(answerWords([finding("device", "d", "violation")])).toBe("1 violation");
  });

  test("counts at what it is about: a terminal and an outlet at their device, an entry at its cable", () => {
    const { drawing } = namesIn(laundryAsFound(), boxId("B1"));
    const [sheath] = drawing.sheaths;
    const news = itemNews(drawing, [
      finding("terminal", `${deviceId("R1")}.H1`, "danger"),
      finding("outlet", `${deviceId("R1")}`, "caution"),
      finding("splice", spliceId("X"), "violation"),
      finding("entry", sheath?.entry ?? "", "advice"),
    ]);
    expect(Object.fromEntries(news)).toEqual({
      [`device ${deviceId("R1")}`]: "1 danger, 1 caution",
      [`splice ${spliceId("X")}`]: "1 violation",
      [`cable ${sheath?.cable}`]: "1 advice",
    });
  });
});

test("circuits are listed as a person says them", () => {
  expect([[], ["Q14"], ["Q2", "Q4"], ["A", "B", "C"]].map(circuitWords)).toEqual([
    "",
    "circuit Q14",
    "circuits Q2 and Q4",
    "circuits A, B and C",
  ]);
});

describe("names of things", () => {
  const { asFound } = laundryAsFound();

  test("a device says what it is, its box, its circuit and what was found", () => {
    const news = new Map([[`device ${deviceId("R1")}`, "1 danger"]]);
    const { items } = namesIn(laundryAsFound(), boxId("B1"), news);
    const names = items.map(({ name }) => name);
    expect(names).toContain("Duplex receptacle R1, box B1, circuit Q14, 1 danger");
    expect(names).toContain("12/2 C3 black end at B1, in splice X");
    expect(names.find((name) => name.startsWith("Cable C3"))).toBe("Cable C3, 12/2, 30 ft, from B1 to B4");
    const splice = names.find((name) => name.startsWith("Splice X"));
    for (const member of ["C1 BK", "C2 BK", "C3 BK", "C4 BK", "C5 BK", "p BK"]) expect(splice).toContain(member);
  });

  test("a box says its name, what is in it and what was found", () => {
    const b1 = asFound.enclosures[boxId("B1")];
    if (b1 === undefined) throw new Error("There is a box B1.");
    expect(boxName(b1, boxWords(b1), "1 danger")).toBe("Box B1, laundry, 1 device, 1 danger");
    expect(boxName({ ...b1, devices: {} }, boxWords(b1, "new"), "")).toBe("Box B1, laundry, new, no devices");
  });
});

/** What a name says must be words, not an id or a hole where a word should be. */
const SOUND = /^[A-Z0-9].{4,}$/;
const HOLE = /undefined|null|NaN|\[object|, ,|,$| $| {2}/;

describe.each(samples)("in $name", ({ name }) => {
  beforeEach(() => openDocument({ project: openSample(name) }));

  test("every thing of every box has a name of its own, and none is empty", () => {
    const installation = shownInstallation();
    let seen = 0;
    for (const id of Object.keys(installation.enclosures) as EnclosureId[]) {
      const { items, drawing } = namesHere(id);
      const wanted =
        drawing.sheaths.length +
        drawing.devices.length +
        drawing.splices.length +
        Object.keys(installation.enclosures[id]?.places ?? {}).length;
      expect(items.length, id).toBe(wanted);
      for (const { name: words, key } of items) {
        expect(words, key).toMatch(SOUND);
        expect(words, key).not.toMatch(HOLE);
        expect(words, key).not.toContain(key.split(" ")[1]);
      }
      const names = items.map(({ name: words }) => words);
      expect(new Set(names).size, id).toBe(names.length);
      seen += items.length;
    }
    expect(seen).toBeGreaterThan(10);
  });
});
