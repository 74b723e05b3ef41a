import { describe, expect, test } from "vitest";
import { deviceEgcMissing } from "../../shared-model/rules/checks/device-egc-missing.ts";
import { checkDocument } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

type BoxFacts = Parameters<Drawing["box"]>[2];

/** One device in a box with a cable from open country; the ground of the cable is at the metal, or capped without it. */
function oneDevice(type: string, box: BoxFacts = {}, device: Parameters<Drawing["device"]>[3] = {}): Drawing {
  const drawing = new Drawing()
    .box("B", 20, box)
    .cable("C", "nm-12-2-g", "country", "B")
    .device("D", type, "B", device)
    .splice("H", "B", "lever-2")
    .put({ "C.bk@B": "H" });
  return box?.material === "nonmetallic" ? drawing : drawing.put({ "C.cu@B": "bond" });
}

const PLASTIC = { material: "nonmetallic", shape: "device" } as const;

ruleTester(deviceEgcMissing, {
  passes: [
    { name: "every device on a pigtail", drawing: () => laundryProposed() },
    { name: "the laundry circuit as found", drawing: () => laundryAsFound() },
    {
      name: "the ground of the cable on the green screw itself",
      drawing: () => oneDevice("receptacle-15", PLASTIC).put({ "C.cu@B": "D.G" }),
    },
    {
      name: "a pigtail from the screw of a bonded metal box",
      drawing: () => oneDevice("receptacle-15").jumper("g", "B", "bond", "D.G", { colour: "bare" }),
    },
    {
      name: "a self-grounding receptacle in a bonded metal box",
      drawing: () => oneDevice("receptacle-15", {}, { selfGrounding: true }),
    },
    { name: "a snap switch in a bonded metal box", drawing: () => oneDevice("switch-single-pole") },
    { name: "a dimmer in a bonded metal box", drawing: () => oneDevice("dimmer") },
    {
      name: "a snap switch in a metal box that is not bonded: the box is the fault",
      drawing: () => oneDevice("switch-single-pole").put({ "C.cu@B": "cap" }),
    },
    { name: "a two-slot receptacle has no ground screw", drawing: () => oneDevice("receptacle-two-slot") },
    { name: "an alarm has no ground lead", drawing: () => oneDevice("smoke-alarm") },
    {
      name: "an old cable without ground",
      drawing: () => new Drawing().box("B", 18).cable("C", "nm-12-2", "country", "B").device("D", "receptacle-15", "B"),
    },
    {
      name: "grounds that come from no source",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q", 15)
          .box("A", 18, PLASTIC)
          .box("Z", 18, PLASTIC)
          .cable("V", "nm-14-2", "P", "A")
          .cable("W", "nm-14-2-g", "A", "Z")
          .device("R", "gfci-receptacle-15", "A")
          .put({ "V.bk@P": "Q.OUT", "V.bk@A": "R.LINE_H", "W.bk@A": "R.LOAD_H" }),
    },
    { name: "parted for the survey", drawing: () => oneDevice("receptacle-15", { ...PLASTIC, beingSurveyed: true }) },
  ],
  finds: [
    {
      name: "the pigtail of a ground-fault receptacle is missing",
      drawing: () => laundryProposed().removeJumper("e"),
      findings: [{ on: "R1b", severity: "violation", says: ["nothing is on its ground screw"] }],
    },
    {
      name: "its pigtail hangs",
      drawing: () => laundryProposed().put({ "e.1": "loose" }),
      findings: [{ on: "R1b", says: ["e bare is on its ground screw"] }],
    },
    {
      name: "a receptacle in a bonded metal box: the screws of its yoke are no ground",
      drawing: () => oneDevice("receptacle-15"),
      findings: [{ on: "D" }],
    },
    {
      name: "a self-grounding contact in a nonmetallic box touches nothing",
      drawing: () => oneDevice("receptacle-15", PLASTIC, { selfGrounding: true }),
      findings: [{ on: "D" }],
    },
    {
      name: "a snap switch in a nonmetallic box",
      drawing: () => oneDevice("switch-single-pole", PLASTIC),
      findings: [{ on: "D" }],
    },
    {
      name: "a switch and receptacle on one yoke in a metal box",
      drawing: () => oneDevice("switch-receptacle"),
      findings: [{ on: "D" }],
    },
    { name: "an exhaust fan", drawing: () => oneDevice("fan-exhaust"), findings: [{ on: "D" }] },
    {
      name: "a luminaire, which may have no metal to touch",
      drawing: () => oneDevice("luminaire-60"),
      findings: [{ on: "D", severity: "caution", says: ["unless no metal of the luminaire can be touched"] }],
    },
  ],
  cannotTell: [
    {
      name: "a switch in a box of unknown material",
      drawing: () => oneDevice("switch-single-pole", { material: "unknown" }),
      on: ["D"],
      missing: "the material of B",
    },
    {
      name: "a self-grounding receptacle in a box of unknown material",
      drawing: () => oneDevice("receptacle-15", { material: "unknown" }, { selfGrounding: true }),
      on: ["D"],
      missing: "the material of B",
    },
  ],
});

