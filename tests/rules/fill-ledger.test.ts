import { describe, expect, test } from "vitest";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import { asId, type EnclosureId } from "../../shared-model/model/ids.ts";
import type { Edition } from "../../shared-model/model/project.ts";
import { getEdition } from "../../shared-model/rules/editions/editions.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { fillEdition } from "../../shared-model/rules/fill-edition.ts";
import { formatVolume } from "../../shared-model/units/volume.ts";
import { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";

function ledgerOf(drawing: Drawing, box: string, edition: Edition = drawing.edition): FillLedger {
  const installation = drawing.installation();
  const enclosure = installation.enclosures[asId<EnclosureId>(box)];
  if (enclosure === undefined) throw new Error(`No ${box}.`);
  return fillLedger(installation, enclosure, getEdition(edition));
}
const total = (drawing: Drawing, box: string, edition?: Edition): string =>
  formatVolume(ledgerOf(drawing, box, edition).total, 2);

/** Cables into one box with one receptacle on the first of them. */
function box(items: readonly string[], more: Partial<Box> = {}, devices = 1): Drawing {
  const drawing = new Drawing().box("B", 30.3, more);
  for (const [index, item] of items.entries()) drawing.cable(`C${index}`, item, "country", "B");
  for (let index = 0; index < devices; index++) drawing.device(`R${index}`, "receptacle-15", "B");
  return devices === 0 ? drawing : drawing.put({ "C0.bk@B": "R0.H1", "C0.wh@B": "R0.N1" });
}
const of = (count: number, item: string): readonly string[] => Array.from({ length: count }, () => item);

/** Each figure added up by hand from the allowances of 314.16(B). */
describe("the ledger of a drawn box", () => {
  test.each([
    ["five 12/2 with ground, one yoke, clamps, 2020", box(of(5, "nm-12-2-g")), 2020, "32.0625"],
    ["the same, 2017", box(of(5, "nm-12-2-g")), 2017, "31.50"],
    ["with external connectors, 2020", box(of(5, "nm-12-2-g"), { internalClamps: "none" }), 2020, "29.8125"],
    ["with external connectors, 2017", box(of(5, "nm-12-2-g"), { internalClamps: "none" }), 2017, "29.25"],
    ["two 12/2, one yoke, clamps", box(of(2, "nm-12-2-g")), 2020, "18.00"],
    ["one 12/2, one yoke, clamps", box(of(1, "nm-12-2-g")), 2020, "13.50"],
    ["one 12/2, one yoke, external", box(of(1, "nm-12-2-g"), { internalClamps: "none" }), 2020, "11.25"],
    ["12/2 supply with two 14/2, device on 12", box(["nm-12-2-g", "nm-14-2-g", "nm-14-2-g"]), 2020, "21.50"],
    ["the same with the device on 14", box(["nm-14-2-g", "nm-12-2-g", "nm-14-2-g"]), 2020, "21.00"],
    ["five 14/2, one yoke, clamps, 2020", box(of(5, "nm-14-2-g")), 2020, "28.50"],
    ["five 14/2, one yoke, clamps, 2017", box(of(5, "nm-14-2-g")), 2017, "28.00"],
    ["six 12/2, two yokes, no clamp", box(of(6, "nm-12-2-g"), { internalClamps: "none" }, 2), 2020, "39.375"],
    ["two 14/2 without ground, one yoke", box(of(2, "nm-14-2")), 2020, "14.00"],
    ["five 14/2 without ground, no device", box(of(5, "nm-14-2"), {}, 0), 2020, "22.00"],
    ["a stud and a hickey", box(of(1, "nm-12-2-g"), { supports: ["stud", "hickey"] }, 0), 2020, "13.50"],
  ] as const)("%s", (_name, drawing, edition, wanted) => {
    expect(total(drawing, "B", edition)).toBe(wanted);
  });

  test("a luminaire hangs outside", () => {
    expect(total(laundryProposed(), "B7")).toBe("9.00");
  });

  test("a thicker pigtail on a device counts with the device, and nowhere else", () => {
    const drawing = box(of(2, "nm-12-2-g")).splice("S", "B", "twist-large");
    drawing.jumper("j", "B", "S", "R0.H2", { awg: "10" });
    expect(total(drawing, "B")).toBe("18.50");
  });

  test("pigtails count nothing: the laundry box as found has four, and the sum of its cables", () => {
    expect(total(laundryAsFound(), "B1")).toBe("32.0625");
  });

  test("says how much is left, or how much is over", () => {
    expect(ledgerOf(laundryProposed(), "B1")).toMatchObject({ verdict: "fits", spare: 4_875, available: 303_000 });
    expect(ledgerOf(laundryAsFound(), "B1")).toMatchObject({ verdict: "overfull", spare: -17_625 });
  });

  test("without a volume it counts all the same", () => {
    const ledger = ledgerOf(laundryProposed().setBox("B6", { volume: { kind: "unknown" } }), "B6");
    expect(ledger).toMatchObject({
      verdict: "volume-unknown",
      total: 135_000,
      reason: "The volume of the box is not recorded.",
    });
    expect(ledger.spare).toBeUndefined();
  });

  test("clamps that are not recorded are counted, and it says so", () => {
    const ledger = ledgerOf(box(of(2, "nm-12-2-g"), { internalClamps: "unknown" }), "B");
    expect(ledger.total).toBe(180_000);
    expect(ledger.reason).toContain("internal clamps");
  });

  test("does not apply to a panel, nor from 4 AWG up", () => {
    expect(ledgerOf(laundryProposed(), "P")).toMatchObject({ verdict: "not-applicable", lines: [] });
    const thick = box(of(2, "nm-12-2-g")).setConductors("C1", { awg: "4" });
    expect(ledgerOf(thick, "B").verdict).toBe("not-applicable");
  });

  test("a gang box of masonry is credited for each of its gangs", () => {
    const masonry = {
      shape: "masonry",
      gangs: 2,
      volume: { kind: "table", size: "3-3/4x2x3-1/2 masonry, per gang" },
    } as const;
    expect(ledgerOf(box(of(1, "nm-12-2-g"), masonry), "B").available).toBe(420_000);
  });
});

test("the ledger of a document follows its local amendments of the rule", () => {
  const project = laundryAsFound().project();
  const change = { kind: "value", name: "clampAllowances", value: 0 } as const;
  const amended = { ...project, amendments: [{ rule: "box-overfull", change, reason: "local practice" }] };
  const box1 = project.asFound.enclosures[asId<EnclosureId>("B1")];
  if (box1 === undefined) throw new Error("No B1.");
  expect(formatVolume(fillLedger(project.asFound, box1, fillEdition(project)).total)).toBe("32.0625");
  expect(formatVolume(fillLedger(project.asFound, box1, fillEdition(amended)).total)).toBe("29.8125");
});
