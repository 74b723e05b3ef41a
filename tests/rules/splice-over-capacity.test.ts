import { expect, test } from "vitest";
import { spliceOverCapacity } from "../../shared-model/rules/checks/splice-over-capacity.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** The blacks of some cables from open country in one splice; `items` are cables of the stock. */
function joint(connector: string, ...items: readonly string[]): Drawing {
  const drawing = new Drawing().box("J", 42).splice("S", "J", connector);
  for (const [index, item] of items.entries())
    drawing.cable(`C${index}`, item, "country", "J").put({ [`C${index}.bk@J`]: "S" });
  return drawing;
}
const of = (count: number, item: string): readonly string[] => Array.from({ length: count }, () => item);

ruleTester(spliceOverCapacity, {
  passes: [
    { name: "the proposed make-up", drawing: () => laundryProposed() },
    { name: "five of 12 in a large twist-on", drawing: () => joint("twist-large", ...of(5, "nm-12-2-g")) },
    { name: "two of 12 in a large twist-on, the least", drawing: () => joint("twist-large", ...of(2, "nm-12-2-g")) },
    {
      name: "three of 12 with three of 14",
      drawing: () => joint("twist-large", ...of(3, "nm-12-2-g"), ...of(3, "nm-14-2-g")),
    },
    { name: "one in every port", drawing: () => joint("lever-3", "nm-12-2-g", "nm-14-2-g", "nm-12-2-g") },
    {
      name: "aluminium and copper in a connector listed for them",
      drawing: () => joint("al-cu-listed", "al-12-2-g", "nm-12-2-g"),
    },
    { name: "tape is the business of another rule", drawing: () => joint("taped", ...of(9, "nm-12-2-g")) },
    { name: "one conductor waiting for others", drawing: () => joint("twist-large", "nm-12-2-g") },
  ],
  finds: [
    {
      name: "the laundry box as found: six blacks, six whites, seven grounds",
      drawing: () => laundryAsFound(),
      findings: [
        { on: "X", data: { conductors: 6, set: "6 × 12", connector: "twist-large" }, says: ["takes 2 to 5 × 12"] },
        { on: "Y", data: { conductors: 6, set: "6 × 12", connector: "twist-large" } },
        { on: "Z", data: { conductors: 7, set: "7 × 12", connector: "twist-large" } },
      ],
    },
    {
      name: "six of 12 in a large twist-on, one too many",
      drawing: () => joint("twist-large", ...of(6, "nm-12-2-g")),
      findings: [{ on: "S" }],
    },
    {
      name: "two of 14 in a large twist-on, one too few",
      drawing: () => joint("twist-large", ...of(2, "nm-14-2-g")),
      findings: [{ on: "S", says: ["takes 3 to 6 × 14"] }],
    },
    {
      name: "a mixture that no row names",
      drawing: () => joint("twist-medium", ...of(2, "nm-12-2-g"), "nm-14-2-g"),
      findings: [{ on: "S", data: { conductors: 3, set: "2 × 12 and 1 × 14", connector: "twist-medium" } }],
    },
    {
      name: "more conductors than ports",
      drawing: () => joint("lever-3", ...of(4, "nm-12-2-g")),
      findings: [{ on: "S", says: ["up to 3, one a port"] }],
    },
    {
      name: "stranded in a port for solid conductors",
      drawing: () => joint("push-in-2", ...of(2, "nm-12-2-g")).setConductors("C1", { stranded: true }),
      findings: [{ on: "S", says: ["12 stranded"] }],
    },
    {
      name: "aluminium in a connector for copper",
      drawing: () => joint("twist-large", "al-12-2-g", "nm-12-2-g"),
      findings: [{ on: "S", says: ["1 × 12 aluminium", "copper only"] }],
    },
    {
      name: "a hot in a connector for grounds",
      drawing: () => joint("crimp-ground", ...of(2, "nm-12-2-g")),
      findings: [{ on: "S", says: ["grounds only"] }],
    },
    {
      name: "a set that no connector of the stock takes",
      drawing: () => joint("twist-large", ...of(9, "nm-12-2-g")),
      findings: [{ on: "S", says: ["Split it into two splices"] }],
    },
  ],
  cannotTell: [
    {
      name: "the connector is not recorded",
      drawing: () => joint("unknown", ...of(3, "nm-12-2-g")),
      on: ["S"],
      missing: "the connector of S in J",
    },
  ],
});

test("in proposed the next larger connector of its kind is offered, as found nothing is", () => {
  const project = joint("twist-medium", ...of(4, "nm-12-2-g")).project();
  const [asFound] = checkDocument(project).findings.filter(({ rule }) => rule === "splice-over-capacity");
  expect(asFound?.fix).toBeUndefined();
  const proposed = checkDocument({ ...project, proposed: project.asFound }, "proposed");
  const [finding] = proposed.findings.filter(({ rule }) => rule === "splice-over-capacity");
  expect(finding?.fix?.call).toEqual({
    command: "change-connector",
    args: { state: "proposed", enclosure: "J", splice: "S", connector: "twist-large" },
  });
});
