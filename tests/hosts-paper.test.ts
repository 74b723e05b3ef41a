import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, test, vi } from "vitest";
import type { SheetInput, SheetKind } from "../shared-model/answers/sheet-input.ts";
import { type FaceFiles, PaperStopped, pdfOf } from "../shared-model/hosts/paper.ts";
import type { Project } from "../shared-model/model/project.ts";
import type { Page } from "../shared-model/sheets/display-list.ts";
import { text } from "../shared-model/sheets/marks.ts";
import { GENERAL_CAUTIONS } from "../shared-model/sheets/page/caution-words.ts";
import { numberFolder, numberPages } from "../shared-model/sheets/page/number-pages.ts";
import { findSheet } from "../shared-model/sheets/registry.ts";
import { fontsOfPdf, HAS_POPPLER, infoOfPdf, pictureOfPdf, textOfPdf } from "./sheets/read-pdf.ts";
import { ALL_PAPERS, inputOf, sampleProject } from "./sheets/sheet-inputs.ts";

const { resolve } = createRequire(import.meta.url);
const fileOf = (subset: string, weight: number): Uint8Array =>
  readFileSync(
    resolve(`@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.woff`),
  );
const face: FaceFiles = {
  "latin-400": fileOf("latin", 400),
  "latin-600": fileOf("latin", 600),
  "latin-700": fileOf("latin", 700),
  "extended-400": fileOf("latin-ext", 400),
  "extended-600": fileOf("latin-ext", 600),
  "extended-700": fileOf("latin-ext", 700),
};
const about = { title: "A job", date: "2026-05-04", face };

const laundry = sampleProject("laundry-proposed.loadside");

function pagesOf(kind: SheetKind, input: SheetInput): readonly Page[] {
  const sheet = findSheet(kind);
  if (sheet === undefined) throw new Error(`No sheet ${kind}.`);
  return numberPages(sheet.make(input));
}

test("the same pages and day give the same bytes, another day others", async () => {
  const pages = pagesOf("make-up", inputOf(laundry, { state: "proposed" }));
  const one = await pdfOf(pages, about);
  expect(Buffer.compare(one, await pdfOf(pages, about))).toBe(0);
  expect(Buffer.compare(one, await pdfOf(pages, { ...about, date: "2026-05-05" }))).not.toBe(0);
});

test("a PDF says in which language it is", async () => {
  const written = async (): Promise<string> => Buffer.from(await pdfOf([], about)).toString("latin1");
  expect(await written()).toContain("/Lang (en)");
  vi.stubGlobal("name", "paper pseudo");
  expect(await written()).toContain("/Lang (en-XA)");
  vi.unstubAllGlobals();
});

test("it tells after each page, and stops between two when nobody wants it any more", async () => {
  const pages = pagesOf("make-up", inputOf(laundry, { state: "proposed" }));
  const told: string[] = [];
  await pdfOf(pages, { ...about, onPage: (done, of) => told.push(`${done} of ${of}`) });
  expect(told).toEqual(["1 of 2", "2 of 2"]);
  const abort = new AbortController();
  const stopped = pdfOf(pages, { ...about, signal: abort.signal, onPage: () => abort.abort() });
  await expect(stopped).rejects.toBeInstanceOf(PaperStopped);
});

