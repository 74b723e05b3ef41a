/** Copying, cutting, pasting and duplicating, with the clipboard as a text in the hand of the test. */
import { beforeEach, describe, expect, test } from "vitest";
import { FILE_LIMIT_BYTES } from "../../renderer/platform/file-host.ts";
import { createClipboardActions } from "../../renderer/state/clipboard-actions.ts";
import {
  documentStore,
  newDocument,
  nextUndo,
  openDocument,
  setShownState,
  undo,
} from "../../renderer/state/document-store.ts";
import type { Selected } from "../../renderer/state/selection.ts";
import { closeNotice, resetSession, select, sessionStore } from "../../renderer/state/session-store.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, cableId, deviceId, drawing, jumperId, laundryDrawing, loadId, spliceId } from "../builders/drawing.ts";

let asked = 0;
const clip = createClipboardActions({
  parse(text) {
    asked += 1;
    const parsed = parseProject(text);
    return Promise.resolve(parsed.ok ? { ok: true, ...parsed.value } : { ok: false, problems: parsed.problems });
  },
});

const box = (name: string): Selected => ({ kind: "enclosure", id: boxId(name) });
const device = (name: string): Selected => ({ kind: "device", id: deviceId(name) });
const project = (): Project => documentStore.get().project;
const text = () => canonicalText(project());
const notice = () => sessionStore.get().notice;
const boxes = (): readonly Enclosure[] => Object.values(project().asFound.enclosures).sort((a, b) => a.order - b.order);
const names = () => boxes().map(({ name }) => name);
const namesIn = (name: string) =>
  Object.values(boxes().find((one) => one.name === name)?.devices ?? {})
    .sort((a, b) => a.order - b.order)
    .map((one) => one.name);

function copy(...items: readonly Selected[]): string {
  select(...items);
  const copied = clip.copySelection();
  if (copied === undefined) throw new Error("Nothing was copied.");
  return copied;
}

beforeEach(() => {
  openDocument({ project: laundryDrawing().project });
  resetSession();
  closeNotice();
  asked = 0;
});

describe("copy and paste", () => {
  test("boxes come with what is in them, named on from what is there, beside it, selected, in one step", async () => {
    const before = text();
    const copied = copy(box("B1"), box("B2"));
    expect(text()).toBe(before);
    await clip.paste(copied);
    expect(names()).toEqual(["P", "B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8", "B9"]);
    expect(namesIn("B8")).toEqual(["R6"]);
    expect(namesIn("B9")).toEqual(["R7"]);
    expect(Object.values(project().asFound.cables).map(({ name }) => name)).toContain("C8");
    expect(Object.keys(project().rooms)).toHaveLength(5);
    expect(sessionStore.get().selection.map(({ kind }) => kind)).toEqual(["enclosure", "enclosure"]);
    expect(nextUndo(documentStore.get())).toBe("Paste B8 and B9");
    expect(invariantProblems(project())).toEqual([]);
    undo();
    expect(text()).toBe(before);
  });

  test("several pastes of the same never collide, on the sheet neither", async () => {
    const copied = copy(box("B4"));
    for (let time = 0; time < 3; time += 1) await clip.paste(copied);
    expect(names().slice(8)).toEqual(["B8", "B9", "B10"]);
    const places = Object.values(project().layout.enclosures).map(({ x, y }) => `${x} ${y}`);
    expect(new Set(places).size).toBe(places.length);
  });

  test("into another window: names that are free there stay, rooms come along", async () => {
    const copied = copy(box("B4"), box("B7"));
    openDocument(newDocument());
    resetSession();
    await clip.paste(copied);
    expect(names()).toEqual(["B4", "B7"]);
    expect(Object.values(project().rooms).map(({ name }) => name)).toEqual(["Basement", "Stair"]);
    expect(Object.values(project().asFound.loads).map(({ name }) => name)).toEqual(["Freezer"]);
    // Their cables led to boxes that stayed behind.
    expect(project().asFound.cables).toEqual({});
    expect(project().layout.enclosures[boxes()[0]?.id as never]).toEqual({ x: 0, y: 0 });
  });

  test("into the other state", async () => {
    openDocument({ project: laundryDrawing().propose().project });
    setShownState("as-found");
    const copied = copy(box("B4"));
    setShownState("proposed");
    const { asFound } = project();
    await clip.paste(copied);
    expect(project().asFound).toBe(asFound);
    expect(Object.keys(project().proposed?.enclosures ?? {})).toHaveLength(9);
  });

  test("what was inside a box goes into the box that is selected, or brings a box of its own", async () => {
    const copied = copy(device("R1"), { kind: "splice", id: spliceId("X") }, { kind: "splice", id: spliceId("Y") });
    select(device("R4"));
    await clip.paste(copied);
    expect(namesIn("B4")).toEqual(["R4", "R6"]);
    const b4 = boxes().find(({ name }) => name === "B4");
    expect(
      Object.values(b4?.splices ?? {})
        .map(({ name }) => name)
        .sort(),
    ).toEqual(["E_B4", "X", "Y"]);
    expect(nextUndo(documentStore.get())).toBe("Paste R6 into B4");
    expect(sessionStore.get().selection).toHaveLength(1);
    select();
    await clip.paste(copied);
    expect(names().slice(8)).toEqual(["B8"]);
    expect(namesIn("B8")).toEqual(["R7"]);
  });

  test("a breaker into a box is refused in words", async () => {
    const copied = copy(device("Q14"));
    const before = text();
    select(box("B4"));
    await clip.paste(copied);
    expect(text()).toBe(before);
    expect(notice()).toMatchObject({ kind: "problem", title: "Nothing was pasted" });
    expect(notice()?.lines[0]).toContain("belongs in a panel");
  });

  test("the text is a drawing that opens like any file", () => {
    const opened = parseProject(copy(box("B1")));
    expect(opened.ok && opened.value.project.title).toBe("Parts of Laundry circuit");
  });
});

