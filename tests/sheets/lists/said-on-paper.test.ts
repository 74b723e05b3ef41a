/** What a person who reads the sheets beside each other must not find told twice, half, or otherwise. */
import { describe, expect, it } from "vitest";
import { makeUpCards } from "../../../shared-model/sheets/cards/make-up-card.ts";
import { inputOf, sampleProject } from "../sheet-inputs.ts";
import { inputFor, pagesOf, wordsOf } from "./list-case.ts";

const laundry = sampleProject("laundry-proposed.loadside");
const kitchen = sampleProject("kitchen-multiwire.loadside");
const house = sampleProject("house-twelve-circuits.loadside");
const PROPOSED = { state: "proposed" } as const;

const cardOf = (project: typeof laundry, box: string, state: "as-found" | "proposed"): string =>
  wordsOf(makeUpCards(inputOf(project, { state, box })));

describe("a ground-fault breaker", () => {
  // R91 to R94 are behind the breaker Q9 of the house; R52 and R53 behind the receptacle R51.
  it("is set again by its handle: it has no RESET", () => {
    const page = wordsOf(pagesOf(house, "reset-slips"));
    expect(page).not.toMatch(/RESET on Q9/);
    expect(page.match(/Switch Q9 in P \(Basement\) fully off, then on\./g)).toHaveLength(4);
    expect(page.match(/Set it again as above\./g)).toHaveLength(4);
    expect(page.match(/Press RESET on R51 in B51/g)).toHaveLength(2);
  });
});

describe("names and makes", () => {
  it("a room that says all that the note of a box does stands alone", () => {
    const page = wordsOf(pagesOf(laundry, "box-fill", PROPOSED));
    expect(page).toContain("B6 Hall, first floor; the same");
    expect(page).toContain("B1 laundry");
    expect(page).toContain("B2 sink, Laundry; the same");
  });

  it("a box that is called nonmetallic is not told to be so again", () => {
    for (const kind of ["box-fill", "as-found"] as const) {
      const page = wordsOf(pagesOf(kitchen, kind));
      expect(page).toContain("Nonmetallic new-work, 1 gang. Marked 20 in³");
      expect(page).toContain("4 in. square × 2-1/8, metal. Size 4 × 2-1/8 square, by the table");
    }
  });
});

describe("the card", () => {
  it("tells a finding whole, over a second line", () => {
    const bedroom = sampleProject("two-wire-bedroom.loadside");
    const card = cardOf(bedroom, "B1", "proposed");
    expect(card).toMatch(/a tool with a metal case \(250\.114, /);
    expect(card).not.toContain("…");
  });

  it("names the first and the last of jumpers only where they count up between", () => {
    expect(cardOf(laundry, "B1", "proposed")).toContain("Jumpers a to g: 6 to 8 in., 12 AWG.");
    expect(cardOf(kitchen, "BF1", "proposed")).toContain("Jumpers BF1g1, BF1g2, BF1p, BF1q: 6 to 8 in., 12 AWG.");
  });

  // The main bond joins neutral and ground at the service (NFPA 70, 250.24(A) and 250.28): dead, they read near 0 ohms.
  it("does not ask for an open circuit from neutral to ground where the neutral comes from the panel", () => {
    const stair = sampleProject("three-way-stair.loadside");
    const card = cardOf(stair, "B1", "as-found");
    expect(card).toMatch(/hot to neutral no short; hot to ground open\./);
    expect(card).not.toMatch(/neutral to ground open/);
  });
});

describe("the steps", () => {
  const steps = inputFor(kitchen, PROPOSED).scope?.steps ?? [];

  it("tests stand in the order of their numbers", () => {
    const numbers = steps.flatMap(({ test }) => (test === undefined ? [] : [Number(test.slice(2))]));
    expect(numbers.length).toBeGreaterThan(10);
    expect(numbers).toEqual([...numbers].sort((p, q) => p - q));
  });

  it("no two readings of one step are told alike", () => {
    const bedroom = inputFor(sampleProject("two-wire-bedroom.loadside"), PROPOSED).scope?.steps ?? [];
    for (const { text, readings } of [...steps, ...bedroom]) {
      const told = readings.map(({ what }) => what);
      expect(new Set(told).size, `${text} ${told.join("; ")}`).toBe(told.length);
    }
    const dead = bedroom.find(({ hold, box }) => hold === "HP1" && box?.name === "B3")?.readings ?? [];
    expect(dead.map(({ what }) => what)).toContain("T3 BK at R3 H to T4 BK at R3 H");
  });

  it("a test has its number before its words, and says nothing against what is expected", () => {
    const page = wordsOf(pagesOf(kitchen, "steps", PROPOSED));
    expect(page).toContain("CM1: Before RESET");
    expect(page).toContain("If not: Neutral to ground 0 V, though that is within the limit:");
    // Without a ground at its outlets 0 V is what is expected of the bedroom.
    const bedroom = wordsOf(pagesOf(sampleProject("two-wire-bedroom.loadside"), "steps", PROPOSED));
    expect(bedroom).not.toContain("neutral and ground are joined there");
    expect(bedroom).toContain("If not: Neutral to ground more than 1 V above: a bad joint on the way.");
  });

  it("a sentence that ends in quoted words has one full stop", () => {
    const page = wordsOf(pagesOf(kitchen, "steps", PROPOSED));
    expect(page).toContain("“If it is dead, press RESET on K1b in BK1, counter, left”.");
    expect(page).not.toMatch(/[.]”[.]/);
  });

  it("a name of one letter is not read as a word", () => {
    const page = wordsOf(pagesOf(laundry, "steps", PROPOSED));
    expect(page).toContain("On the plan: a BK.");
    expect(page).not.toMatch(/It is a BK/);
  });
});

it("rows that go on on the next page of the scope say whose they are", () => {
  const [first, second] = pagesOf(laundry, "scope", PROPOSED);
  expect(wordsOf(first === undefined ? [] : [first])).toContain("B4, freezer");
  expect(wordsOf(second === undefined ? [] : [second])).toContain("B4, freezer, continued");
});

it("the name of the job goes over to a second line before it is cut", () => {
  const page = wordsOf(pagesOf(sampleProject("two-wire-bedroom.loadside"), "steps", { ...PROPOSED, paper: "a4" }));
  expect(page).toContain("1954 house, bedroom without a ground");
});

it("a caution alone takes no page for its heading", () => {
  const pages = pagesOf(sampleProject("two-wire-bedroom.loadside"), "findings", { ...PROPOSED, paper: "a4" });
  expect(pages).toHaveLength(1);
  expect(wordsOf(pages)).toContain("Mind: Section numbers move between editions");
});

it("the connectors of joints that the scope takes out are among what is taken out", () => {
  expect(wordsOf(pagesOf(kitchen, "scope", PROPOSED))).toMatch(/BK1h twist-on, medium out .*BK1n twist-on, medium out/);
  expect(wordsOf(pagesOf(kitchen, "materials", PROPOSED))).toContain(
    "2 twist-on connector, medium BK1h in BK1, BK1n in BK1",
  );
});
