import { describe, expect, test } from "vitest";
import { findInStock, notInStock, stockGroups } from "../../renderer/panels/stock/stock-groups.ts";
import { saysInTradeWords } from "../../renderer/state/trade-words.ts";

const titles = (words: string): readonly string[] =>
  stockGroups.flatMap(({ items }) => findInStock(items, words)).map(({ title }) => title);

// What an electrician typed who tried the window, and what he meant.
describe("the stock is found by the words of the trade", () => {
  test.each([
    ["single gang", "Nonmetallic new-work, 1 gang"],
    ["1-gang", "Nonmetallic new-work, 1 gang"],
    ["two gang", "Nonmetallic new-work, 2 gang"],
    ["plastic", "Nonmetallic old-work, 1 gang"],
    ["plastic single gang", "Nonmetallic new-work, 1 gang"],
    ["gfi", "GFCI receptacle, 15 A face"],
    ["ground fault", "GFCI receptacle, 15 A face"],
    ["14-2", "14/2 with ground"],
    ["14/2", "14/2 with ground"],
    ["12-2-2", "12/2/2 with ground"],
    ["three-way", "3-way switch"],
    ["3 way", "3-way switch"],
    ["20a", "Grounding duplex, 20 A"],
    ["20 amp breaker", "Breaker, one-pole"],
    ["duplex tr", "Tamper-resistant duplex, 15 A"],
    ["fixture", "Luminaire, 60 W"],
    ["handy box", "Device 4 × 2-1/8 × 1-7/8"],
    ["remodel", "Nonmetallic old-work, 1 gang"],
    ["armored", "Armoured 12/2 with ground"],
    ["double pole", "Double-pole switch, 20 A"],
    ["4 in. square × 2-1/8", "4 in. square × 2-1/8"],
    ["octagon 15.5", "Octagon 4 × 1-1/2"],
  ])("%s finds %s", (words, title) => {
    expect(titles(words)).toContain(title);
  });

  test.each([
    ["two gang", "Nonmetallic new-work, 1 gang"],
    ["14-2", "12/2 with ground"],
    ["14-2", "14/3 with ground"],
    ["three-way", "4-way switch"],
    ["20a", "Grounding duplex, 15 A"],
    ["handy box", "4 in. square × 2-1/8"],
    ["gfi", "Grounding duplex, 15 A"],
    ["device 3 × 2 × 3-1/2", "Device 3 × 2 × 2-1/2"],
    ["single gang", "Octagon 4 × 1-1/2"],
  ])("%s does not find %s", (words, title) => {
    expect(titles(words)).not.toContain(title);
  });
});

test("a word typed only so far finds what it may become, a figure is meant whole", () => {
  expect(saysInTradeWords("Octagon 4 × 1-1/2", "oct")).toBe(true);
  expect(saysInTradeWords("Breaker, 15 A", "1")).toBe(false);
  expect(saysInTradeWords("12/2 with ground", "12")).toBe(true);
  // Said in full where another says it by its letters, and the other way round.
  for (const words of ["gfci at R1", "gfi", "ground fault", "fit a ground-fault device"])
    expect(saysInTradeWords("Fit a ground-fault device at R1…", words), words).toBe(true);
});

test("what is made in the box is said to be, by any of its names", () => {
  for (const words of ["pigtail", "pig tail", "jumper"]) {
    expect(titles(words)).toEqual([]);
    expect(notInStock(words)).toContain("Pigtail from here…");
  }
  for (const words of ["wire nut", "wirenut", "push-in connector"]) expect(notInStock(words)).toContain("splice");
  expect(notInStock("mud ring")).toContain("details of the box");
  expect(notInStock("zebra")).toContain("Nothing in stock is called that");
});

test("the box that most dwellings are wired with is among the first, the old receptacle among the last", () => {
  const [boxes, , devices] = stockGroups;
  expect(boxes?.items.slice(0, 6).map(({ title }) => title)).toContain("Nonmetallic new-work, 1 gang");
  expect(devices?.items.slice(0, 4).map(({ tool }) => tool.id)).not.toContain("receptacle-two-slot");
});
