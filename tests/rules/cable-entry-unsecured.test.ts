import { describe, expect, test } from "vitest";
import type { Entry } from "../../shared-model/model/enclosure.ts";
import { asId, type PassThroughId } from "../../shared-model/model/ids.ts";
import { cableEntryUnsecured } from "../../shared-model/rules/checks/cable-entry-unsecured.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const PLASTIC = { material: "nonmetallic", shape: "device" } as const;

/** A cable that nothing holds. Facts of its entry are for the box without a clamp. */
const unheld = (
  box: Parameters<Drawing["box"]>[2],
  facts: Partial<Entry> = {},
  item = "nm-12-2-g",
  edition: 2017 | 2020 | 2023 = 2020,
): Drawing =>
  new Drawing(edition)
    .box("B", 20, box)
    .cable("C", item, "country", "B")
    .setEntry("C", "B", { means: "none", ...facts });

const fastened = (within: number, inside: number): Partial<Entry> => ({
  securedWithinIn: inches(within),
  sheathInsideIn: inches(inside),
});

/** C runs on through B unbroken, by an entry that does not hold it. */
function passing(): Drawing {
  const drawing = new Drawing().box("A", 20).box("B", 20).box("Z", 20).cable("C", "nm-12-2-g", "A", "Z");
  const entry = (id: string, means: Entry["means"]): Entry => ({ id: asId(id), means, order: 0 });
  const pass = asId<PassThroughId>("pass");
  const { entries } = drawing.at("B");
  entries[asId("in") as keyof typeof entries] = entry("in", "none");
  entries[asId("out") as keyof typeof entries] = entry("out", "external-connector");
  return drawing.setBox("B", {
    passThroughs: {
      [pass]: { id: pass, cable: asId("C"), conductors: [asId("bk")], entryIn: asId("in"), entryOut: asId("out") },
    },
  });
}

