/** What the paper worker does with the messages of the window, with writers that only say what they were given. */
import { beforeEach, describe, expect, test } from "vitest";
import type { FromPaper, PaperJob, ToPaper } from "../../../shared-model/answers/paper-messages.ts";
import { createPaperDesk, type DeskTools } from "../../../shared-model/sheets/job/paper-desk.ts";
import type { ListTable } from "../../../shared-model/sheets/tables/table.ts";
import { laundryAsFound } from "../../builders/drawing.ts";
import { boxId } from "../../builders/ids.ts";
import { inputOf, JOB, sheetOf, wordsOf } from "./drawn-sheets.ts";

const found = laundryAsFound();
const project = { ...found, proposed: found.asFound };
const bytesOf = (words: string) => new TextEncoder().encode(words);

let said: FromPaper[];
let turns: number;
let opened: number;
/** Called at each turn, as a message of the window would come. */
let atTurn: (turn: number) => void;
let desk: { take(message: ToPaper): void };

const listed = (rows: (box: string) => ListTable["rows"]) => ({
  tables: ({ box }: { readonly box?: string }): readonly ListTable[] => [
    { name: "Fill", columns: [{ head: "Box", kind: "text" }], rows: rows(box ?? "all") },
  ],
});

function createDesk(more: Partial<DeskTools> = {}): typeof desk {
  return createPaperDesk({
    sheets: [
      sheetOf("drawing", "either"),
      sheetOf(
        "box-fill",
        "either",
        [],
        listed((box) => [[box]]),
      ),
      sheetOf("steps", "difference"),
      sheetOf("materials", "difference"),
    ],
    open() {
      opened += 1;
      return inputOf;
    },
    svg: async (page) => `<svg>${wordsOf(page).join("|")}</svg>`,
    async pdf(pages, { title, onPage, isStopped }) {
      for (const i of pages.keys()) {
        onPage(i + 1, pages.length);
        await pause();
        if (isStopped()) throw new Error("stopped");
      }
      return bytesOf([title, ...pages.map((page) => wordsOf(page).at(-1))].join("\n"));
    },
    csv: async (tables) => bytesOf(JSON.stringify(tables.map(({ rows }) => rows))),
    xlsx: async (tables) => bytesOf(JSON.stringify(tables.map(({ name, rows }) => [name, rows.length]))),
    post: (message) => said.push(message),
    turn: pause,
    ...more,
  });
}

async function pause(): Promise<void> {
  turns += 1;
  atTurn(turns);
  await Promise.resolve();
}

/** What is said until a request has its end. */
async function ended(request: number): Promise<FromPaper> {
  for (let waited = 0; waited < 100; waited += 1) {
    const end = said.find((message) => message.request === request && message.type !== "progress");
    if (end !== undefined) return end;
    await new Promise((done) => setTimeout(done));
  }
  throw new Error("It has no end.");
}

const textOf = (message: FromPaper): string =>
  message.type === "file" ? new TextDecoder().decode(message.bytes) : `no file: ${message.type}`;

async function laidOut(job: PaperJob = JOB, request = 1): Promise<FromPaper> {
  desk.take({ type: "document", revision: 1, project });
  desk.take({ type: "lay-out", request, revision: 1, job });
  return ended(request);
}

beforeEach(() => {
  [said, turns, opened, atTurn] = [[], 0, 0, () => {}];
  desk = createDesk();
});

