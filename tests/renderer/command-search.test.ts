/** What the command field finds of what is typed, how every command is reached there, and what it asks for. */
import { beforeEach, describe, expect, test } from "vitest";
import { commandLines, commandShelves, typedLines } from "../../renderer/state/commands/command-lines.ts";
import { type CommandLine, findLines, findOnShelves } from "../../renderer/state/commands/entry.ts";
import { isOneSlip } from "../../renderer/state/commands/one-slip.ts";
import { shelve } from "../../renderer/state/commands/search.ts";
import { VERB_WAYS } from "../../renderer/state/commands/verb-words.ts";
import { documentStore, nextUndo, openDocument } from "../../renderer/state/document-store.ts";
import { askInField, choosePicked, pickStore } from "../../renderer/state/pick-store.ts";
import { resetSession, select, sessionStore } from "../../renderer/state/session-store.ts";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { documentCommands } from "../../shared-model/commands/catalog/document-commands.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { boxId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

beforeEach(() => {
  resetSession();
  openDocument({ project: laundryAsFound() });
});

const found = (typed: string): readonly CommandLine[] =>
  findOnShelves([...commandShelves(), shelve(typedLines(typed))], typed);
const titles = (typed: string): readonly string[] => found(typed).map(({ title }) => title);
const first = (typed: string): CommandLine => {
  const [line] = found(typed);
  if (line === undefined) throw new Error(`Nothing is found for ${typed}.`);
  return line;
};

// Words of electricians, and slips of the fingers; what they mean is common practice.
describe("is found by", () => {
  test.each([
    ["beginnings of words, in any order", "recep gfci", "Place: GFCI receptacle, 15 A face"],
    ["the trade's short word", "gfi", "Place: GFCI receptacle, 15 A face"],
    ["the everyday word", "outlet 20", "Place: Grounding duplex, 20 A"],
    ["two words for one", "ground fault", "Place: GFCI receptacle, 15 A face"],
    ["the connector's everyday name", "wire nut", "Change the connector of a splice…"],
    ["a size with a hyphen", "14-3", "Run a cable: 14/3 with ground"],
    ["another trade's word for running one", "route 14/3", "Run a cable: 14/3 with ground"],
    ["what drawings call it", "draw cable", "Run a cable…"],
    ["what a start page calls it", "new box", "New from what I see…"],
    ["a letter left out", "recptacle gfci", "Place: GFCI receptacle, 15 A face"],
    ["a letter too many", "gfcci", "Place: GFCI receptacle, 15 A face"],
    ["another letter", "octogon", "Place: Octagon 4 × 1-1/2"],
    ["two letters changed about", "luminiare", "Place: Luminaire, 60 W"],
    ["a slip in the beginning of a word", "enregi", "Energise"],
    ["an everyday word for a command", "shortcuts", "Keys…"],
    ["a room", "laundry room", "Laundry"],
    ["a sample", "bungalow sample", "Sample: 1962 bungalow, laundry circuit"],
  ])("%s: %s", (_, typed, title) => {
    expect(titles(typed).slice(0, 12)).toContain(title);
  });

  test("the part that a question names, where no line says the question", () => {
    expect(titles("what resets R3")).toEqual(["R3"]);
    expect(titles("what resets it")).toEqual([]);
  });

  test("nothing where a figure is another, or a word is too short to have a slip in it", () => {
    expect(titles("14/9")).toEqual([]);
    expect(titles("gfx")).toEqual([]);
    expect(titles("zzzzz")).toEqual([]);
  });
});

test.each([
  ["recptacle", "receptacle", true],
  ["recieptacle", "receptacle", true],
  ["resieptacle", "receptacle", false],
  ["receptacel", "receptacle", true],
  ["split", "splicing", false],
  ["splise", "splice", true],
  ["splicee", "splice", true],
  ["boxx", "boxes", false],
  ["pnael", "panel", true],
  ["pannel", "panel", true],
  ["panl", "panel", true],
  ["cable", "panel", false],
])("%s is %s but for a slip: %s", (typed, word, is) => expect(isOneSlip(typed, word)).toBe(is));

