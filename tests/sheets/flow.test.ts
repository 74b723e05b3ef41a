import { describe, expect, test } from "vitest";
import { openFlow } from "../../shared-model/sheets/page/flow.ts";
import { cutToFit, losesLetters, measure, printable, wrap } from "../../shared-model/sheets/page/measure.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { textOnText } from "./page-faults.ts";

const COLUMN = { x: 10, y: 20, width: 100, height: 60 } as const;
const open = () => openFlow(() => COLUMN);

type Flowed = ReturnType<typeof open>;

const linesOf = (flowed: Flowed): readonly (readonly string[])[] =>
  flowed.pages().map((marks) => textsOf(marks).map(({ text }) => text));

function expectInColumn(flowed: Flowed): void {
  for (const marks of flowed.pages()) {
    const texts = textsOf(marks);
    expect(textOnText(texts)).toEqual([]);
    for (const { box, text } of texts) {
      expect(box.x, text).toBeGreaterThanOrEqual(COLUMN.x);
      expect(box.x + box.width, text).toBeLessThanOrEqual(COLUMN.x + COLUMN.width + 0.01);
      expect(box.y + box.height, text).toBeLessThanOrEqual(COLUMN.y + COLUMN.height + 0.01);
    }
  }
}

describe("text", () => {
  test("breaks between words, and inside a word only where it alone is too wide", () => {
    const width = measure("one two", 3);
    expect(wrap("one two three", width, { size: 3 })).toEqual(["one two", "three"]);
    const cut = wrap("x".repeat(100), width, { size: 3 });
    expect(cut.join("")).toBe("x".repeat(100));
    for (const line of cut) expect(measure(line, 3)).toBeLessThanOrEqual(width);
  });

  test("is printed without what cannot be seen, and with a question mark for what the face does not have", () => {
    expect(printable("a\u0000b\u202ec\u200b\td")).toBe("a bc d");
    expect(printable("Žlutý kůň, ½ × 3 in³")).toBe("Žlutý kůň, ½ × 3 in³");
    expect(printable("e\u0301")).toBe("é");
    expect(printable("口12")).toBe("?12");
    expect([losesLetters("口"), losesLetters("Ω kůň")]).toEqual([true, false]);
  });

  test("that does not fit ends in an ellipsis and then does", () => {
    const cut = cutToFit("Kitchen counter feed number three", 20, { size: 3 });
    expect(cut.endsWith("…")).toBe(true);
    expect(measure(cut, 3)).toBeLessThanOrEqual(20);
  });
});

describe("a flow", () => {
  test("begins a page when the next thing does not fit, and loses nothing", () => {
    const flowed = open();
    for (let i = 0; i < 40; i += 1) flowed.flow.paragraph(`line ${i}`);
    expectInColumn(flowed);
    expect(linesOf(flowed).flat()).toEqual(Array.from({ length: 40 }, (_, i) => `line ${i}`));
    expect(linesOf(flowed).length).toBeGreaterThan(2);
  });

  test("a heading goes over to the next page with what follows it", () => {
    const flowed = open();
    const room = flowed.flow.room();
    flowed.flow.block({ height: room - 8, marks: [] });
    flowed.flow.heading("Heading");
    flowed.flow.paragraph("What it heads");
    expect(linesOf(flowed)[1]).toEqual(["Heading", "What it heads"]);
  });

  test("the head of a table is repeated on each page, and a row as long as two pages is cut between lines", () => {
    const flowed = open();
    const long = Array.from({ length: 300 }, (_, i) => `word${i}`).join(" ");
    flowed.flow.table({
      columns: [{ head: "item", width: 30 }, { head: "words" }],
      rows: [
        { cells: ["first", "one"] },
        { cells: ["second", long] },
        ...Array.from({ length: 20 }, (_, i) => ({ cells: [`row ${i}`, { text: "two", note: "noted" }] })),
      ],
    });
    expectInColumn(flowed);
    const pages = linesOf(flowed);
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) expect(page.slice(0, 2)).toEqual(["item", "words"]);
    const words = pages.flat().filter((line) => line.startsWith("word") && line !== "words");
    expect(words.join(" ")).toBe(long);
    expect(pages.flat().filter((line) => line === "noted")).toHaveLength(20);
  });

  test("a table that goes on says again under which heading its rows stand, on every page but its first", () => {
    const flowed = open();
    flowed.flow.heading("B4, freezer", "opened");
    flowed.flow.paragraph("of the table");
    flowed.flow.table({
      columns: [{ head: "what" }],
      rows: Array.from({ length: 30 }, (_, i) => ({ cells: [`row ${i}`] })),
    });
    expectInColumn(flowed);
    const [first, ...others] = linesOf(flowed);
    expect(first?.slice(0, 4)).toEqual(["B4, freezer", "opened", "of the table", "what"]);
    expect(others.length).toBeGreaterThan(1);
    for (const page of others) expect(page.slice(0, 2)).toEqual(["B4, freezer, continued", "what"]);
    const rows = linesOf(flowed)
      .flat()
      .filter((line) => line.startsWith("row"));
    expect(rows).toEqual(Array.from({ length: 30 }, (_, i) => `row ${i}`));
  });

  test("what is kept together stands on one page; what no page can hold is broken", () => {
    const flowed = open();
    flowed.flow.block({ height: 45, marks: [] });
    flowed.flow.keepTogether((kept) => {
      for (let i = 0; i < 5; i += 1) kept.check(`step ${i}`, { lead: "HP1", tail: "0 V" });
    });
    expect(linesOf(flowed)[0]).toEqual([]);
    expect(linesOf(flowed)[1]?.filter((line) => line.startsWith("step"))).toHaveLength(5);
    const huge = open();
    huge.flow.keepTogether((kept) => {
      for (let i = 0; i < 40; i += 1) kept.paragraph(`line ${i}`);
      kept.signOff(["name", "date"]);
    });
    expectInColumn(huge);
    expect(linesOf(huge).flat().slice(-2)).toEqual(["name", "date"]);
  });
});
