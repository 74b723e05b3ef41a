import { expect, test } from "vitest";
import type { Edition } from "../../shared-model/model/project.ts";
import { noNeutralAtSwitch } from "../../shared-model/rules/checks/no-neutral-at-switch.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { switchLoop } from "./loop.ts";
import { type Drawn, ruleTester } from "./rule-tester.ts";
import { threeWay } from "./three-way.ts";

/** The loop of a kind of room, by an edition. */
function inRoom(kind: "bedroom" | "stair" | "closet" | "bathroom", edition: Edition = 2020): Drawing {
  const drawing = switchLoop(edition);
  drawing.rooms.Bedroom = { id: "Bedroom" as never, name: "Bedroom", kinds: [kind], order: 0 };
  return drawing;
}

/** Feed and light in L, two dead-end three-ways beyond: neither box has the neutral. */
const deadEnds = (): Drawing =>
  new Drawing()
    .room("Stair", ["stair"])
    .panel("P")
    .breaker("Q1", 15)
    .box("L", 30, { roomId: "Stair" as never })
    .box("A", 30, { roomId: "Stair" as never })
    .box("B", 30, { roomId: "Stair" as never })
    .cable("C1", "nm-14-2-g", "P", "L")
    .cable("Y", "nm-14-3-g", "L", "A")
    .cable("Z", "nm-14-3-g", "A", "B")
    .device("L1", "luminaire-60", "L")
    .device("SA", "switch-3way", "A")
    .device("SB", "switch-3way", "B")
    .splice("f", "L", "twist-medium")
    .splice("r", "A", "twist-medium")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@L": "f", "Y.wh@L": "f", "C1.wh@L": "L1.N" })
    .put({ "Y.bk@L": "L1.H", "Y.wh@A": "SA.C", "Y.bk@A": "r", "Z.bk@A": "r", "Z.bk@B": "SB.C" })
    .put({ "Z.rd@A": "SA.T1", "Z.wh@A": "SA.T2", "Z.rd@B": "SB.T1", "Z.wh@B": "SB.T2" });

/** What was there, and what is proposed. */
const planned = (before: Drawing, after: Drawing): Drawn => ({
  project: () => ({ ...before.project(), proposed: after.installation() }),
  state: "proposed",
});

/** Light and feed alone; the loop to S1 comes with the work. */
function beforeTheLoop(): Drawing {
  const drawing = switchLoop();
  delete drawing.enclosures.B2;
  delete drawing.cables.LP;
  const { places, entries } = drawing.at("B1");
  for (const end of Object.keys(places)) if (end.startsWith("LP.")) delete places[end as never];
  for (const entry of Object.keys(entries)) if (entry.startsWith("LP-")) delete entries[entry as never];
  return drawing;
}

ruleTester(noNeutralAtSwitch, {
  passes: [
    { name: "the neutral runs through the box", drawing: () => laundryProposed() },
    {
      name: "the neutral is capped there",
      drawing: () =>
        inRoom("bedroom").cable("LN", "nm-14-2-g", "B1", "B2").put({ "LN.wh@B1": "L1.N", "LN.wh@B2": "cap" }),
    },
    { name: "a closet is no such room", drawing: () => inRoom("closet") },
    { name: "a box in no room", drawing: () => switchLoop().setBox("B2", { roomId: undefined as never }) },
    {
      name: "a switch of a receptacle",
      drawing: () => switchLoop().setDevice("L1", { type: "receptacle-single-20" }),
    },
    {
      name: "a raceway comes to it",
      drawing: () => switchLoop().cable("RW", "single-12-black", "B1", "B2"),
    },
    { name: "one of two switches has it", drawing: () => threeWay({ returns: "wh" }) },
    { name: "a stair by the edition of 2014", drawing: () => inRoom("stair", 2014) },
    { name: "no supply: nothing is known", drawing: () => switchLoop().put({ "C1.bk@P": "cap" }) },
  ],
  finds: [
    {
      name: "a loop that was there",
      drawing: () => inRoom("bedroom"),
      findings: [{ on: "B2", severity: "advice", says: ["No neutral comes to S1 in B2", "need not be rewired"] }],
    },
    { name: "a bathroom", drawing: () => inRoom("bathroom"), findings: [{ on: "B2", severity: "advice" }] },
    { name: "a stair", drawing: () => inRoom("stair"), findings: [{ on: "B2", severity: "advice" }] },
    {
      name: "two switches, and neither has it",
      drawing: deadEnds,
      findings: [
        { on: "A", severity: "advice" },
        { on: "B", severity: "advice" },
      ],
    },
    {
      name: "it rests on who says what is in the box",
      drawing: () => switchLoop().knownBy("LP.wh@B2", "assumed"),
      findings: [{ on: "B2", severity: "advice", basis: "assumed" }],
    },
    {
      name: "a loop that is new work",
      drawing: () => planned(beforeTheLoop(), switchLoop()),
      findings: [{ on: "B2", severity: "violation", says: ["which is new work", "the neutral of L1"] }],
    },
    {
      name: "a switch that takes the place of another",
      drawing: () =>
        planned(
          switchLoop(),
          switchLoop()
            .setDevice("S1", { type: "dimmer" })
            .setDevice("S1", { replaces: "S1" as never }),
        ),
      findings: [{ on: "B2", severity: "advice" }],
    },
    {
      name: "any room by the edition of 2011",
      drawing: () => inRoom("closet", 2011),
      findings: [{ on: "B2", severity: "advice" }],
    },
    {
      name: "a bedroom by the edition of 2014",
      drawing: () => inRoom("bedroom", 2014),
      findings: [{ on: "B2", severity: "advice" }],
    },
    ...([2017, 2020, 2023, 2026] as const).map((edition) => ({
      name: `a stair by the edition of ${edition}`,
      drawing: () => inRoom("stair", edition),
      findings: [{ on: "B2", severity: "advice" as const }],
    })),
  ],
  cannotTell: { never: "a box without a room is left alone, since the rule would ask at every switch" },
});

test("where the neutral lies in the box and is cut before it, the cut is what is told", () => {
  const cut = (drawing: Drawing) =>
    inShort(ofWiring(checkDocument(drawing.project()).findings)).filter((one) =>
      /^(open-neutral|no-neutral)/.test(one),
    );
  const atSwitch = (): Drawing =>
    switchLoop()
      .cable("LN", "nm-14-2-g", "B1", "B2")
      .splice("n", "B1", "twist-medium")
      .jumper("k", "B1", "n", "L1.N", { colour: "white", awg: "14" })
      .put({ "C1.wh@B1": "n", "LN.wh@B1": "n", "LN.wh@B2": "cap" });
  expect(cut(atSwitch())).toEqual([]);
  expect(cut(atSwitch().put({ "C1.wh@P": "cap" }))).toEqual(["open-neutral L1"]);
  // Here none lies at the switch, cut or not.
  expect(cut(switchLoop().put({ "C1.wh@P": "cap" }))).toEqual(["no-neutral-at-switch B2", "open-neutral L1"]);
});
