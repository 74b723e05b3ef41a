import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { egcMissing } from "../../shared-model/rules/checks/egc-missing.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { plan } from "./two-states.ts";

/** A receptacle at the end of one cable from a breaker. */
function fed(item: string, type = "receptacle-15", more: Partial<Device> = {}): Drawing {
  const { name = "R" } = more;
  const [hot, neutral] = type.startsWith("gfci") ? ["LINE_H", "LINE_N"] : ["H1", "N1"];
  return new Drawing()
    .panel()
    .breaker("Q", 15)
    .box("A", 60, { material: "nonmetallic" })
    .cable("C", item, "P", "A")
    .device(name, type, "A", more)
    .splice("G", "A", "twist-medium")
    .put({ "C.bk@P": "Q.OUT", "C.wh@P": "P-NB.BAR" })
    .put({ "C.bk@A": `${name}.${hot}`, "C.wh@A": `${name}.${neutral}` });
}

const grounded = (): Drawing => fed("nm-14-2-g").put({ "C.cu@P": "P-GB.BAR", "C.cu@A": "R.G" });

/** One more receptacle N in a box B behind the screws of R. */
const extended = (drawing: Drawing, item: string): Drawing =>
  drawing
    .box("B", 60, { material: "nonmetallic" })
    .cable("E", item, "A", "B")
    .device("N", "receptacle-15", "B")
    .put({ "E.bk@A": "R.H2", "E.wh@A": "R.N2", "E.bk@B": "N.H1", "E.wh@B": "N.N1" })
    .put(item.endsWith("-g") ? { "E.cu@B": "N.G" } : {});

/** The same behind the LOAD of a ground-fault receptacle on an old cable. */
const behindFace = (item = "nm-14-2"): Drawing =>
  fed(item, "gfci-receptacle-15")
    .box("B", 60, { material: "nonmetallic" })
    .cable("E", "nm-14-2-g", "A", "B")
    .device("N", "receptacle-15", "B")
    .put({ "E.bk@A": "R.LOAD_H", "E.wh@A": "R.LOAD_N", "E.bk@B": "N.H1", "E.wh@B": "N.N1", "E.cu@B": "N.G" });

ruleTester(egcMissing, {
  passes: [
    { name: "grounds everywhere", drawing: () => laundryProposed() },
    { name: "the laundry circuit as found", drawing: () => laundryAsFound() },
    { name: "a ground of its own", drawing: grounded },
    { name: "two slots on an old cable", drawing: () => fed("nm-14-2", "receptacle-two-slot") },
    { name: "three slots that nothing protects, which another rule says", drawing: () => fed("nm-14-2") },
    { name: "nothing feeds it", drawing: () => fed("nm-14-2").put({ "C.bk@P": "cap" }) },
    {
      name: "single conductors of a raceway, which may be the ground",
      drawing: () =>
        new Drawing()
          .panel()
          .breaker("Q", 15)
          .box("A", 60)
          .cable("H", "single-12-black", "P", "A")
          .cable("N", "single-12-white", "P", "A")
          .device("R", "receptacle-15", "A")
          .put({ "H.bk@P": "Q.OUT", "H.bk@A": "R.H1", "N.wh@P": "P-NB.BAR", "N.wh@A": "R.N1" }),
    },
    {
      name: "a ground is in the box and not on the device, which another rule says",
      drawing: () => grounded().put({ "C.cu@A": "cap" }),
    },
    {
      name: "armour with a bonding strip in a metal box",
      drawing: () => {
        const drawing = fed("armoured-12-2-old").setBox("A", { material: "metal" });
        drawing.setDevice("R", { selfGrounding: true });
        const cable = drawing.cables.C;
        if (cable !== undefined) cable.construction = "armoured-bonded";
        return drawing;
      },
    },
    {
      name: "proposed: an extension with a ground",
      drawing: () => plan(grounded(), extended(grounded(), "nm-14-2-g").put({ "E.cu@A": "G", "C.cu@A": "G" })),
    },
  ],
  finds: [
    {
      name: "protected, on an old cable: advice",
      drawing: () => fed("nm-14-2", "gfci-receptacle-15"),
      findings: [{ on: "R", severity: "advice", data: { outlets: 1 }, says: ["R has no ground", "a refrigerator"] }],
    },
    {
      name: "old armour",
      drawing: () => fed("armoured-12-2-old", "gfci-receptacle-15").setBox("A", { material: "metal" }),
      findings: [{ on: "R", severity: "advice" }],
    },
    {
      name: "all of a section in one",
      drawing: () => behindFace(),
      findings: [
        { on: "N R", severity: "advice", data: { outlets: 2 }, says: ["N and R have no ground", "lets them stay"] },
      ],
    },
    {
      name: "proposed: a protected receptacle in place of another",
      drawing: () =>
        plan(
          fed("nm-14-2", "receptacle-two-slot"),
          fed("nm-14-2", "gfci-receptacle-15", { name: "R2", replaces: "R" as never }),
        ),
      findings: [{ on: "R2", severity: "advice" }],
    },
    {
      name: "a new receptacle behind an old cable: protection does not stand in for its ground",
      drawing: () => plan(fed("nm-14-2", "gfci-receptacle-15"), behindFace()),
      findings: [
        { on: "N", severity: "violation", says: ["N is new in B, has three slots", "(E bare leads to none)"] },
        { on: "R", severity: "advice" },
      ],
    },
    {
      name: "a new cable without a ground to a luminaire",
      drawing: () =>
        plan(
          fed("nm-14-2", "receptacle-two-slot"),
          fed("nm-14-2", "receptacle-two-slot")
            .box("L", 60)
            .cable("E", "nm-14-2", "A", "L")
            .device("D", "luminaire-60", "L")
            .put({ "E.bk@A": "R.H2", "E.wh@A": "R.N2", "E.bk@L": "D.H", "E.wh@L": "D.N" }),
        ),
      findings: [{ on: "E", severity: "violation", says: ["E is new and has no ground"] }],
    },
    {
      name: "a new outlet at a new cable without a ground is told once",
      drawing: () =>
        plan(fed("nm-14-2", "receptacle-two-slot"), extended(fed("nm-14-2", "receptacle-two-slot"), "nm-14-2")),
      findings: [{ on: "N", severity: "violation" }],
    },
  ],
  cannotTell: { never: "whether a ground reaches it is read off the wires; what is not drawn makes nothing live" },
});

test("a ground left out in a box before it is that box's fault alone", () => {
  const drawing = behindFace("nm-14-2-g").put({ "C.cu@P": "P-GB.BAR", "C.cu@A": "R.G", "E.cu@A": "cap" });
  const said = inShort(checkDocument(drawing.project()).findings);
  expect(said).toContain("egc-not-spliced-all A");
  expect(said.filter((one) => one.startsWith("egc-missing"))).toEqual([]);
});
