import { describe, expect, test } from "vitest";
import { spliceOverCapacity } from "../../shared-model/rules/checks/splice-over-capacity.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
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
  cannotTell: { never: "a connector that is not recorded is asked for once, by the rule that wants one at all" },
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

describe("its fix", () => {
  const RULE = "splice-over-capacity";
  const splicesOf = (drawing: Drawing) => {
    const { title, project } = tryFix(drawing, RULE, "S");
    const box = project.proposed?.enclosures["J" as never];
    return {
      title,
      connectors: Object.values(box?.splices ?? {}).map(({ connector }) => connector),
      links: Object.values(box?.jumpers ?? {}).map(({ awg, colour }) => `${awg} ${colour}`),
    };
  };

  test("changes the connector, in its kind if it can", () => {
    expect(splicesOf(joint("lever-3", ...of(4, "nm-12-2-g")))).toEqual({
      title: "Change the connector: S gets “Lever, 5 ports”",
      connectors: ["lever-5"],
      links: [],
    });
    expect(splicesOf(joint("lever-5", ...of(6, "nm-12-2-g"))).connectors).toEqual(["push-in-6"]);
  });

  test("makes two splices with one link of nine, five here and four there", () => {
    expect(splicesOf(joint("push-in-8", ...of(9, "nm-12-2-g")))).toEqual({
      title: "Make two splices of S with one link",
      connectors: ["push-in-8", "push-in-6"],
      links: ["12 black"],
    });
  });

  test("parts sizes that no connector takes together, with a link of the thicker", () => {
    const mixed = joint("twist-large", ...of(4, "nm-10-2-g"), ...of(2, "nm-14-2-g"));
    expect(fixOf(mixed, RULE, "S")).toBeUndefined();
    const sizes = joint("twist-large", ...of(2, "nm-10-2-g"), ...of(3, "nm-12-2-g"), "nm-12-2-g", "nm-12-2-g");
    expect(splicesOf(sizes).links).toEqual(["10 black"]);
  });

  test("counts the link in both: eight of strands are parted, nine would take three splices", () => {
    const strands = (count: number): Drawing => {
      const drawing = joint("twist-large", ...of(count, "nm-12-2-g"));
      for (const name of Object.keys(drawing.cables)) drawing.setConductors(name, { stranded: true });
      return drawing;
    };
    expect(splicesOf(strands(8)).connectors).toEqual(["twist-large", "twist-large"]);
    expect(fixOf(strands(9), RULE, "S")).toBeUndefined();
  });

  test("is withheld where grounds are among circuit conductors and it would have to be parted", () => {
    const drawing = joint("push-in-8", ...of(9, "nm-12-2-g")).put({ "C0.bk@J": "cap", "C0.cu@J": "S" });
    expect(fixOf(drawing, RULE, "S")).toBeUndefined();
  });
});
