import { expect, test } from "vitest";
import { asId, type DeviceId, type EnclosureId } from "../../shared-model/model/ids.ts";
import { tamperResistant } from "../../shared-model/rules/checks/tamper-resistant.ts";
import { amps, inches } from "../../shared-model/units/quantity.ts";
import { checkDocument } from "./check-drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, plan, press, replacing, unchanged } from "./two-states.ts";
import { twoWire } from "./two-wire.ts";

const plain = (more: Parameters<typeof replacing>[2] = {}) => replacing(["stair"], "receptacle-15", more);

/** A receptacle that comes where none was. */
const added = (type: string) =>
  plan(
    inRoom(["stair"]),
    inRoom(["stair"])
      .device("R9", type, "A")
      .jumper("h", "A", "R1.H2", "R9.H1")
      .jumper("n", "A", "R1.N2", "R9.N1", { colour: "white" }),
  );

/** NFPA 70 406.12 with its exceptions, from memory: more than 5 1/2 ft, which is 66 in. */
ruleTester(tamperResistant, {
  passes: [
    { name: "replaced by a tamper-resistant one", drawing: () => replacing(["stair"], "receptacle-tr-15") },
    { name: "a new tamper-resistant one", drawing: () => added("receptacle-tr-15") },
    {
      name: "a ground-fault receptacle: the stock has no other",
      drawing: () => replacing(["bathroom"], "gfci-receptacle-15"),
    },
    { name: "one that stays as it was", drawing: () => unchanged(inRoom(["stair"])) },
    { name: "as found", drawing: () => inRoom(["stair"]) },
    { name: "67 in. above the floor", drawing: () => plain({ more: { reachHeightIn: inches(67) } }) },
    { name: "behind an appliance", drawing: () => plain({ more: { behindAppliance: true } }) },
    { name: "of 30 A", drawing: () => plain({ more: { ratingA: amps(30) } }) },
    { name: "a two-slot one where there is no ground", drawing: () => twoSlotBack() },
    {
      name: "a switch",
      drawing: () => plan(inRoom(["stair"]), inRoom(["stair"]).device("S1", "switch-single-pole", "A")),
    },
  ],
  finds: [
    {
      name: "a plain duplex in the place of another",
      drawing: () => plain(),
      findings: [
        {
          on: "R2",
          severity: "violation",
          says: ["R2 in A is in the place of R1 and is not tamper-resistant", "up to 66 in. above the floor"],
        },
      ],
    },
    {
      name: "exactly 66 in. above the floor",
      drawing: () => plain({ more: { reachHeightIn: inches(66) } }),
      findings: [{ on: "R2" }],
    },
    {
      name: "a new plain duplex",
      drawing: () => added("receptacle-15"),
      findings: [{ on: "R9", says: ["R9 in A is new"] }],
    },
    {
      name: "a ground-fault receptacle that is recorded as plain",
      drawing: () => replacing(["bathroom"], "gfci-receptacle-15", { more: { tamperResistant: false } }),
      findings: [{ on: "R2" }],
    },
    {
      name: "a two-slot one where there is a ground",
      drawing: () => replacing(["stair"], "receptacle-two-slot"),
      findings: [{ on: "R2" }],
    },
    {
      name: "it rests on what is recorded",
      drawing: () => plain({ more: { evidence: { tamperResistant: "assumed" } } }),
      findings: [{ on: "R2", basis: "assumed" }],
    },
  ],
  cannotTell: [
    {
      name: "not recorded",
      drawing: () => plain({ more: { tamperResistant: undefined as never } }),
      on: ["R2"],
      missing: "whether R2 in A is tamper-resistant",
    },
  ],
});

/** In BT2, which two-wire cable feeds, a two-slot receptacle comes for a grounding one. */
function twoSlotBack() {
  const made = { first: "receptacle-two-slot", second: "receptacle-two-slot" } as const;
  const proposed = twoWire(made).setDevice("T2", { replaces: asId("T9") });
  const asFound = twoWire(made).device("T9", "receptacle-15", "BT2");
  delete asFound.at("BT2").devices[asId<DeviceId>("T2")];
  return plan(asFound, proposed);
}

test("a local amendment sets another height", () => {
  const project = plain({ more: { reachHeightIn: inches(60) } }).project();
  const change = { kind: "value", name: "tamperResistantToIn", value: 48 } as const;
  const amended = { ...project, amendments: [{ rule: "tamper-resistant", change, reason: "town" }] };
  const isSaid = (one: typeof project) =>
    checkDocument(one, "proposed").findings.some(({ rule }) => rule === "tamper-resistant");
  expect([isSaid(project), isSaid(amended)]).toEqual([true, false]);
});

test("replaced and new point at their sections", () => {
  const sectionOf = (drawn: ReturnType<typeof plain>) =>
    checkDocument(drawn.project(), "proposed").findings.find(({ rule }) => rule === "tamper-resistant")?.section
      ?.section;
  expect(sectionOf(plain())).toBe("406.4(D)(5), 406.12");
  expect(sectionOf(added("receptacle-15"))).toBe("406.12");
});

test("the fix puts a tamper-resistant one of the same rating there", () => {
  const { title, left, project } = press(plain(), "tamper-resistant", "R2");
  expect(title).toBe("Tamper-resistant duplex, 15 A in place of R2");
  expect(left).toEqual([]);
  const made = Object.values(project.proposed?.enclosures[asId<EnclosureId>("A")]?.devices ?? {});
  expect(made).toMatchObject([{ type: "receptacle-tr-15", replaces: "R1" }]);
});
