/** Conductor ends and splices in the command field. */
import { beforeEach, expect, test } from "vitest";
import { commandLines, typedLines } from "../../renderer/state/commands/command-lines.ts";
import { findLines } from "../../renderer/state/commands/entry.ts";
import { openDocument } from "../../renderer/state/document-store.ts";
import { resetSession, sessionStore } from "../../renderer/state/session-store.ts";
import { laundryAsFound } from "../builders/drawing.ts";

beforeEach(() => {
  resetSession();
  openDocument({ project: laundryAsFound() });
});

const found = (typed: string) => findLines([...commandLines(), ...typedLines(typed)], typed);

test("an end is found by its name, in each of its boxes, before all else that holds the words", () => {
  const [first, second, third] = found("C5 bare");
  expect([first, second].map((line) => line?.title)).toEqual(["C5 bare", "C5 bare"]);
  expect([first?.note, second?.note].sort()).toEqual(["end in B1, splice Z", expect.stringContaining("end in B6, ")]);
  expect(third?.title).not.toBe("C5 bare");
  first?.run();
  expect(sessionStore.get().selection).toMatchObject([{ kind: "end" }]);
});

test("of many ends the one in the box that was typed is found", () => {
  const [first] = found("c5 bk b6");
  expect(first).toMatchObject({ title: "C5 BK", note: expect.stringContaining("end in B6") });
});

test("the ends of a jumper are found by its name", () => {
  expect(
    found("r bare")
      .map(({ title }) => title)
      .slice(0, 2),
  ).toEqual(["r bare", "r bare"]);
});

test("a thing of the very name comes first, and nothing is listed before something is typed", () => {
  expect(found("C5")[0]).toMatchObject({ title: "C5", note: "cable" });
  expect(typedLines(" ")).toEqual([]);
});

test("a splice is found by the word and its name", () => {
  expect(found("splice Z")[0]).toMatchObject({ title: "Z", note: "splice in B1" });
  found("splice Z")[0]?.run();
  expect(sessionStore.get().selection).toMatchObject([{ kind: "splice" }]);
  expect(found("splice").some(({ note }) => note === "splice in B1")).toBe(true);
});
