import { describe, expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { strandedOnSideScrew } from "../../shared-model/rules/checks/stranded-on-side-screw.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const on = (place: string, more: Partial<Device> = {}, type = "receptacle-15"): Drawing =>
  new Drawing()
    .box("B", 60, { internalClamps: "none" })
    .cable("C", "nm-12-2-g", "country", "B")
    .setConductors("C", { stranded: true })
    .device("R", type, "B", more)
    .put({ "C.bk@B": place });

ruleTester(strandedOnSideScrew, {
  passes: [
    { name: "solid conductors", drawing: () => laundryProposed() },
    { name: "a device marked for strands", drawing: () => on("R.H1", { acceptsStranded: true }) },
    { name: "a clamp plate", drawing: () => on("R.LINE_H", {}, "gfci-receptacle-15") },
    { name: "a push-in entry, of which another rule says so", drawing: () => on("R.H1", { entryKind: "push-in" }) },
    { name: "a lead", drawing: () => on("R.H", {}, "luminaire-60") },
  ],
  finds: [
    {
      name: "strands under a side screw",
      drawing: () => on("R.H1"),
      findings: [{ on: "R H", severity: "caution", data: { conductors: 1 }, says: ["C BK is stranded"] }],
    },
    {
      name: "a device recorded as not taking them",
      drawing: () => on("R.H1", { acceptsStranded: false, evidence: { acceptsStranded: "seen" } }),
      findings: [{ on: "R H", basis: "seen" }],
    },
    {
      name: "a stranded jumper on a ground screw",
      drawing: () => laundryProposed().setJumper("e", { stranded: true }),
      findings: [{ on: "R1b G", says: ["e bare is stranded"] }],
    },
  ],
  cannotTell: { never: "a device that is not recorded to accept strands is taken not to" },
});

describe("its fix", () => {
  test("brings a solid pigtail", () => {
    const { title, project } = tryFix(on("R.H1"), "stranded-on-side-screw", "R H");
    expect(title).toBe("Bring a solid pigtail to R H");
    const [jumper] = Object.values(project.proposed?.enclosures["B" as never]?.jumpers ?? {});
    expect(jumper).toMatchObject({ awg: "12", stranded: false, colour: "black" });
  });

  test("is withheld for aluminium", () => {
    const drawing = on("R.H1").setConductors("C", { material: "aluminium" });
    expect(fixOf(drawing, "stranded-on-side-screw", "R H")).toBeUndefined();
  });
});
