import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { grownConnectors, tellGrownConnectors } from "../../renderer/state/connector-grown.ts";
import { dispatch, documentStore, openDocument, redo, undo } from "../../renderer/state/document-store.ts";
import type { Selected } from "../../renderer/state/selection.ts";
import { closeNotice, notify, resetSession, select, sessionStore } from "../../renderer/state/session-store.ts";
import { restoreSelection } from "../../renderer/state/undo-selection.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import { boxId, drawing, spliceId } from "../builders/drawing.ts";

const B1: Selected = { kind: "enclosure", id: boxId("B1") };
const B2: Selected = { kind: "enclosure", id: boxId("B2") };
const state = "as-found" as const;
const remove = (...items: readonly { readonly kind: "enclosure"; readonly id: typeof B1.id }[]) =>
  dispatch({ command: "remove-items", args: { state, items: items as never } });
const move = (id: typeof B1.id, x: number) =>
  dispatch({ command: "move-enclosures", args: { moves: [{ id: id as never, to: { x, y: 0 } }] } });
const selection = () => sessionStore.get().selection;

let stop = () => {};
let seen: (readonly Selected[])[] = [];

beforeEach(() => {
  const house = drawing().box("B1").box("B2");
  for (const cable of ["C1", "C2", "C3", "C4"]) house.outside(cable, "B1");
  openDocument({ project: house.project });
  resetSession();
  closeNotice();
  seen = [];
  stop = restoreSelection((items) => seen.push(items));
});
afterEach(() => stop());

describe("undo and redo", () => {
  test("what was removed is selected again; done again, what was selected after it", () => {
    select(B1);
    remove(B1 as never);
    select(B2);
    undo();
    expect(selection()).toEqual([B1]);
    expect(seen.at(-1)).toEqual([B1]);
    redo();
    expect(selection()).toEqual([B2]);
  });

  test("what is not there is not selected", () => {
    select(B1, B2);
    move(B1.id, 500);
    remove(B2 as never);
    select(B1, B2);
    expect(selection()).toEqual([B1, B2]);
    redo();
    undo();
    undo();
    redo();
    redo();
    expect(selection()).toEqual([B1]);
  });

  test("steps that were merged go back to what was selected before the first", () => {
    select(B1);
    move(B1.id, 100);
    select(B1, B2);
    move(B1.id, 120);
    select(B2);
    expect(documentStore.get().history.past).toHaveLength(1);
    undo();
    expect(selection()).toEqual([B1]);
  });

  test("where nothing was selected the person keeps what is looked at", () => {
    select();
    move(B1.id, 100);
    select(B2);
    undo();
    expect(selection()).toEqual([B2]);
  });

  test("another document forgets", () => {
    select(B1);
    move(B1.id, 100);
    openDocument({ project: drawing().box("B2").project });
    select(B2);
    move(B2.id, 300);
    undo();
    expect(selection()).toEqual([B2]);
  });
});

describe("a connector that grew", () => {
  const ground = (cable: string) => `cable-${cable}.cu.a` as EndKey;
  const splice = (connectorAssumed: boolean) =>
    dispatch({
      command: "splice-ends",
      args: {
        state,
        enclosure: boxId("B1"),
        splice: spliceId("E"),
        name: "E",
        connector: "twist-medium",
        connectorAssumed,
        ends: [ground("C1"), ground("C2"), ground("C3")],
      },
    });
  const join = () =>
    dispatch({
      command: "join-splice",
      args: { state, enclosure: boxId("B1"), splice: spliceId("E"), end: ground("C4") },
    });

  test("is told once, by name; undo and redo do not tell it again", () => {
    const quiet = tellGrownConnectors();
    splice(true);
    join();
    expect(sessionStore.get().notice?.lines[0]).toMatch(/^E in B1 has twist-on, large now/);
    closeNotice();
    undo();
    redo();
    expect(sessionStore.get().notice).toBeUndefined();
    quiet();
  });

  test("what was said is taken back with the edit, and by the next one; another notice stays", () => {
    const quiet = tellGrownConnectors();
    splice(true);
    join();
    undo();
    expect(sessionStore.get().notice).toBeUndefined();
    join();
    expect(sessionStore.get().notice).toBeDefined();
    dispatch({ command: "set-edition", args: { edition: 2023 } });
    expect(sessionStore.get().notice).toBeUndefined();
    notify("note", "Something else");
    undo();
    expect(sessionStore.get().notice?.title).toBe("Something else");
    quiet();
  });

  test("one that a person picked did not grow, and one that a person picks is no growth", () => {
    const quiet = tellGrownConnectors();
    splice(false);
    join();
    expect(sessionStore.get().notice).toBeUndefined();
    const path = ["asFound", "enclosures", boxId("B1"), "splices", spliceId("E"), "connector"];
    const patches = [{ op: "replace" as const, path, value: "lever-5" }];
    expect(grownConnectors(patches, "asFound", documentStore.get().project.asFound)).toEqual([]);
    quiet();
  });
});
