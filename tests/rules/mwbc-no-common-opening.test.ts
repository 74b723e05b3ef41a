import { expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { mwbcNoCommonOpening } from "../../shared-model/rules/checks/mwbc-no-common-opening.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import type { Drawing } from "./drawing.ts";
import { multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

/** The multiwire circuit without the tie, and with other facts of QB. */
function untied(facts: Partial<Device> = {}): Drawing {
  const drawing = multiwire();
  const { tiedTo: _gone, ...rest } = drawing.deviceOf("QB");
  drawing.at("P").devices["QB" as never] = { ...rest, ...facts } as never;
  return drawing;
}

const twoPole = (): Drawing =>
  untied()
    .breaker("Q9", 20, { legs: ["A", "B"] }, "breaker-2")
    .put({ "M3.bk@P": "Q9.OUT1", "M3.rd@P": "Q9.OUT2" });

ruleTester(mwbcNoCommonOpening, {
  passes: [
    { name: "tied", drawing: () => multiwire() },
    { name: "tied from the other", drawing: () => untied().setDevice("QA", { tiedTo: "QB" as never }) },
    { name: "a two-pole breaker", drawing: twoPole },
    { name: "two circuits with a neutral each", drawing: () => twoCircuits() },
    { name: "one leg feeds nothing", drawing: () => untied().put({ "MB.bk@JB": "cap" }) },
    { name: "on one leg it is no multiwire circuit", drawing: () => untied({ legs: ["A"] }) },
    {
      name: "a borrowed neutral is another matter",
      drawing: () => twoCircuits().put({ "C1.wh@B1": "cap", "X.wh@B1": "n1", "X.wh@B2": "n2" }),
    },
  ],
  finds: [
    {
      name: "two breakers of their own",
      drawing: untied,
      findings: [{ on: "QA QB", severity: "violation", says: ["QA and QB in P share the neutral in M3"] }],
    },
    {
      name: "a leg that nobody looked at does not excuse it, and by whom it is known",
      drawing: () => untied({ legs: ["A"], evidence: { legs: "assumed" } }).knownBy("M3.rd@P", "told"),
      findings: [{ on: "QA QB", basis: "told" }],
    },
    {
      name: "tied to another breaker",
      drawing: () => untied({ tiedTo: "QX" as never }).breaker("QX", 15),
      findings: [{ on: "QA QB" }],
    },
    {
      name: "fuses",
      drawing: () => untied({ type: "fuse-1" }).setDevice("QA", { type: "fuse-1" }),
      findings: [{ on: "QA QB" }],
    },
  ],
  cannotTell: { never: "a tie that is not recorded is none" },
});

test("it is the one finding", () => {
  expect(ofConductors(checkDocument(untied().project()).findings)).toEqual(["mwbc-no-common-opening QA"]);
});

test("the handles are tied where they stand one above the other, and not to a fuse or a device that senses", () => {
  const drawing = untied({ slot: 4 }).setDevice("QA", { slot: 2 });
  const { title, project } = trySectionFix(drawing, "mwbc-no-common-opening", "QA");
  expect(title).toBe("Tie the handles of QA and QB");
  expect(project.proposed?.enclosures["P" as never]?.devices["QB" as never]).toMatchObject({ tiedTo: "QA" });
  for (const type of ["fuse-1", "breaker-gfci-1"]) {
    const other = untied({ type, slot: 4 }).setDevice("QA", { slot: 2 });
    expect(() => trySectionFix(other, "mwbc-no-common-opening", "QA")).toThrow("No such fix");
  }
});