describe("every command", () => {
  test("of the document has a way in the field, and is there by its own name or by lines of its own", () => {
    expect(Object.keys(VERB_WAYS).sort()).toEqual(documentCommands.map(({ id }) => id).sort());
    const lines = commandLines();
    for (const { id, title } of documentCommands) {
      const way = VERB_WAYS[id];
      if ("own" in way) continue;
      expect(
        lines.filter((line) => line.title.replace("…", "") === title),
        title,
      ).not.toEqual([]);
    }
    for (const typed of ["place a box", "paste", "pigtail jumper", "add room", "edition 2017", "amendment", "proposed"])
      expect([typed, found(typed).length > 0]).toEqual([typed, true]);
  });

  test("of the window is there, with its keys; but for the field itself", () => {
    const lines = commandLines();
    for (const { id, title } of windowCommands) {
      const there = lines.filter((line) => line.title === title);
      expect([id, there.length]).toEqual([id, id === "find-anything" ? 0 : 1]);
    }
    expect(lines.find(({ title }) => title === "Save")?.shortcut).toBe("Ctrl S");
  });

  test("says why it cannot be given now", () => {
    const whyNot = (title: string) => commandLines().find((line) => line.title === title)?.whyNot;
    expect(whyNot("Undo")).toBe("There is nothing to undo.");
    expect(whyNot("Copy")).toBe("Select something first.");
    expect(whyNot("The other of as found and proposed")).toBe("Proposed is not started.");
    expect(whyNot("Describe a photo…")).toBe("There is no photo in this drawing yet.");
    expect(whyNot("Cap a conductor…")).toBeUndefined();
    select({ kind: "enclosure", id: boxId("B1") });
    expect(whyNot("Copy")).toBeUndefined();
    openDocument({ project: laundryAsFound(), readOnly: true });
    expect(whyNot("Cap a conductor…")).toMatch(/newer version/);
  });

  test("that cannot be given comes after what can", () => {
    const lines = found("undo");
    expect(lines.findIndex(({ whyNot }) => whyNot !== undefined)).toBe(
      lines.filter(({ whyNot }) => whyNot === undefined).length,
    );
  });
});

describe("what a command needs is asked in the field", () => {
  test("the thing it is about, and then it is done", () => {
    const asked = first("cap a conductor").ask?.();
    expect(asked?.title).toBe("Cap a conductor: which conductor end?");
    const [end] = asked?.lines("c1 bk b1") ?? [];
    expect(end).toMatchObject({ title: "C1 BK", note: expect.stringContaining("end in B1") });
    expect(end?.ask?.()).toBeUndefined();
    expect(nextUndo(documentStore.get())).toBe("Cap C1 BK");
    expect(sessionStore.get().selection).toMatchObject([{ kind: "end" }]);
  });

  test("then the choices of the command itself, one after the other", () => {
    const [box] = first("place a device").ask?.()?.lines("b3") ?? [];
    expect(box?.title).toBe("B3");
    expect(askInField(() => void box?.ask?.())).toBe(true);
    const [line] =
      pickStore
        .get()
        .pick?.lines()
        .filter(({ title }) => title === "Grounding duplex, 20 A") ?? [];
    expect(line).toBeDefined();
    if (line !== undefined) choosePicked(line);
    expect(nextUndo(documentStore.get())).toMatch(/^Place /);
  });

  test("what else asks for a choice does so in its dialog", () => {
    const [box] = first("place a device").ask?.()?.lines("b3") ?? [];
    box?.ask?.();
    expect(pickStore.get()).toMatchObject({ inField: false });
  });

  test("of several meanings it asks which", () => {
    const asked = first("pigtail a terminal").ask?.()?.lines("r1")[0]?.ask?.();
    expect(asked?.title).toBe("Pigtail a terminal: R1");
    expect((asked?.lines("") ?? []).length).toBeGreaterThan(1);
  });

  test("where nothing of it can be done with the thing, it says so and does nothing", () => {
    const revision = documentStore.get().revision;
    const ends = first("take a conductor out").ask?.()?.lines("c1 bk") ?? [];
    const onBreaker = ends.find(({ note }) => note.startsWith("end in P"));
    expect(onBreaker?.ask?.()).toBeUndefined();
    expect(sessionStore.get().notice?.lines).toEqual(["None of it can be done with this now."]);
    expect(documentStore.get().revision).toBe(revision);
  });
});

test("lines of the same kind keep their order, so that the field does not jump", () => {
  const line = (title: string): CommandLine => ({
    key: title,
    title,
    note: "",
    run: () => undefined,
  });
  const all = ["Box 3", "Box 1", "Box 2"].map(line);
  expect(findLines(all, "box").map(({ title }) => title)).toEqual(["Box 3", "Box 1", "Box 2"]);
});

describe("what takes all of proposed away", () => {
  beforeEach(() => {
    openDocument({ project: openSample("laundry-proposed") });
    expect(documentStore.get().project.proposed).toBeDefined();
  });

  test.each(["reset", "discard", "prop", "proposed"])(
    "does nothing by %s alone, and comes after what does",
    (typed) => {
      const all = found(typed);
      const taking = all.findIndex(({ takesAll }) => takesAll === true);
      expect(taking).toBeGreaterThanOrEqual(0);
      for (const line of all.filter(({ takesAll }) => takesAll === true)) expect(line.whyNot).toMatch(/Type more/);
      if (all.some(({ takesAll, whyNot }) => takesAll === undefined && whyNot === undefined))
        expect(taking).toBeGreaterThan(0);
    },
  );

  test("comes first once its name is said", () => {
    expect(first("reset all of proposed to as found").title).toMatch(/^Reset all of proposed/);
    expect(first("discard proposed").title).toMatch(/^Discard proposed/);
    expect(first("discard proposed").whyNot).toBeUndefined();
  });
});
