import { describe, expect, test } from "vitest";
import { spliceNoConnector } from "../../shared-model/rules/checks/splice-no-connector.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

ruleTester(spliceNoConnector, {
  passes: [
    { name: "every splice in a connector", drawing: () => laundryProposed() },
    { name: "a connector that is too small is another matter", drawing: () => laundryAsFound() },
    {
      name: "one conductor alone is not a joint",
      drawing: () => laundryProposed().put({ "C4.wh@B5": "cap" }).setSplice("B5n", { connector: "none" }),
    },
  ],
  finds: [
    {
      name: "tape alone",
      drawing: () => laundryProposed().setSplice("HD", { connector: "taped", evidence: { connector: "seen" } }),
      findings: [{ on: "HD", severity: "danger", data: { conductors: 3 }, basis: "seen", says: ["with tape alone"] }],
    },
    {
      name: "two conductors and nothing",
      drawing: () => laundryProposed().setSplice("B5n", { connector: "none" }),
      findings: [{ on: "B5n", data: { conductors: 2 }, says: ["without a connector"] }],
    },
  ],
  cannotTell: [
    {
      name: "the connector is not recorded",
      drawing: () => laundryProposed().setSplice("HD", { connector: "unknown" }),
      on: ["HD"],
      missing: "the connector of HD in B1",
    },
    {
      name: "soldered: how it was made is not recorded",
      drawing: () => laundryProposed().setSplice("HD", { connector: "soldered" }),
      on: ["HD"],
      missing: "the connector of HD in B1",
    },
  ],
});

/** Cables from open country with their blacks in one taped joint. */
const taped = (...items: readonly string[]): Drawing => {
  const drawing = new Drawing().box("J", 42).splice("S", "J", "taped");
  for (const [index, item] of items.entries())
    drawing.cable(`C${index}`, item, "country", "J").put({ [`C${index}.bk@J`]: "S" });
  return drawing;
};

describe("its fix", () => {
  const RULE = "splice-no-connector";
  const connectorOf = (drawing: Drawing, on: string, box: string): string | undefined =>
    tryFix(drawing, RULE, on).project.proposed?.enclosures[box as never]?.splices[on as never]?.connector;

  test("puts on the smallest twist-on that takes them", () => {
    const drawing = laundryProposed().setSplice("HD", { connector: "taped" });
    expect(connectorOf(drawing, "HD", "B1")).toBe("twist-medium");
    expect(tryFix(drawing, RULE, "HD").title).toBe("Join the 3 conductors again: HD gets “Twist-on, medium”");
  });

  test("puts one listed for aluminium with copper on both", () => {
    expect(connectorOf(taped("al-12-2-g", "nm-12-2-g"), "S", "J")).toBe("al-cu-listed");
  });

  test("makes two splices with a link where no connector takes so many", () => {
    const drawing = taped(...Array.from({ length: 9 }, () => "nm-12-2-g"));
    const { title, project } = tryFix(drawing, RULE, "S");
    expect(title).toBe("Join the 9 conductors again: S becomes two splices with one link");
    const box = project.proposed?.enclosures["J" as never];
    // Four and the link stay, five and the link go: large takes five of 12 at most.
    expect(Object.values(box?.splices ?? {}).map(({ connector }) => connector)).toEqual(["twist-large", "push-in-6"]);
  });

  test("is withheld where nothing of the stock joins them", () => {
    expect(fixOf(taped("al-12-2-g", "al-12-2-g"), RULE, "S")).toBeUndefined();
  });
});