describe("a layout", () => {
  test("tells how far it is, then which sheets and pages there are", async () => {
    expect(await laidOut()).toEqual({
      type: "laid-out",
      request: 1,
      sheets: ["drawing", "steps", "materials"].map((kind) => ({
        kind,
        title: `Title of ${kind}`,
        hasList: false,
        pages: [{ title: `${kind} proposed all`, width: 210, height: 297 }],
      })),
      empty: {},
      lost: [],
    });
    expect(said.filter(({ type }) => type === "progress")).toMatchObject([
      { done: 0, of: 3 },
      { done: 1, of: 3, at: "Title of steps" },
      { done: 2, of: 3, at: "Title of materials" },
    ]);
  });

  test("leaves out what has nothing to say and says why, of what nobody asked for too; letters that are lost are told", async () => {
    const none = (words: string) => ({ nothing: () => words });
    desk = createDesk({
      sheets: [
        sheetOf("drawing", "either"),
        sheetOf("steps", "difference", [], none("There is no work.")),
        sheetOf("labels", "either", [], none("No label.")),
        sheetOf("as-found", "as-found", [], none("Another state is not looked over for it.")),
      ],
    });
    const titled = { ...project, title: "Kitchen \u{1f525}" };
    desk.take({ type: "document", revision: 1, project: titled });
    desk.take({ type: "lay-out", request: 1, revision: 1, job: { ...JOB, fileName: "proposed \u{1f525}.loadside" } });
    const told = await ended(1);
    expect(told.type === "laid-out" && told.sheets.map(({ kind }) => kind)).toEqual(["drawing"]);
    expect(told).toMatchObject({ empty: { steps: "There is no work.", labels: "No label." }, lost: [] });
    expect(Object.keys(told.type === "laid-out" ? told.empty : {})).toEqual(["steps", "labels"]);
    desk.take({ type: "page", request: 2, of: 1, page: 0 });
    expect(await ended(2)).toMatchObject({ svg: "<svg>drawing proposed all|page 1 of 1</svg>" });
  });

  test("is checked once for a document, however often it is laid out, and anew for another", async () => {
    await laidOut();
    desk.take({ type: "lay-out", request: 2, revision: 1, job: JOB });
    await ended(2);
    expect(opened).toBe(1);
    desk.take({ type: "document", revision: 2, project });
    desk.take({ type: "lay-out", request: 3, revision: 2, job: JOB });
    await ended(3);
    expect(opened).toBe(2);
  });

  test("stops between two steps when it is told to", async () => {
    atTurn = (turn) => turn === 2 && desk.take({ type: "stop", request: 1 });
    expect(await laidOut()).toEqual({ type: "stopped", request: 1 });
    expect(said.filter(({ type }) => type === "progress")).toHaveLength(2);
  });

  test("makes way for a later one", async () => {
    atTurn = (turn) => turn === 1 && desk.take({ type: "lay-out", request: 2, revision: 1, job: JOB });
    expect((await laidOut()).type).toBe("stopped");
    expect((await ended(2)).type).toBe("laid-out");
  });

  test("of a sheet that fails names it, and the next layout goes on", async () => {
    const fails = sheetOf("steps", "difference", [], {
      make() {
        throw new Error("no room");
      },
    });
    desk = createDesk({ sheets: [sheetOf("drawing", "either"), fails] });
    expect(await laidOut()).toEqual({ type: "failed", request: 1, at: "Title of steps", reason: "no room" });
    desk.take({ type: "lay-out", request: 2, revision: 1, job: { ...JOB, sheets: ["drawing"] } });
    expect((await ended(2)).type).toBe("laid-out");
  });

  test("of a document that has not come fails", async () => {
    desk.take({ type: "lay-out", request: 1, revision: 4, job: JOB });
    expect(await ended(1)).toMatchObject({ type: "failed", reason: "The document has not come." });
  });
});

describe("of what was laid out last", () => {
  test("a page is drawn with its number", async () => {
    await laidOut();
    desk.take({ type: "page", request: 2, of: 1, page: 1 });
    expect(await ended(2)).toEqual({
      type: "page",
      request: 2,
      svg: "<svg>steps proposed all|page 1 of 1, folder 2 of 3</svg>",
    });
    for (const wrong of [
      { of: 7, page: 0 },
      { of: 1, page: 3 },
    ]) {
      said = [];
      desk.take({ type: "page", request: 3, ...wrong });
      expect((await ended(3)).type).toBe("failed");
    }
  });

  test("all pages go into one file, or one sheet with numbers of its own", async () => {
    await laidOut();
    desk.take({ type: "file", request: 2, of: 1, file: { format: "pdf" } });
    expect(textOf(await ended(2)).split("\n")).toEqual([
      project.title,
      "page 1 of 1, folder 1 of 3",
      "page 1 of 1, folder 2 of 3",
      "page 1 of 1, folder 3 of 3",
    ]);
    expect(said).toContainEqual({ type: "progress", request: 2, done: 1, of: 3, at: "steps proposed all" });
    desk.take({ type: "file", request: 3, of: 1, file: { format: "pdf", sheet: 1 } });
    expect(textOf(await ended(3)).split("\n")).toEqual([`${project.title}, Title of steps`, "page 1 of 1"]);
  });

  test("writing a file is stopped between two pages, and a layout does not stop it", async () => {
    await laidOut();
    turns = 0;
    atTurn = (turn) => turn === 2 && desk.take({ type: "stop", request: 2 });
    desk.take({ type: "file", request: 2, of: 1, file: { format: "pdf" } });
    expect(await ended(2)).toEqual({ type: "stopped", request: 2 });
    turns = 0;
    atTurn = (turn) => turn === 1 && desk.take({ type: "lay-out", request: 4, revision: 1, job: JOB });
    desk.take({ type: "file", request: 3, of: 1, file: { format: "pdf" } });
    expect((await ended(3)).type).toBe("file");
  });

  test("lists are those of the sheets; of a sheet that was made box by box there is one", async () => {
    const boxes = [boxId("B1"), boxId("B2")];
    await laidOut({ ...JOB, sheets: ["drawing", "box-fill"], boxes });
    desk.take({ type: "file", request: 2, of: 1, file: { format: "csv", sheet: 1 } });
    expect(textOf(await ended(2))).toBe(JSON.stringify([boxes.map((box) => [box])]));
    desk.take({ type: "file", request: 3, of: 1, file: { format: "xlsx" } });
    expect(textOf(await ended(3))).toBe(JSON.stringify([["Fill", 2]]));
    desk.take({ type: "file", request: 4, of: 1, file: { format: "csv", sheet: 0 } });
    expect(await ended(4)).toMatchObject({ type: "failed", reason: "This sheet is no list." });
  });
});
