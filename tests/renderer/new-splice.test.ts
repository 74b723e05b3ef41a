/** New splices of ends wherever they are, and one splice parted in two, as the window offers them. */
import { beforeEach, expect, test } from "vitest";
import { commandLines } from "../../renderer/state/commands/command-lines.ts";
import { findLines } from "../../renderer/state/commands/entry.ts";
import { documentStore, openDocument, shownInstallation, undo } from "../../renderer/state/document-store.ts";
import { pickNewSplice } from "../../renderer/state/new-splice.ts";
import { cancelPick, choosePicked, pickStore } from "../../renderer/state/pick-store.ts";
import { hold, resetSession, select, sessionStore } from "../../renderer/state/session-store.ts";
import { canSplit, splitSplice } from "../../renderer/state/split-splice.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import { type ConductorKey, cableEnd, type EndKey, type SpliceId } from "../../shared-model/model/ids.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { membersOf } from "../../shared-model/queries/landings.ts";
import { boxId, cableId, laundryAsFound } from "../builders/drawing.ts";

const B1 = boxId("B1");
const hot = cableEnd(cableId("C1"), "bk" as ConductorKey, "b");

beforeEach(() => {
  cancelPick();
  resetSession();
  openDocument({ project: laundryAsFound() });
});

function box(): Enclosure {
  const found = shownInstallation().enclosures[B1];
  if (found === undefined) throw new Error("No B1.");
  return found;
}

const spliceCalled = (name: string): SpliceId => {
  const found = Object.values(box().splices).find((splice) => splice.name === name);
  if (found === undefined) throw new Error(`No splice ${name}.`);
  return found.id;
};
const names = (ends: readonly EndKey[]): readonly string[] =>
  ends.map((end) => nameOfEnd(shownInstallation(), box(), end)).sort();
const members = (name: string): readonly string[] => names(membersOf(box(), spliceCalled(name)));
const lines = () => pickStore.get().pick?.lines() ?? [];

function choose(title: string): void {
  const line = lines().find((one) => one.title === title);
  if (line === undefined) throw new Error(`Not offered: ${title}`);
  choosePicked(line);
}

test("an end that lies in a splice goes into a new one with an end of another splice, and both leave", () => {
  hold({ enclosure: B1, end: hot });
  pickNewSplice(B1, [hot]);
  expect(lines().map(({ title }) => title)).not.toContain("Make the splice of 1 ends");
  choose("C2 WH");
  choose("Make the splice of 2 ends");
  expect(members("H1")).toEqual(["C1 BK", "C2 WH"]);
  expect(members("X")).not.toContain("C1 BK");
  expect(members("Y")).not.toContain("C2 WH");
  expect(documentStore.get().history.past).toHaveLength(1);
  expect(sessionStore.get()).toMatchObject({
    held: undefined,
    selection: [{ kind: "splice", id: spliceCalled("H1") }],
  });
});

test("an end that was chosen is left out by a second press; likely ends come first and chosen ones last", () => {
  pickNewSplice(B1, [hot]);
  expect(lines()[0]?.title).toMatch(/ BK$/);
  expect(lines().at(-1)?.title).toBe("C1 BK");
  choose("C2 BK");
  choose("C1 BK");
  expect(lines().map(({ title }) => title)).not.toContain("Make the splice of 2 ends");
  choose("C3 BK");
  choose("Make the splice of 2 ends");
  expect(members("H1")).toEqual(["C2 BK", "C3 BK"]);
});

test("the command field knows a new splice: of an end, of a box, of any box", () => {
  const offered = () => findLines(commandLines(), "new splice").map(({ title }) => title);
  expect(offered()).toContain("New splice…");
  select({ kind: "enclosure", id: B1 });
  expect(offered()).toContain("New splice in B1…");
  select({ kind: "end", enclosure: B1, id: hot });
  const [line] = findLines(commandLines(), "new splice with C1 BK…");
  line?.run();
  choose("C3 BK");
  choose("Make the splice of 2 ends");
  expect(members("H1")).toEqual(["C1 BK", "C3 BK"]);
});

test("a splice is split into two with a link between them, in one step", () => {
  const z = spliceCalled("Z");
  const before = members("Z");
  select({ kind: "splice", id: z });
  findLines(commandLines(), "Split Z in two")[0]?.run();
  const [made] = sessionStore.get().selection;
  if (made?.kind !== "splice") throw new Error("Nothing was made.");
  const halves = [membersOf(box(), z), membersOf(box(), made.id)];
  const jumpers = Object.values(box().jumpers).map(({ id }) => id as string);
  const isLink = (end: EndKey): boolean =>
    jumpers.includes(end.slice(0, -2)) &&
    halves.every((half) => half.some((one) => one.slice(0, -2) === end.slice(0, -2)));
  const links = halves.map((half) => half.filter(isLink));
  expect(links.map((each) => each.length)).toEqual([1, 1]);
  expect(names(halves.flat().filter((end) => !isLink(end)))).toEqual(before);
  for (const half of halves) expect(half.length).toBeGreaterThanOrEqual(3);
  expect(box().splices[made.id]?.connector).not.toBe("unknown");
  expect(documentStore.get().history.past).toHaveLength(1);
  undo();
  expect(members("Z")).toEqual(before);
});

test("a splice of three ends is not offered to be split", () => {
  pickNewSplice(B1, [hot]);
  choose("C2 BK");
  choose("C3 BK");
  choose("Make the splice of 3 ends");
  const id = spliceCalled("H1");
  expect(canSplit(box(), id)).toBe(false);
  splitSplice(id);
  expect(members("H1")).toHaveLength(3);
  select({ kind: "splice", id });
  const found = findLines(commandLines(), "split H1").map(({ title }) => title);
  expect(found.filter((title) => /split/i.test(title))).toEqual([]);
});
