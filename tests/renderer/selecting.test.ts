/** What is selected along with a thing, on the laundry drawing: B1 fed from the panel P, five boxes beyond it. */
import { beforeEach, describe, expect, test } from "vitest";
import { documentStore, openDocument, shownInstallation } from "../../renderer/state/document-store.ts";
import { nextToRename } from "../../renderer/state/rename.ts";
import { alikeOf, circuitItems, insideOf, selectMoreLines } from "../../renderer/state/selecting.ts";
import type { Selected } from "../../renderer/state/selection.ts";
import { resetSession, sessionStore } from "../../renderer/state/session-store.ts";
import { boxId, cableId, deviceId, laundryDrawing, spliceId } from "../builders/drawing.ts";

beforeEach(() => {
  openDocument({ project: laundryDrawing().project });
  resetSession();
});

const box = (name: string): Selected => ({ kind: "enclosure", id: boxId(name) });
const nameOf = (item: Selected): string => {
  const { enclosures, cables } = documentStore.get().project.asFound;
  if (item.kind === "enclosure") return enclosures[item.id]?.name ?? "";
  if (item.kind === "cable") return cables[item.id]?.name ?? "";
  for (const { devices, splices, jumpers } of Object.values(enclosures))
    for (const one of [...Object.values(devices), ...Object.values(splices), ...Object.values(jumpers)])
      if (one.id === item.id) return one.name;
  return item.id;
};
const names = (items: readonly Selected[]) => items.map(nameOf).sort();

describe("alike", () => {
  test("devices of one type, boxes of one make, cables of one kind, splices with one connector", () => {
    const here = shownInstallation();
    const types = new Set(
      alikeOf(here, { kind: "device", id: deviceId("R1") }).flatMap((item) =>
        Object.values(here.enclosures).flatMap(({ devices }) =>
          Object.values(devices).flatMap(({ id, type }) => (id === item.id ? [type] : [])),
        ),
      ),
    );
    expect(types.size).toBe(1);
    const all = Object.values(here.enclosures).flatMap(({ devices }) => Object.values(devices));
    const type = [...types][0];
    expect(alikeOf(here, { kind: "device", id: deviceId("R1") })).toHaveLength(
      all.filter((one) => one.type === type).length,
    );
    const made = here.enclosures[boxId("B2")]?.item;
    expect(names(alikeOf(here, box("B2")))).toEqual(
      Object.values(here.enclosures)
        .filter(({ item }) => item === made)
        .map(({ name }) => name)
        .sort(),
    );
    expect(names(alikeOf(here, { kind: "splice", id: spliceId("X") }))).toEqual(
      expect.arrayContaining(["X", "Y", "Z"]),
    );
    expect(names(alikeOf(here, { kind: "cable", id: cableId("C1") }))).toContain("C2");
  });
  test("conductors of one colour in their box", () => {
    const here = shownInstallation();
    const ends = alikeOf(here, { kind: "end", enclosure: boxId("B1"), id: "cable-C1.cu.b" as never });
    expect(ends.length).toBeGreaterThan(4);
    expect(ends.every((item) => item.kind === "end" && item.enclosure === boxId("B1"))).toBe(true);
    expect(ends.some(({ id }) => id.includes(".wh."))).toBe(false);
  });
});

describe("a circuit", () => {
  const ALL = ["B1", "B2", "B3", "B4", "B5", "B6", "B7"];
  const CABLES = ["C1", "C2", "C3", "C4", "C5", "C6", "C7"];
  test("of a box is all that hangs together, without the panel that others hang on too", () => {
    expect(names(circuitItems(shownInstallation(), box("B4")))).toEqual([...ALL, ...CABLES]);
  });
  test("is the same from a device and from a cable", () => {
    const here = shownInstallation();
    const whole = names(circuitItems(here, box("B1")));
    expect(names(circuitItems(here, { kind: "device", id: deviceId("R1") }))).toEqual(whole);
    expect(names(circuitItems(here, { kind: "cable", id: cableId("C1") }))).toEqual(whole);
  });
  test("of a panel is the panel with what it feeds", () => {
    expect(names(circuitItems(shownInstallation(), box("P")))).toEqual([...ALL, ...CABLES, "P"].sort());
  });
});

test("all that is in a box: devices, splices and jumpers", () => {
  expect(names(insideOf(shownInstallation(), { kind: "splice", id: spliceId("X") }))).toEqual(
    ["R1", "X", "Y", "Z", "p", "q", "r", "t"].sort(),
  );
});

test("a line is offered only where it selects more, and says what of", () => {
  const lines = selectMoreLines({ kind: "device", id: deviceId("R1") });
  expect(lines.map(({ title }) => title)).toContain("Select the circuit of R1");
  expect(lines.map(({ title }) => title)).toContain("Select all that is in B1");
  lines.find(({ title }) => title === "Select all that is in B1")?.run();
  expect(sessionStore.get().selection).toHaveLength(8);
});

test("Tab goes to the next of its kind, round at the end, and back", () => {
  const here = shownInstallation();
  const after = (item: Selected, step: 1 | -1) => {
    const next = nextToRename(here, item, step);
    return next && nameOf(next);
  };
  expect(after(box("B1"), 1)).toBe("B2");
  expect(after(box("B7"), 1)).toBe("P");
  expect(after(box("P"), -1)).toBe("B7");
  expect(after({ kind: "splice", id: spliceId("X") }, 1)).toBe("Y");
  expect(nextToRename(here, { kind: "device", id: deviceId("R1") }, 1)).toBeUndefined();
});
