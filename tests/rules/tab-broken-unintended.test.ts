import { describe, expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { tabBrokenUnintended } from "../../shared-model/rules/checks/tab-broken-unintended.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A receptacle with two cables at hand. */
const at = (more: Partial<Device>, places: Readonly<Record<string, string>>): Drawing =>
  new Drawing()
    .box("B", 60)
    .cable("C", "nm-12-3-g", "country", "B")
    .device("R", "receptacle-15", "B", more)
    .splice("H", "B", "lever-3")
    .put(places);

const HALVES = { "C.bk@B": "R.H1", "C.rd@B": "R.H2", "C.wh@B": "R.N1" };

ruleTester(tabBrokenUnintended, {
  passes: [
    { name: "tabs as they are made", drawing: () => laundryProposed() },
    { name: "a hot for each half", drawing: () => at({ hotTab: "removed" }, HALVES) },
    { name: "nothing landed yet", drawing: () => at({ hotTab: "removed", neutralTab: "removed" }, {}) },
    {
      name: "while the box is being surveyed",
      drawing: () => at({ hotTab: "removed" }, { "C.bk@B": "R.H1" }).setBox("B", { beingSurveyed: true }),
    },
    {
      name: "both tabs off, a hot and a neutral for each",
      drawing: () =>
        at({ hotTab: "removed", neutralTab: "removed" }, HALVES)
          .cable("D", "nm-12-2-g", "country", "B")
          .put({ "D.wh@B": "R.N2" }),
    },
  ],
  finds: [
    {
      name: "the hot tab off and one hot: the lower half is not fed",
      drawing: () => laundryProposed().setDevice("R5", { hotTab: "removed" }),
      findings: [
        { on: "R5", severity: "caution", data: { tab: "hot" }, says: ["hot tab of R5 in B6", "its lower half"] },
      ],
    },
    {
      name: "the hot on the other screw: the upper half",
      drawing: () => at({ hotTab: "removed" }, { "C.bk@B": "R.H2", "C.wh@B": "R.N1" }),
      findings: [{ on: "R", says: ["its upper half"] }],
    },
    {
      name: "the neutral tab off and one neutral",
      drawing: () => at({ neutralTab: "removed" }, HALVES),
      findings: [
        {
          on: "R",
          severity: "danger",
          data: { tab: "neutral" },
          says: ["neutral screw of its lower half", "looks dead"],
        },
      ],
    },
    {
      name: "the hot comes to the half without a neutral over the tab of the hots",
      drawing: () => at({ neutralTab: "removed" }, { "C.bk@B": "R.H1", "C.wh@B": "R.N1" }),
      findings: [{ on: "R", severity: "danger" }],
    },
    {
      name: "neither hot nor neutral comes to the half",
      drawing: () => at({ hotTab: "removed", neutralTab: "removed" }, { "C.bk@B": "R.H1", "C.wh@B": "R.N1" }),
      findings: [
        { on: "R", severity: "caution" },
        { on: "R", severity: "caution" },
      ],
    },
    {
      name: "both hot screws from one joint",
      drawing: () =>
        at({ hotTab: "removed", evidence: { hotTab: "told" } }, { "C.bk@B": "H", "C.wh@B": "R.N1" })
          .jumper("p", "B", "H", "R.H1")
          .jumper("q", "B", "H", "R.H2"),
      findings: [{ on: "R", basis: "told", says: ["joined by wire all the same"] }],
    },
    {
      name: "two switches on one yoke, the second without a feed",
      drawing: () =>
        new Drawing()
          .box("B", 60)
          .cable("C", "nm-12-2-g", "country", "B")
          .device("S", "switch-two", "B", { hotTab: "removed" })
          .put({ "C.bk@B": "S.C1" }),
      findings: [{ on: "S", says: ["S C2"] }],
    },
  ],
  cannotTell: { never: "a tab that is not recorded as broken off is as it was made" },
});

test("the dead half is folded under it", () => {
  const drawing = laundryProposed().setDevice("R5", { hotTab: "removed" });
  const { findings } = checkDocument(drawing.project());
  expect(inShort(findings).filter((one) => one.includes("R5"))).toEqual(["tab-broken-unintended R5"]);
  const found = findings.find(({ rule }) => rule === "tab-broken-unintended");
  expect(found?.foldedSubjects.map(({ name }) => name)).toEqual(["R5/lower"]);
});

describe("its fix", () => {
  test("fits a device with its tab", () => {
    const drawing = laundryProposed().setDevice("R5", { hotTab: "removed" });
    const { title, left } = tryFix(drawing, "tab-broken-unintended", "R5");
    expect(title).toBe("Fit R5 with its hot tab");
    expect(left).not.toContain("open-hot R5/lower");
  });
});
