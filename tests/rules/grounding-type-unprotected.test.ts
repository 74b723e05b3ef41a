import { expect, test } from "vitest";
import { isSerious } from "../../shared-model/model/severity.ts";
import { groundingTypeUnprotected } from "../../shared-model/rules/checks/grounding-type-unprotected.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, press, unchanged } from "./two-states.ts";
import { onLine, twoWire } from "./two-wire.ts";

const PLAIN = { first: "receptacle-two-slot" } as const;

ruleTester(groundingTypeUnprotected, {
  passes: [
    { name: "behind a ground-fault receptacle", drawing: () => twoWire() },
    { name: "behind a ground-fault breaker", drawing: () => twoWire({ ...PLAIN, breaker: "breaker-gfci-1" }) },
    { name: "two-slot receptacles", drawing: () => twoWire({ ...PLAIN, second: "receptacle-two-slot" }) },
    { name: "with a ground", drawing: () => inRoom(["stair"]) },
    { name: "a raceway may be the ground", drawing: () => asRaceway(twoWire(PLAIN)) },
    {
      name: "with nothing landed on it",
      drawing: () => twoWire(PLAIN).put({ "V2.bk@BT2": "cap", "V2.wh@BT2": "cap" }),
    },
  ],
  finds: [
    {
      name: "fed from LINE",
      drawing: () => onLine(twoWire()),
      findings: [
        {
          on: "T2",
          severity: "violation",
          says: ["T2 in BT2 looks grounded and is not", "Put a two-slot receptacle back"],
        },
      ],
    },
    {
      name: "nothing protects, each half of a split one",
      drawing: () =>
        twoWire(PLAIN)
          .setDevice("T2", { hotTab: "removed" })
          .put({ "V2.bk@BT2": "T2.H1" })
          .jumper("j", "BT2", "T2.H1", "T2.H2"),
      findings: [{ on: "T2/upper" }, { on: "T2/lower" }],
    },
    {
      name: "an arc-fault breaker does not protect people",
      drawing: () => twoWire({ ...PLAIN, breaker: "breaker-afci-1" }),
      findings: [{ on: "T2" }],
    },
    {
      name: "a ground that leads to none",
      drawing: () => inRoom(["stair"]).put({ "C1.cu@P": "cap" }),
      findings: [{ on: "R1", says: ["the ground of its supply leads to none", "Find where the ground is parted"] }],
    },
    {
      name: "it rests on the type",
      drawing: () => twoWire(PLAIN).setDevice("T2", { evidence: { type: "assumed" } }),
      findings: [{ on: "T2", basis: "assumed" }],
    },
  ],
  cannotTell: [
    {
      name: "its supply is not drawn",
      drawing: () => supplyFromOutside(),
      on: ["T2"],
      missing: "the supply of T2",
    },
  ],
});

function asRaceway(drawing: ReturnType<typeof twoWire>) {
  for (const cable of Object.values(drawing.cables)) cable.construction = "raceway";
  return drawing;
}

function supplyFromOutside() {
  const drawing = twoWire(PLAIN);
  drawing.put({ "V1.bk@P": "cap", "V1.wh@P": "cap" });
  for (const cable of Object.values(drawing.cables))
    if (cable.name === "V1") Object.assign(cable, { sides: { a: { outside: "not drawn" }, b: cable.sides.b } });
  for (const end of Object.keys(drawing.at("P").places)) delete drawing.at("P").places[end as never];
  return drawing;
}

test("what it covers is not said twice", () => {
  const { findings } = checkDocument(onLine(twoWire()).project());
  expect(inShort(about(/egc-missing|grounding-type|not-protected/, findings.filter(isSerious)))).toEqual([
    "grounding-type-unprotected T2",
  ]);
});

test("a two-slot receptacle is offered, and mends it", () => {
  const { title } = press(unchanged(twoWire(PLAIN)), "grounding-type-unprotected", "T2", "wo-slot");
  expect(title).toBe("Two-slot duplex, old in place of T2");
});

test("a ground-fault receptacle is offered with its label", () => {
  const { title, project } = press(unchanged(twoWire(PLAIN)), "grounding-type-unprotected", "T2", "GFCI receptacle");
  expect(title).toContain("GFCI receptacle at T2, LOAD left empty: protects T2 only; with the labels for no ground");
  expect(Object.values(project.proposed?.labels ?? {}).map(({ wording }) => wording)).toEqual(["No Equipment Ground"]);
});

test("brought to LOAD it gets both labels", () => {
  const { title, project } = press(unchanged(labelledFirst()), "grounding-type-unprotected", "T2", "Bring V2");
  expect(title).toContain("Bring V2 from the LOAD side of T1");
  const ofT2 = Object.values(project.proposed?.labels ?? {}).filter(({ on }) => "device" in on && on.device === "T2");
  expect(ofT2.map(({ wording }) => wording)).toEqual(["GFCI Protected", "No Equipment Ground"]);
});

const labelledFirst = () => onLine(twoWire());
