import { describe, expect, test } from "vitest";
import type { BoxRoles } from "../../shared-model/answers/circuit.ts";
import { asId, type DeviceId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { type CardLists, cardLists } from "../../shared-model/sheets/cards/card-lists.ts";
import { makeUpCards } from "../../shared-model/sheets/cards/make-up-card.ts";
import type { Page } from "../../shared-model/sheets/display-list.ts";
import { drawingSheet } from "../../shared-model/sheets/drawing/drawing-sheet.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { Drawing } from "../rules/drawing.ts";
import { pageFaults } from "./page-faults.ts";
import { ALL_PAPERS, inputOf, SAMPLE_FILES, sampleProject, statesOf } from "./sheet-inputs.ts";

const laundry = sampleProject("laundry-proposed.loadside");
const words = (page: Page | undefined): readonly string[] => textsOf(page?.marks ?? []).map(({ text }) => text);

/** Make-up of the laundry box as the worked example of the trade's procedure has it: joints, their ends, and what goes where. */
const JOINTS = {
  grounds: {
    E1: ["C1 bare", "C2 bare", "C3 bare", "C4 bare", "g bare > link to E2"],
    E2: ["C5 bare", "e bare > to R1b G, green", "f bare > to box ground screw", "g bare > link to E1"],
  },
  neutrals: {
    NL: ["C1 WH", "C3 WH", "C4 WH", "b WH > to LINE N, silver"],
    ND: ["C2 WH", "C5 WH", "d WH > to LOAD N, silver"],
  },
  hots: {
    HL: ["C1 BK", "C3 BK", "C4 BK", "a BK > to LINE H, brass"],
    HD: ["C2 BK", "C5 BK", "c BK > to LOAD H, brass"],
  },
} as const;

describe("the card of the laundry box", () => {
  const input = inputOf(laundry, { state: "proposed", box: "B1" });

  test("lists every end once, in the joint and the layer in which it is made", () => {
    const { proposed } = laundry;
    const box = Object.values(proposed?.enclosures ?? {}).find(({ name }) => name === "B1");
    if (proposed === undefined || box === undefined) throw new Error("No B1.");
    const lists = cardLists(proposed, box, input.shownRoles[box.id]);
    for (const layer of ["grounds", "neutrals", "hots"] as const) {
      const found = Object.fromEntries(
        lists[layer].map(({ name, entries }) => [
          name,
          entries.map((each) => (each.where === "" ? each.name : `${each.name} > ${each.where}`)),
        ]),
      );
      expect(found).toEqual(JOINTS[layer]);
    }
  });

  test("goes by what a conductor does, not by its colour", () => {
    const { proposed } = laundry;
    const box = Object.values(proposed?.enclosures ?? {}).find(({ name }) => name === "B4");
    if (proposed === undefined || box === undefined) throw new Error("No B4.");
    const known = input.shownRoles[box.id];
    if (known === undefined) throw new Error("B4 has no roles.");
    const turned = Object.fromEntries(
      Object.entries(known.ends).map(([end, role]) => [
        end,
        role === "grounded" ? "ungrounded" : role === "ungrounded" ? "grounded" : role,
      ]),
    ) as BoxRoles["ends"];
    const lists = cardLists(proposed, box, { ...known, ends: turned });
    const names = (joints: CardLists["hots"]) => joints.flatMap(({ entries }) => entries.map(({ name }) => name));
    expect([names(lists.neutrals), names(lists.hots)]).toEqual([["C3 BK"], ["C3 WH"]]);
  });

  test("says how full the box is, what to take out, and what stops the work, on one page", () => {
    const pages = makeUpCards(input);
    expect(pages).toHaveLength(1);
    const said = words(pages[0]);
    // 22.5 + 4.5 + 2.25 + 0.5625 = 29.8125 of 30.3; with clamps 2.25 more, which is 1.7625 too much.
    expect(said).toContain("Fill 29.8125 of 30.3 in³");
    expect(said).toContain("22.50 + 4.50 + 2.25 + 0.5625, left 0.4875");
    expect(said).toContain("Take the internal clamps out: with them 1.7625 too much");
    expect(said).toContain("No white from C2 or C5 may touch NL.");
    expect(said).toContain("Supply C1 proved and marked on its jacket; dead again.");
    expect(said.filter((each) => /^HP[1-6]$/.test(each))).toEqual(["HP1", "HP2", "HP3", "HP4", "HP5", "HP6"]);
    expect(said).toContain("behind R1b: R2, R3, R5");
  });

  test("tells to reset every device of the circuit, its own first; tripped in its dead tests is its own alone", () => {
    for (const [box, own, other] of [
      ["B1", "R1b", "R4b"],
      ["B4", "R4b", "R1b"],
    ]) {
      const [page] = makeUpCards(inputOf(laundry, { state: "proposed", box: box ?? "" }));
      const said = words(page).join(" ");
      expect(said).toContain(`Breaker on, RESET ${own} and ${other}.`);
      expect(said).toContain(`Dead tests, ${own} tripped:`);
    }
  });

  test("letters of its drawing are at least 5 points high", () => {
    const [page] = makeUpCards(input);
    const plate = textsOf(page?.marks ?? []).find(({ text }) => text === "C3 BK");
    expect((plate?.size ?? 0) / (25.4 / 72)).toBeGreaterThanOrEqual(5);
  });
});

test("cards are made of what the work opens; as found of every box, without hold points", () => {
  const titles = (pages: readonly Page[]): readonly string[] => [...new Set(pages.map(({ title }) => title))];
  expect(titles(makeUpCards(inputOf(laundry, { state: "proposed" })))).toEqual(["Make-up card B1", "Make-up card B4"]);
  const asFound = makeUpCards(inputOf(laundry, { state: "as-found" }));
  expect(titles(asFound)).toHaveLength(7);
  expect(asFound.flatMap(words)).not.toContain("HP1");
});

/** Two panels of one building, each with a breaker 1 and a box with a ground-fault receptacle on it. */
function twoPanels(): Drawing {
  const drawn = new Drawing(2020).room("Shed", ["garage"]);
  for (const [panel, breaker, box, guard, cable] of [
    ["P", "Q1", "A", "G1", "C1"],
    ["S", "Q2", "B", "G2", "C2"],
  ] as const) {
    drawn.panel(panel).device(breaker, "breaker-1", panel, { breakerRatingA: amps(20), slot: 1 });
    drawn.box(box, 30).device(guard, "gfci-receptacle-20", box).cable(cable, "nm-12-2-g", panel, box);
    drawn.put({
      [`${cable}.bk@${panel}`]: `${breaker}.OUT`,
      [`${cable}.wh@${panel}`]: `${panel}-NB.BAR`,
      [`${cable}.cu@${panel}`]: `${panel}-GB.BAR`,
      [`${cable}.bk@${box}`]: `${guard}.LINE_H`,
      [`${cable}.wh@${box}`]: `${guard}.LINE_N`,
      [`${cable}.cu@${box}`]: `${guard}.G`,
    });
    Object.assign(drawn.enclosures[panel]?.devices[asId<DeviceId>(breaker)] ?? {}, { name: "1" });
  }
  return drawn;
}

describe("which breaker a card names", () => {
  const cardOf = (project: Project, box: string): string => words(makeUpCards(inputOf(project, { box }))[0]).join("|");

  test("is the one in the panel that feeds the box, though another panel has one of its number", () => {
    const project = twoPanels().project();
    expect(cardOf(project, "A")).toContain("breaker, panel P|1, 20 A|");
    expect(cardOf(project, "B")).toContain("breaker, panel S|1, 20 A|");
    // What is set again is on the circuit of the box.
    expect(cardOf(project, "A")).toContain("Breaker on, RESET G1.");
    expect(cardOf(project, "B")).toContain("Breaker on, RESET G2.");
  });

  test("are all of those that come to a box, with their panels", () => {
    const both = twoPanels().cable("C3", "nm-12-2-g", "S", "A");
    both.device("Q3", "breaker-1", "S", { breakerRatingA: amps(20), slot: 5 });
    both.put({ "C3.bk@S": "Q3.OUT", "C3.wh@S": "S-NB.BAR", "C3.cu@S": "S-GB.BAR" });
    expect(cardOf(both.project(), "A")).toContain("breakers|1 in P, 5 in S|");
  });

  test("of a box where no circuit comes to is every one that its cables lead to: nobody knows that it is dead", () => {
    const cut = twoPanels().box("E", 18).cable("C4", "nm-12-2-g", "A", "E");
    expect(cardOf(cut.project(), "E")).toContain("breaker, panel P|1, 20 A|");
    const alone = twoPanels().box("E", 18).project();
    expect(cardOf(alone, "E")).toContain("breakers|not told|");
  });
});

describe.each(SAMPLE_FILES)("%s", (name) => {
  const project = sampleProject(name);
  test.each(statesOf(project))(
    "%s: each box near, on any paper, stands inside its margins, no text on text",
    (state) => {
      const enclosures = Object.values((state === "proposed" ? project.proposed : project.asFound)?.enclosures ?? {});
      const whole = inputOf(project, { state });
      for (const [i, { id, name: box }] of enclosures.entries()) {
        const paper = ALL_PAPERS[i % ALL_PAPERS.length] ?? "letter";
        const pages = drawingSheet({ ...whole, paper, box: id });
        expect(pages.length, box).toBeGreaterThan(0);
        expect(pages.flatMap(pageFaults), `${box} on ${paper}`).toEqual([]);
      }
    },
  );
});