test("sections follow what the device is", () => {
  const sectionOf = (type: string): string | undefined =>
    checkDocument(oneDevice(type, PLASTIC).project()).findings.find(({ rule }) => rule === "device-egc-missing")
      ?.section?.section;
  expect(["receptacle-15", "switch-3way", "luminaire-60", "appliance-120"].map(sectionOf)).toEqual([
    "250.146",
    "404.9(B)",
    "410.44",
    "250.110, 250.134",
  ]);
});

describe("its fix", () => {
  const RULE = "device-egc-missing";

  test("brings a pigtail from the splice of the grounds", () => {
    const { title, left } = tryFix(laundryProposed().removeJumper("e"), RULE, "R1b");
    expect(title).toBe("Bring a pigtail from E2 to the ground screw of R1b");
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
  });

  test("joins a pigtail that hangs", () => {
    const { title } = tryFix(laundryProposed().put({ "e.1": "loose" }), RULE, "R1b");
    expect(title).toBe("Join the pigtail of the ground screw of R1b to E2");
  });

  test("lands a single ground on the green screw", () => {
    expect(tryFix(oneDevice("receptacle-15", PLASTIC), RULE, "D").title).toBe("Land C bare on the ground screw of D");
  });

  test("brings a pigtail from the screw of the box", () => {
    const { title } = tryFix(oneDevice("receptacle-15"), RULE, "D");
    expect(title).toBe("Bring a pigtail from the ground screw of B to the ground screw of D");
  });

  test("makes a splice of a ground that is on another device", () => {
    const drawing = oneDevice("receptacle-15", PLASTIC).device("S", "switch-single-pole", "B").put({ "C.cu@B": "D.G" });
    expect(tryFix(drawing, RULE, "S").left).toEqual(["fill-nearly-full B"]);
  });

  test("takes the least that a screw takes where the ground is thinner", () => {
    const drawing = new Drawing()
      .box("B", 20, PLASTIC)
      .cable("C", "nm-14-2-reduced-g", "country", "B")
      .cable("E", "nm-14-2-reduced-g", "country", "B")
      .device("D", "receptacle-15", "B")
      .splice("G", "B", "lever-2")
      .put({ "C.bk@B": "D.H1", "C.cu@B": "G", "E.bk@B": "D.H2", "E.cu@B": "G" });
    const { project } = tryFix(drawing, RULE, "D");
    const box = project.proposed?.enclosures["B" as never];
    expect(Object.values(box?.jumpers ?? {}).map(({ awg }) => awg)).toEqual(["14"]);
    expect(box?.splices["G" as never]?.connector).toBe("lever-3");
  });

  test("is withheld while something else is under the screw", () => {
    const drawing = laundryProposed()
      .put({ "e.1": "cap", "e.2": "cap" })
      .jumper("w", "B1", "cap", "R1b.G", { colour: "bare" })
      .jumper("v", "B1", "cap", "R1b.G", { colour: "bare" });
    expect(fixOf(drawing, RULE, "R1b")).toBeUndefined();
  });
});