describe("cut", () => {
  test("takes away what was copied, and nothing that was not", async () => {
    select(box("B4"), { kind: "load", id: loadId("Freezer") }, { kind: "room", id: "room-Hall" as never });
    const cut = clip.cutSelection();
    expect(names()).toEqual(["P", "B1", "B2", "B3", "B5", "B6", "B7"]);
    expect(Object.keys(project().rooms)).toHaveLength(5);
    await clip.paste(cut);
    expect(names()).toContain("B4");
    expect(Object.values(project().asFound.loads).map(({ name }) => name)).toEqual(["Freezer"]);
  });

  test("in a drawing that can only be read, nothing is cut", () => {
    openDocument({ project: laundryDrawing().project, readOnly: true });
    select(box("B4"));
    expect(clip.cutSelection()).toBeUndefined();
    expect(notice()).toMatchObject({ kind: "problem", title: "Nothing was cut" });
  });
});

describe("duplicate", () => {
  test("a box beside itself, in one step", () => {
    const before = text();
    select(box("B4"));
    clip.duplicateSelection();
    expect(names().slice(8)).toEqual(["B8"]);
    expect(nextUndo(documentStore.get())).toBe("Duplicate B8");
    undo();
    expect(text()).toBe(before);
  });

  test("a device with a jumper in the same box", () => {
    select(device("R1"), { kind: "jumper", id: jumperId("p") });
    clip.duplicateSelection();
    expect(namesIn("B1")).toEqual(["R1", "R6"]);
    const b1 = boxes().find(({ name }) => name === "B1");
    expect(Object.values(b1?.jumpers ?? {}).map(({ name }) => name)).toEqual(["p", "q", "r", "t", "a"]);
  });

  test("a second panel is P2, and its bars keep their words", () => {
    openDocument({ project: drawing().panel("P").project });
    select(box("P"));
    clip.duplicateSelection();
    expect(names()).toEqual(["P", "P2"]);
    expect(namesIn("P2")).toEqual(["Neutral bar", "Ground bar"]);
  });
});

describe("what cannot be copied or pasted", () => {
  test("nothing selected says nothing; a cable or a load alone says what to select", () => {
    select();
    expect(clip.copySelection()).toBeUndefined();
    expect(notice()).toBeUndefined();
    select({ kind: "load", id: loadId("Freezer") });
    expect(clip.copySelection()).toBeUndefined();
    expect(notice()).toMatchObject({
      title: "Nothing was copied",
      lines: [expect.stringContaining("select that device")],
    });
    select({ kind: "cable", id: cableId("C1") });
    expect(clip.copySelection()).toBeUndefined();
    expect(notice()?.lines).toEqual([expect.stringContaining("select both boxes")]);
  });

  const good = () => copy(box("B1"));
  const hostile: readonly (readonly [what: string, text: () => string | undefined, reads: boolean])[] = [
    ["a clipboard that cannot be read", () => undefined, false],
    ["no text", () => " \n", false],
    ["words", () => "Buy a 12/2 cable, {soon}", false],
    ["something too large", () => "{".padEnd(FILE_LIMIT_BYTES + 1, " "), false],
    ["markup", () => "<img src=x onerror=alert(1)>", false],
    ["half a drawing", () => good().slice(0, -200), true],
    ["data of another program", () => '{"nodes": [], "edges": []}', true],
    ["a deep hole", () => '{"a":'.repeat(5_000), true],
    ["a reserved key", () => good().replace('"asFound": {', '"asFound": {"__proto__": {"polluted": true},'), true],
    ["an id that is none", () => good().replaceAll("device-R1", "../R1"), true],
    ["an end on a device that is not there", () => good().replaceAll('"device": "device-R1"', '"device": "x"'), true],
    ["a drawing without boxes", () => textToSave(drawing().project), true],
    ["a newer version", () => good().replace('"version": 1', '"version": 7'), true],
    [
      "a version that cannot be read",
      () => good().replace('"minReader": 1', '"minReader": 7').replace('"version": 1', '"version": 7'),
      true,
    ],
  ];
  test.each(hostile)("%s: a word, and nothing else", async (_what, hostileText, reads) => {
    const given = hostileText();
    const before = text();
    const { revision } = documentStore.get();
    closeNotice();
    await clip.paste(given);
    expect(text()).toBe(before);
    expect(documentStore.get().revision).toBe(revision);
    expect(notice()).toMatchObject({ kind: "note", title: "Nothing was pasted" });
    expect(notice()?.lines[0]).toMatch(/^[A-Z].*[.]$/);
    expect(asked > 0).toBe(reads);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test("a whole drawing is pasted as its boxes", async () => {
    await clip.paste(textToSave(laundryDrawing().propose().project));
    expect(names()).toHaveLength(16);
  });
});