describe.skipIf(!HAS_POPPLER)("read back", () => {
  test("the card of B1 says what is made up where, the cautions, the line of the rule data and its number", async () => {
    const words = textOfPdf(await pdfOf(pagesOf("make-up", inputOf(laundry, { state: "proposed" })), about));
    const plain = words.replace(/\s+/g, " ");
    for (const said of [
      "B1",
      "PROPOSED",
      "14, 20 A",
      "29.8125 of 30.3",
      "C4 bare",
      "to LINE N, silver",
      "HP6",
      "page 1 of 2",
    ])
      expect(plain).toContain(said);
    expect(plain).toContain("Rule set 2020: not reviewed by a licensed person.");
    for (const caution of GENERAL_CAUTIONS) expect(plain).toContain(caution);
  });

  test("a project of edition 2026 says on every sheet that it was not verified", async () => {
    const project: Project = { ...laundry, edition: 2026 };
    for (const kind of ["drawing", "make-up", "box-fill", "findings"] as const) {
      const words = textOfPdf(await pdfOf(pagesOf(kind, inputOf(project, { state: "proposed" })), about));
      const pages = words.split("\f").filter((page) => page.trim() !== "");
      for (const page of pages) expect(page, kind).toContain("Edition 2026: 2023 text, not verified.");
    }
  });

  test("all faces are embedded, with their letters, and none is drawn as Type 3", async () => {
    const project: Project = { ...laundry, title: "Šárčin dům, žlutý" };
    const pdf = await pdfOf(pagesOf("drawing", inputOf(project, { state: "proposed" })), about);
    const fonts = fontsOfPdf(pdf);
    expect(fonts.length).toBeGreaterThanOrEqual(3);
    for (const font of fonts) {
      expect(font.type, font.name).toBe("CID TrueType");
      expect(font.embedded, font.name).toBe(true);
      expect(font.hasText, font.name).toBe(true);
    }
    expect(textOfPdf(pdf)).toContain("Šárčin dům, žlutý");
  });

  test("it bears title and day, and the size of its paper", async () => {
    // ISO 216: 210 by 297 mm are 595.3 by 841.9 points.
    const info = infoOfPdf(await pdfOf(pagesOf("box-fill", inputOf(laundry, { paper: "a4" })), about));
    expect(info).toMatch(/Title:\s+A job/);
    expect(info).toMatch(/CreationDate:\s+Mon May {2}4/);
    expect(info).toMatch(/Page size:\s+595\.2\d* x 841\.8\d* pts \(A4\)/);
  });

  test("a folder counts its pages through", async () => {
    const input = inputOf(laundry, { state: "proposed" });
    const sheets = (["drawing", "make-up"] as const).map((kind) => findSheet(kind)?.make(input) ?? []);
    const words = textOfPdf(await pdfOf(numberFolder(sheets), about)).replace(/\s+/g, " ");
    expect(words).toContain("page 1 of 1, folder 1 of 3");
    expect(words).toContain("page 2 of 2, folder 3 of 3");
  });

  test.each(ALL_PAPERS)("on %s the bar of 100 mm is 100 mm long", async (paper) => {
    const pdf = await pdfOf(pagesOf("drawing", inputOf(laundry, { state: "proposed", paper })), about);
    const DPI = 254;
    const picture = pictureOfPdf(pdf, DPI);
    // The edge of the bar is one dark run whose length no other line of the sheet comes near; the line is 0.2 mm wide.
    const millimetres = longestRuns(picture).map((points) => (points * 25.4) / DPI - 0.2);
    const bars = millimetres.filter((length) => length > 95 && length < 105);
    expect(bars.length).toBeGreaterThan(0);
    for (const length of bars) expect(Math.abs(length - 100)).toBeLessThan(0.2);
  });

  test("a text stands where it was measured, to the end of its box", async () => {
    const words = "Hot 14, Neutral WH 0.4875 in³";
    const mark = text(words, 180, 100, { size: 8, weight: 700, anchor: "end" });
    const page: Page = { sheet: "drawing", title: "", width: 200, height: 150, margin: 0, marks: [mark] };
    const picture = pictureOfPdf(await pdfOf([page], about), 254);
    const dark: number[] = [];
    for (let x = 0; x < picture.width; x += 1)
      for (let y = 0; y < picture.height; y += 1) if (picture.at(x, y) < 128) dark.push(x / 10);
    const [left, right] = [dark.reduce((a, b) => Math.min(a, b)), dark.reduce((a, b) => Math.max(a, b))];
    expect(right).toBeLessThan(180.1);
    expect(right).toBeGreaterThan(179);
    expect(left).toBeGreaterThan(mark.box.x);
    expect(left).toBeLessThan(mark.box.x + mark.box.width * 0.05);
  });
});

/** The longest dark run of each row. */
function longestRuns({ width, height, at }: ReturnType<typeof pictureOfPdf>): readonly number[] {
  const runs: number[] = [];
  for (let y = 0; y < height; y += 1) {
    let [longest, run] = [0, 0];
    for (let x = 0; x < width; x += 1) {
      run = at(x, y) < 128 ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    runs.push(longest);
  }
  return runs;
}
