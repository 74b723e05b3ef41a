import { describe, expect, test } from "vitest";
import { metalBoxUnbonded } from "../../shared-model/rules/checks/metal-box-unbonded.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const BARE = { colour: "bare" } as const;

/** A metal box with one cable from open country and a receptacle; the ground is capped. */
const oneCable = (item = "nm-12-2-g", box: Parameters<Drawing["box"]>[2] = {}): Drawing =>
  new Drawing()
    .box("B", 18, box)
    .cable("C", item, "country", "B")
    .device("R", "receptacle-15", "B")
    .put({ "C.bk@B": "R.H1", "C.wh@B": "R.N1" });

/** An old cable without ground from the panel, and a newer one with ground going on from the box. */
const oldSupply = (): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q", 15)
    .box("A", 18)
    .box("Z", 18)
    .cable("V1", "nm-14-2", "P", "A")
    .cable("V2", "nm-14-2-g", "A", "Z")
    .device("RA", "receptacle-two-slot", "A")
    .device("RZ", "receptacle-15", "Z")
    .put({ "V1.bk@P": "Q.OUT", "V1.wh@P": "P-NB.BAR" })
    .put({ "V1.bk@A": "RA.H1", "V1.wh@A": "RA.N1", "V2.bk@A": "RA.H2", "V2.wh@A": "RA.N2" })
    .put({ "V2.bk@Z": "RZ.H1", "V2.wh@Z": "RZ.N1" });

/** Armoured cable with a bonding strip from the panel, and no ground conductor of its own. */
const armoured = (means: "external-connector" | "none" = "external-connector"): Drawing => {
  const drawing = new Drawing()
    .panel()
    .breaker("Q", 20)
    .box("B", 18)
    .cable("C", "armoured-12-2-old", "P", "B")
    .setEntry("C", "B", { means })
    .device("R", "receptacle-15", "B", { selfGrounding: true })
    .put({ "C.bk@P": "Q.OUT", "C.wh@P": "P-NB.BAR", "C.bk@B": "R.H1", "C.wh@B": "R.N1" });
  const cable = drawing.cables.C;
  if (cable !== undefined) cable.construction = "armoured-bonded";
  return drawing;
};

ruleTester(metalBoxUnbonded, {
  passes: [
    { name: "every box on a pigtail", drawing: () => laundryProposed() },
    { name: "one bond in the laundry box as found", drawing: () => laundryAsFound() },
    { name: "a nonmetallic box needs no bond", drawing: () => oneCable("nm-12-2-g", { material: "nonmetallic" }) },
    { name: "an old cable without ground", drawing: () => oneCable("nm-12-2") },
    { name: "a ground that comes from no source is none", drawing: () => oldSupply().put({ "V2.cu@Z": "RZ.G" }) },
    { name: "the ground itself under the screw of the box", drawing: () => oneCable().put({ "C.cu@B": "bond" }) },
    {
      name: "material not recorded, and somebody found its bond",
      drawing: () => oneCable("nm-12-2-g", { material: "unknown" }).put({ "C.cu@B": "bond" }),
    },
    { name: "armour with a bonding strip, held by its connector", drawing: () => armoured() },
    {
      name: "parted for the survey",
      drawing: () => oneCable("nm-12-2-g", { beingSurveyed: true }),
    },
    {
      name: "a spare cable with all of its ends capped, in a box without circuits",
      drawing: () => new Drawing().box("B", 18).cable("C", "nm-12-2-g", "country", "B"),
    },
    { name: "a panel is not a box", drawing: () => new Drawing().panel().cable("C", "nm-12-2-g", "P", "country") },
  ],
  finds: [
    {
      name: "the pigtail to the laundry box is missing",
      drawing: () => laundryProposed().removeJumper("f"),
      findings: [{ on: "B1", severity: "violation", says: ["C1 bare, C2 bare, C3 bare, C4 bare and C5 bare"] }],
    },
    { name: "the only ground is capped", drawing: () => oneCable(), findings: [{ on: "B" }] },
    {
      name: "grounded through the yoke only",
      drawing: () => oneCable().setDevice("R", { selfGrounding: true }).put({ "C.cu@B": "R.G" }),
      findings: [{ on: "B" }],
    },
    {
      name: "joined to a ground that leads nowhere, with one beside it that does not",
      drawing: () => laundryProposed().removeJumper("g"),
      findings: [{ on: "B1", says: ["C1 bare, C2 bare, C3 bare and C4 bare"] }],
    },
    {
      name: "its pigtail hangs",
      drawing: () => laundryProposed().put({ "f.1": "cap" }),
      findings: [{ on: "B1" }],
    },
    {
      name: "not parted, though the survey goes on",
      drawing: () => laundryProposed().removeJumper("f").setBox("B1", { beingSurveyed: true }),
      findings: [{ on: "B1" }],
    },
    {
      name: "a junction box of two circuits",
      drawing: () => multiwire().removeJumper("jbond"),
      findings: [{ on: "JB", says: ["JB is metal"] }],
    },
  ],
  cannotTell: [
    {
      name: "material not recorded",
      drawing: () => oneCable("nm-12-2-g", { material: "unknown" }),
      on: ["B"],
      missing: "the material of B",
    },
  ],
});

