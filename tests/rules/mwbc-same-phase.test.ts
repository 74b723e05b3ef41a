import { expect, test } from "vitest";
import { mwbcSamePhase } from "../../shared-model/rules/checks/mwbc-same-phase.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import type { Drawing } from "./drawing.ts";
import { multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";
import { twoCircuits } from "./two-circuits.ts";

const sameLeg = (): Drawing => multiwire().setDevice("QB", { legs: ["A"] });

ruleTester(mwbcSamePhase, {
  passes: [
    { name: "on different legs", drawing: () => multiwire() },
    {
      name: "on different legs by the catalogue and by hand",
      drawing: () => multiwire().setDevice("QA", { evidence: { legs: "assumed" } }),
    },
    { name: "two circuits on one leg, a neutral each", drawing: () => twoCircuits().setDevice("Q2", { legs: ["A"] }) },
    { name: "nothing is on the second hot", drawing: () => sameLeg().put({ "MB.bk@JB": "cap" }) },
    { name: "joined hots are another matter", drawing: () => sameLeg().jumper("y", "JB", "jA", "jB") },
  ],
  finds: [
    {
      name: "on one leg: the neutral carries the sum",
      drawing: sameLeg,
      findings: [
        { on: "QA QB", severity: "danger", data: { sumA: 40, awg: "12" }, says: ["40 A on 12 AWG", "neutral in M3"] },
      ],
    },
    {
      name: "a rating is not recorded",
      drawing: () => {
        const drawing = sameLeg();
        const { breakerRatingA: _gone, ...rest } = drawing.deviceOf("QB");
        drawing.at("P").devices["QB" as never] = rest as never;
        return drawing;
      },
      findings: [{ on: "QA QB", data: { awg: "12" }, says: ["their currents add up in it"] }],
    },
    {
      name: "two of three, and by whom it is known",
      drawing: () =>
        sameLeg()
          .breaker("QC", 15, { legs: ["A"], evidence: { legs: "told" } })
          .cable("M4", "nm-14-2-g", "P", "JB")
          .put({ "M4.bk@P": "QC.OUT", "M4.bk@JB": "cap" }),
      findings: [{ on: "QA QB" }],
    },
  ],
  cannotTell: [
    {
      name: "both legs are the catalogue's",
      drawing: () =>
        sameLeg()
          .setDevice("QA", { evidence: { legs: "assumed" } })
          .setDevice("QB", { evidence: { legs: "assumed" } }),
      on: ["QA QB"],
      missing: "the leg of QA and QB",
    },
    {
      name: "one of them is",
      drawing: () => sameLeg().setDevice("QB", { evidence: { legs: "assumed" } }),
      on: ["QA QB"],
      missing: "the leg of QB",
    },
  ],
});

test("it stands for handles that are not tied", () => {
  const drawing = sameLeg();
  const { tiedTo: _gone, ...rest } = drawing.deviceOf("QB");
  drawing.at("P").devices["QB" as never] = rest as never;
  expect(ofConductors(checkDocument(drawing.project()).findings)).toEqual(["mwbc-same-phase QA"]);
});

test("either breaker may be moved to the other leg, and is tied then", () => {
  expect(trySectionFix(sameLeg(), "mwbc-same-phase", "QA", "Move QB").title).toBe("Move QB to a space on leg B");
  const apart = sameLeg();
  const { tiedTo: _gone, ...rest } = apart.deviceOf("QB");
  apart.at("P").devices["QB" as never] = rest as never;
  const { title, left } = trySectionFix(apart, "mwbc-same-phase", "QA", "Move QA");
  expect(title).toBe("Move QA to a space on leg B, and tie it to its partner");
  expect(left.filter((one) => one.startsWith("mwbc"))).toEqual([]);
});
