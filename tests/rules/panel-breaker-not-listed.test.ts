import type { Device } from "../../shared-model/model/device.ts";
import { panelBreakerNotListed } from "../../shared-model/rules/checks/panel-breaker-not-listed.ts";
import { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";

function panelWith(type: string, listed: readonly string[] | undefined, more: Partial<Device> = {}): Drawing {
  const drawing = new Drawing().panel("P").breaker("Q1", 20, more, type);
  if (listed !== undefined) drawing.setBox("P", { listedBreakers: listed } as never);
  return drawing;
}

ruleTester(panelBreakerNotListed, {
  passes: [
    { name: "a type that is listed", drawing: () => panelWith("breaker-1", ["breaker-1", "breaker-2"]) },
    { name: "no list recorded", drawing: () => panelWith("breaker-gfci-1", undefined) },
    { name: "recorded as listed", drawing: () => panelWith("breaker-gfci-1", ["breaker-1"], { listedForPanel: true }) },
    { name: "bars are no breakers", drawing: () => new Drawing().panel("P") },
  ],
  finds: [
    {
      name: "another type that clips in",
      drawing: () => panelWith("breaker-gfci-1", ["breaker-1", "breaker-2"]),
      findings: [
        {
          on: "Q1",
          severity: "violation",
          says: [
            "is of the type “GFCI breaker, one-pole”",
            "lists “Breaker, one-pole” and “Breaker, two-pole, common trip”",
          ],
        },
      ],
    },
    {
      name: "a list of nothing",
      drawing: () => panelWith("breaker-1", []),
      findings: [{ on: "Q1", says: ["lists none"] }],
    },
    {
      name: "recorded as not listed, and no list",
      drawing: () => panelWith("breaker-1", undefined, { listedForPanel: false, evidence: { listedForPanel: "told" } }),
      findings: [{ on: "Q1", says: ["recorded as not listed"], basis: "told" }],
    },
  ],
  cannotTell: { never: "a panel whose list is not recorded is not judged" },
});