describe("its fix", () => {
  const RULE = "metal-box-unbonded";

  test("brings a pigtail from a splice that takes one more", () => {
    const { title, left } = tryFix(laundryProposed().removeJumper("f"), RULE, "B1");
    expect(title).toBe("Bring a pigtail from E2 to the ground screw of B1");
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
  });

  test("gives a full splice a connector that takes one more", () => {
    const drawing = laundryAsFound().removeJumper("t").setSplice("Z", { connector: "push-in-6" });
    const { project } = tryFix(drawing, RULE, "B1");
    expect(project.proposed?.enclosures["B1" as never]?.splices["Z" as never]?.connector).toBe("push-in-8");
  });

  test("parts a splice that no connector takes with one more", () => {
    const drawing = new Drawing().box("B", 42).splice("E", "B", "push-in-8");
    for (let index = 0; index < 8; index++)
      drawing.cable(`C${index}`, "nm-12-2-g", "country", "B").put({ [`C${index}.cu@B`]: "E" });
    const { title, project } = tryFix(drawing, RULE, "B");
    expect(title).toContain("E becomes two splices with one link");
    expect(Object.keys(project.proposed?.enclosures["B" as never]?.splices ?? {})).toHaveLength(2);
  });

  test("lands the only ground on the box", () => {
    expect(tryFix(oneCable(), RULE, "B").title).toBe("Land C bare on the ground screw of B");
  });

  test("takes the ground off the green screw into a splice with two pigtails", () => {
    const { left } = tryFix(oneCable().put({ "C.cu@B": "R.G" }), RULE, "B");
    expect(left).toEqual([]);
  });

  test("joins a pigtail that hangs", () => {
    const { title, project } = tryFix(laundryProposed().put({ "f.1": "cap" }), RULE, "B1");
    expect(title).toBe("Join the pigtail of the ground screw of B1 to E2");
    expect(Object.keys(project.proposed?.enclosures["B1" as never]?.jumpers ?? {}).sort()).toEqual([..."abcdefg"]);
  });

  test("splices a capped ground with a pigtail that hangs", () => {
    const drawing = oneCable().jumper("t", "B", "cap", "bond", BARE);
    expect(tryFix(drawing, RULE, "B").title).toBe("Splice C bare with the pigtail of the ground screw of B");
  });

  test("is withheld where it would spread what touches the ground or the metal", () => {
    expect(fixOf(laundryProposed().put({ "C5.cu@B6": "R5.N2" }), RULE, "B6")).toBeUndefined();
    const drawing = laundryProposed().put({ "B6b.1": "R5.H2" }).put({ "C5.bk@B1": "cap" });
    expect(fixOf(drawing, RULE, "B6")).toBeUndefined();
  });

  test("is withheld where no connector joins what would be in it", () => {
    const drawing = oneCable("al-10-2-g").put({ "C.cu@B": "R.G" });
    expect(fixOf(drawing, RULE, "B")).toBeUndefined();
  });
});