ruleTester(cableEntryUnsecured, {
  passes: [
    { name: "every cable held", drawing: () => laundryProposed() },
    {
      name: "a single-gang nonmetallic box: fastened 8 in. off, 1/4 in. of sheath inside",
      drawing: () => unheld(PLASTIC, fastened(8, 0.25)),
    },
    { name: "knob-and-tube comes in by bushings", drawing: () => unheld({}, {}, "knob-tube-12") },
    {
      name: "an opening by which nothing comes in",
      drawing: () => {
        const drawing = new Drawing().box("B", 20);
        const { entries } = drawing.at("B");
        entries[asId("e") as keyof typeof entries] = { id: asId("e"), means: "none", order: 0 };
        return drawing;
      },
    },
  ],
  finds: [
    {
      name: "a metal box, however near the fastening",
      drawing: () => unheld({}, fastened(4, 1)),
      findings: [
        {
          on: "C B",
          severity: "violation",
          says: ["C enters B with nothing to hold it. Put it under a clamp of the box, or fit a cable connector"],
        },
      ],
    },
    {
      name: "a box without clamps",
      drawing: () => unheld({ internalClamps: "none" }),
      findings: [{ on: "C B", says: ["nothing to hold it. Fit a cable connector: it holds the cable from outside"] }],
    },
    {
      name: "one cable of the laundry circuit",
      drawing: () => laundryProposed().setEntry("C3", "B4", { means: "none" }),
      findings: [{ on: "C3 B4" }],
    },
    {
      name: "fastened just past 8 in.",
      drawing: () => unheld(PLASTIC, fastened(8.25, 0.25)),
      findings: [{ on: "C B", says: ["fastened 8.25 in. away where 8 in. is the most"] }],
    },
    {
      name: "sheath just short of 1/4 in.",
      drawing: () => unheld(PLASTIC, fastened(8, 0.125)),
      findings: [{ on: "C B", says: ["0.125 in. of sheath is inside where 0.25 in. is the least"] }],
    },
    {
      name: "too far off settles it, whatever the sheath and the material",
      drawing: () => unheld({ ...PLASTIC, material: "unknown" }, { securedWithinIn: inches(12) }),
      findings: [{ on: "C B" }],
    },
    { name: "two gangs", drawing: () => unheld({ ...PLASTIC, gangs: 2 }, fastened(4, 1)), findings: [{ on: "C B" }] },
    {
      name: "a round ceiling box",
      drawing: () => unheld({ ...PLASTIC, shape: "round" }, fastened(4, 1)),
      findings: [{ on: "C B" }],
    },
    {
      name: "armoured cable in a nonmetallic box",
      drawing: () => unheld(PLASTIC, fastened(4, 1), "armoured-12-2-g"),
      findings: [{ on: "C B" }],
    },
    {
      name: "two cables by one opening, found once",
      drawing: () => {
        const drawing = unheld({}).cable("D", "nm-12-2-g", "country", "B");
        const cable = drawing.cables.D;
        if (cable !== undefined) cable.sides = { ...cable.sides, b: { enclosure: asId("B"), entry: asId("C-B") } };
        return drawing;
      },
      findings: [{ on: "C D B", data: { cables: 2 }, says: ["C and D enter B with nothing to hold them"] }],
    },
    { name: "a cable that passes through unbroken", drawing: () => passing(), findings: [{ on: "C B" }] },
    {
      name: "a panel",
      drawing: () =>
        new Drawing().panel().cable("C", "nm-12-2-g", "P", "country").setEntry("C", "P", { means: "none" }),
      findings: [{ on: "C P", says: ["C enters P with nothing to hold it. Fit a cable connector."] }],
    },
  ],
  cannotTell: [
    {
      name: "a single-gang nonmetallic box, nothing else recorded: asked once for all its cables",
      drawing: () => unheld(PLASTIC).cable("D", "nm-12-2-g", "country", "B").setEntry("D", "B", { means: "none" }),
      on: ["B"],
      missing: "how near to the box the cable is fastened and how far the sheath reaches inside",
    },
    {
      name: "material not recorded",
      drawing: () => unheld({ shape: "device", material: "unknown" }, fastened(8, 0.25)),
      on: ["B"],
      missing: "whether the box is nonmetallic",
    },
  ],
});

test("sections: cabinets have their own, and the subdivision of 2023 is doubtful", () => {
  const sectionOf = (drawing: Drawing) =>
    checkDocument(drawing.project()).findings.find(({ rule }) => rule === "cable-entry-unsecured")?.section;
  const panel = new Drawing().panel().cable("C", "nm-12-2-g", "P", "country").setEntry("C", "P", { means: "none" });
  expect(sectionOf(panel)?.section).toBe("312.5(C)");
  expect(sectionOf(unheld({}))).toEqual({ section: "314.17, 334.30", confidence: "from-memory" });
  expect(sectionOf(unheld({}, {}, "nm-12-2-g", 2023))?.confidence).toBe("doubtful");
});

describe("its fix", () => {
  test("fits a connector outside, which adds nothing to box fill", () => {
    const drawing = laundryProposed().setEntry("C3", "B4", { means: "none" });
    const { title, project } = tryFix(drawing, "cable-entry-unsecured", "C3");
    expect(title).toBe("Fit a cable connector for C3 at B4");
    expect(project.proposed?.enclosures["B4" as never]?.entries["C3-B4" as never]?.means).toBe("external-connector");
  });

  test("fits one marked for as many cables as come in", () => {
    const drawing = unheld({}).cable("D", "nm-12-2-g", "country", "B");
    const cable = drawing.cables.D;
    if (cable !== undefined) cable.sides = { ...cable.sides, b: { enclosure: asId("B"), entry: asId("C-B") } };
    const { project } = tryFix(drawing, "cable-entry-unsecured", "C");
    expect(project.proposed?.enclosures["B" as never]?.entries["C-B" as never]).toMatchObject({
      means: "external-connector",
      markedForCables: 2,
    });
  });
});
