/** The paper worker itself, in a stand-in for its scope: real sheets of a sample, its pages, files and lists. */
import { readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import type { FromPaper, PaperJob, SheetOffer, ToPaper } from "../../shared-model/answers/paper-messages.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { ROOT } from "../small-project.ts";
import { HAS_POPPLER, textOfPdf } from "./read-pdf.ts";

let said: FromPaper[] = [];
const scope: { onmessage?: (event: { readonly data: ToPaper }) => void; postMessage(message: FromPaper): void } = {
  postMessage: (message) => said.push(message),
};
const tell = (message: ToPaper): void => scope.onmessage?.({ data: message });

async function ended(request: number): Promise<FromPaper> {
  const end = () => said.find((message) => message.request === request && message.type !== "progress");
  await vi.waitFor(() => expect(end()).toBeDefined(), 60_000);
  const message = end();
  if (message === undefined) throw new Error("It has no end.");
  return message;
}

const parsed = parseProject(readFileSync(join(ROOT, "assets/samples/laundry-proposed.loadside"), "utf8"));
if (!parsed.ok) throw new Error("The sample cannot be read.");
const { project } = parsed.value;
const JOB = { state: "proposed", paper: "letter", date: "2026-05-04" } as const;

let request = 0;
/** Puts a question and waits for its end. */
async function ask(question: (request: number) => ToPaper): Promise<FromPaper> {
  request += 1;
  const own = request;
  tell(question(own));
  return ended(own);
}

let offers: readonly SheetOffer[] = [];
let layout = 0;
async function layOut(job: Partial<PaperJob> = {}) {
  const all = offers.map(({ kind }) => kind);
  const answer = await ask((own) => ({
    type: "lay-out",
    request: own,
    revision: 1,
    job: { ...JOB, sheets: all, ...job },
  }));
  if (answer.type !== "laid-out") throw new Error(JSON.stringify(answer));
  layout = answer.request;
  return answer.sheets;
}

async function fileOf(file: Extract<ToPaper, { readonly type: "file" }>["file"]): Promise<Uint8Array> {
  const answer = await ask((own) => ({ type: "file", request: own, of: layout, file }));
  if (answer.type !== "file") throw new Error(JSON.stringify(answer));
  return answer.bytes;
}

beforeAll(async () => {
  vi.stubGlobal("self", scope);
  // The files of the face come from where the program has them; addresses in here begin at the folder of the program.
  vi.stubGlobal("fetch", async (url: string) => new Response(await readFile(join(ROOT, url))));
  const host = "../../shared-model/hosts/paper-worker.ts";
  await import(host);
  tell({ type: "document", revision: 1, project });
  const answer = await ask((own) => ({ type: "offers", request: own }));
  if (answer.type === "offers") offers = answer.offers;
}, 60_000);
beforeEach(() => {
  said = [];
});

describe("sheets of the laundry as proposed", () => {
  test("are offered, and every one of them but labels, of which none is called for, has a page on the paper that was asked for", {
    timeout: 60_000,
  }, async () => {
    expect(offers.length).toBeGreaterThanOrEqual(10);
    expect(offers).toContainEqual(expect.objectContaining({ kind: "box-fill", hasList: true }));
    const sheets = await layOut({ paper: "a4" });
    expect(sheets.map(({ kind }) => kind)).toEqual(offers.map(({ kind }) => kind).filter((kind) => kind !== "labels"));
    for (const { kind, pages } of sheets) {
      expect(pages.length, kind).toBeGreaterThan(0);
      // ISO 216: A4 is 210 x 297 mm.
      for (const { width, height } of pages) expect([width, height].sort(), kind).toEqual([210, 297].sort());
    }
  });

  test("of one box are of that box", { timeout: 60_000 }, async () => {
    const box = Object.values(project.asFound.enclosures).find(({ name }) => name === "B1")?.id as EnclosureId;
    const [whole] = await layOut({ sheets: ["make-up"] });
    const [one] = await layOut({ sheets: ["make-up"], boxes: [box] });
    expect(whole?.pages.length).toBeGreaterThan(one?.pages.length ?? 0);
    expect(one?.pages.map(({ title }) => title)).toEqual([expect.stringContaining("B1")]);
  });

  test("a page is a picture that carries its face and fetches nothing", { timeout: 60_000 }, async () => {
    await layOut({ sheets: ["box-fill"] });
    const answer = await ask((own) => ({ type: "page", request: own, of: layout, page: 0 }));
    const svg = answer.type === "page" ? answer.svg : "";
    expect(svg).toContain("@font-face");
    expect(svg).toContain("laundry");
    expect(svg.replaceAll("http://www.w3.org/2000/svg", "")).not.toMatch(/https?:|href=/);
  });
});

describe("files", () => {
  test("are PDFs with their words, the title first, the same for the same day", { timeout: 60_000 }, async () => {
    const sheets = await layOut({ sheets: ["box-fill", "directory"] });
    const bytes = await fileOf({ format: "pdf" });
    expect(new TextDecoder().decode(bytes.slice(0, 4))).toBe("%PDF");
    const pages = sheets.reduce((sum, sheet) => sum + sheet.pages.length, 0);
    expect(said.filter(({ type }) => type === "progress")).toHaveLength(sheets.length + pages);
    expect(await fileOf({ format: "pdf" })).toEqual(bytes);
    if (HAS_POPPLER) {
      const words = textOfPdf(bytes);
      expect(words).toContain(project.title);
      expect(words).toContain(`folder ${pages} of ${pages}`);
    }
  });

  test("stops between two pages when it is told to", { timeout: 60_000 }, async () => {
    await layOut();
    const own = request + 1;
    const work = fileOf({ format: "pdf" }).catch((fault: Error) => fault.message);
    await vi.waitFor(
      () => expect(said.some((one) => one.type === "progress" && one.request === own)).toBe(true),
      30_000,
    );
    tell({ type: "stop", request: own });
    expect(await work).toContain('"stopped"');
  });

  test("of lists are text with a head line, or a workbook", { timeout: 60_000 }, async () => {
    const sheets = await layOut({ sheets: ["box-fill", "directory"] });
    const text = new TextDecoder().decode(await fileOf({ format: "csv", sheet: 0 }));
    expect(text).toMatch(/B1/);
    expect(text.split("\n").length).toBeGreaterThan(3);
    const book = await fileOf({ format: "xlsx" });
    // A workbook is a ZIP file (ECMA-376), which begins with PK.
    expect(new TextDecoder().decode(book.slice(0, 2))).toBe("PK");
    expect(sheets.every(({ hasList }) => hasList)).toBe(true);
  });
});
