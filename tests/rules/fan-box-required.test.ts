import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import { fanBoxRequired } from "../../shared-model/rules/checks/fan-box-required.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing, tryFix } from "./fix-tester.ts";
import { ruleTester } from "./rule-tester.ts";

const fan = (box: Partial<Box>, facts: Partial<Device> = {}, edition: 2017 | 2020 = 2020): Drawing =>
  new Drawing(edition).box("B", 15.5, { shape: "octagon", ...box }).device("F", "fan-light", "B", facts);

const FAN_BOX: Partial<Box> = { listedFor: ["luminaire", "fan"] };
const PLAIN: Partial<Box> = { listedFor: ["luminaire"] };

ruleTester(fanBoxRequired, {
  passes: [
    { name: "30 lb on a box listed for fans", drawing: () => fan(FAN_BOX, { weightLb: 30 }) },
    { name: "35 lb without a marking", drawing: () => fan(FAN_BOX, { weightLb: 35 }) },
    {
      name: "50 lb on a box that is marked for 50",
      drawing: () => fan({ ...FAN_BOX, fanWeightLb: 50 }, { weightLb: 50 }),
    },
    {
      name: "70 lb on a box that is marked for 70",
      drawing: () => fan({ ...FAN_BOX, fanWeightLb: 70 }, { weightLb: 70 }),
    },
    { name: "weight not recorded", drawing: () => fan(FAN_BOX) },
    { name: "held by the building", drawing: () => fan(PLAIN, { weightLb: 90, heldByBuilding: true }) },
    {
      name: "an exhaust fan in its own housing",
      drawing: () => new Drawing().box("B", 20, PLAIN).device("X", "fan-exhaust", "B"),
    },
  ],
  finds: [
    {
      name: "30 lb on an octagon that is not listed for fans",
      drawing: () => fan(PLAIN, { weightLb: 30 }),
      findings: [
        { on: "F B", severity: "danger", says: ["F hangs on B, which is not listed for fans", "Do not run it."] },
      ],
    },
    {
      name: "a plastic round box, weight not recorded",
      drawing: () => fan({ ...PLAIN, shape: "round" }),
      findings: [{ on: "F B" }],
    },
    {
      name: "just over 35 lb without a marking",
      drawing: () => fan(FAN_BOX, { weightLb: 35.5 }),
      findings: [
        {
          on: "F B",
          data: { weightLb: 35.5, mostLb: 35 },
          says: ["B may carry 35 lb of fan, as it is marked for no more"],
        },
      ],
    },
    {
      name: "more than the marking",
      drawing: () => fan({ ...FAN_BOX, fanWeightLb: 50 }, { weightLb: 51 }),
      findings: [{ on: "F B", data: { weightLb: 51, mostLb: 50 } }],
    },
    {
      name: "over 70 lb, whatever the marking",
      drawing: () => fan({ ...FAN_BOX, fanWeightLb: 100 }, { weightLb: 71 }),
      findings: [{ on: "F B", data: { weightLb: 71, mostLb: 70 }, says: ["Hang it from the building."] }],
    },
    {
      name: "on an assumed listing",
      drawing: () => fan({ ...PLAIN, evidence: { listedFor: "assumed" } }),
      findings: [{ on: "F B", basis: "assumed" }],
    },
  ],
  cannotTell: [
    {
      name: "listing not recorded",
      drawing: () => fan({}, { weightLb: 30 }),
      on: ["F B"],
      missing: "whether B is listed for fans",
    },
  ],
});

test("sections: sourced where a source answers for the edition", () => {
  const confidence = (edition: 2017 | 2020) =>
    checkDocument(fan(PLAIN, {}, edition).project()).findings.find(({ rule }) => rule === "fan-box-required")?.section;
  expect(confidence(2017)).toEqual({ section: "314.27(C)", confidence: "sourced" });
  expect(confidence(2020)).toEqual({ section: "314.27(C)", confidence: "from-memory" });
});

test.each([
  ["listed for fans", fan(PLAIN, { weightLb: 30 }), undefined],
  ["fans of 50 lb", fan(FAN_BOX, { weightLb: 40 }), 50],
  ["fans of 70 lb", fan(PLAIN, { weightLb: 60 }), 70],
  ["from the building", fan(PLAIN, { weightLb: 90 }), undefined],
])("its offer clears it: %s", (offer, drawing, marked) => {
  const { project } = tryFix(drawing, "fan-box-required", "F", { offer });
  expect((project.proposed?.enclosures["B" as never] as Box | undefined)?.fanWeightLb).toBe(marked);
});

test("no box carries 90 lb, so none is offered", () => {
  const { offers } = findingOn(proposing(fan(PLAIN, { weightLb: 90 })), "fan-box-required", "F");
  expect(offers?.map(({ title }) => title)).toEqual(["Hang F from the building, so that its box carries nothing"]);
});
