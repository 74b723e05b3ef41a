import { expect, test } from "vitest";
import { asId } from "../../shared-model/model/ids.ts";
import { isSerious } from "../../shared-model/model/severity.ts";
import { noGroundLabel } from "../../shared-model/rules/checks/no-ground-label.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, labelled, plan, press, unchanged } from "./two-states.ts";
import { onLine, twoWire } from "./two-wire.ts";

const BOTH = [
  ["T1", "No Equipment Ground"],
  ["T2", "GFCI Protected"],
  ["T2", "No Equipment Ground"],
] as const;

/** NFPA 70 406.4(D)(2)(b) and (c): a licence-renewal course and an inspector's site state the words. */
ruleTester(noGroundLabel, {
  passes: [
    { name: "labels shown", drawing: () => labelled(twoWire(), BOTH) },
    {
      name: "in other letters, both on one label",
      drawing: () =>
        labelled(twoWire(), [
          ["T1", "NO EQUIPMENT GROUND"],
          ["T2", "GFCI protected, no equipment ground."],
        ]),
    },
    {
      name: "on the box",
      drawing: () =>
        labelled(twoWire(), [
          ["T1", "No Equipment Ground"],
          ["box BT2", "GFCI Protected"],
          ["box BT2", "No Equipment Ground"],
        ]),
    },
    {
      name: "a two-slot receptacle",
      drawing: () => labelled(twoWire({ second: "receptacle-two-slot" }), [["T1", "No Equipment Ground"]]),
    },
    { name: "with a ground", drawing: () => inRoom(["bathroom"], { type: "gfci-receptacle-15" }) },
    {
      name: "what nothing protects is another rule",
      drawing: () => labelled(onLine(twoWire()), [["T1", "No Equipment Ground"]]),
    },
    {
      name: "a new one must have its ground",
      drawing: () => plan(twoWire({ first: "receptacle-two-slot", second: "receptacle-two-slot" }), withNew()),
    },
    {
      name: "a ground that is parted is another rule",
      drawing: () => inRoom(["bathroom"], { type: "gfci-receptacle-15" }).put({ "C1.cu@P": "cap" }),
    },
  ],
  finds: [
    {
      name: "no labels",
      drawing: () => twoWire(),
      findings: [
        {
          on: "T1",
          severity: "violation",
          says: [
            "T1 in BT1 has a ground slot and no ground, and is protected by itself",
            "needs “No Equipment Ground”",
          ],
        },
        {
          on: "T2",
          says: ["protected by T1", "“GFCI Protected” and “No Equipment Ground”", "Put both labels on its face"],
        },
      ],
    },
    {
      name: "one of two on the receptacle behind",
      drawing: () =>
        labelled(twoWire(), [
          ["T1", "No Equipment Ground"],
          ["T2", "No Equipment Ground"],
        ]),
      findings: [{ on: "T2", says: ["needs “GFCI Protected” where", "Put the label on its face"] }],
    },
    {
      name: "behind a ground-fault breaker",
      drawing: () => twoWire({ first: "receptacle-two-slot", breaker: "breaker-gfci-1" }),
      findings: [{ on: "T2", says: ["protected by QT"] }],
    },
    {
      name: "it rests on the type",
      drawing: () =>
        labelled(twoWire().setDevice("T2", { evidence: { type: "told" } }), [["T1", "No Equipment Ground"]]),
      findings: [{ on: "T2", basis: "told" }],
    },
  ],
  cannotTell: { never: "a receptacle that no source reaches is told by the rule for those without protection" },
});

function withNew() {
  return twoWire({ first: "receptacle-two-slot", second: "receptacle-two-slot" })
    .breaker("QT", 15, {}, "breaker-gfci-1")
    .put({ "V1.wh@P": "QT.LOAD_N" })
    .box("BT3", 42)
    .cable("V3", "nm-14-2", "BT2", "BT3")
    .device("T3", "receptacle-tr-15", "BT3")
    .put({ "V3.bk@BT2": "T2.H2", "V3.wh@BT2": "T2.N2", "V3.bk@BT3": "T3.H1", "V3.wh@BT3": "T3.N1" });
}

test("the fix puts the labels on", () => {
  const { title, left, project } = press(unchanged(twoWire()), "no-ground-label", "T2");
  expect(title).toBe("Label T2 “GFCI Protected” and “No Equipment Ground”");
  expect(left).toContain("no-ground-label T1");
  expect(left).not.toContain("no-ground-label T2");
  const labels = Object.values(project.proposed?.labels ?? {});
  expect(labels).toMatchObject([
    { wording: "GFCI Protected", on: { device: asId("T2") }, requiredBy: "406.4(D)(2)" },
    { wording: "No Equipment Ground", on: { device: asId("T2") } },
  ]);
});

test("of the two rules on receptacles without a ground, the protected one is told by this alone", () => {
  const { findings } = checkDocument(twoWire().project());
  expect(inShort(about(/no-ground|grounding-type|egc-missing/, findings.filter(isSerious)))).toEqual([
    "no-ground-label T1",
    "no-ground-label T2",
  ]);
});
