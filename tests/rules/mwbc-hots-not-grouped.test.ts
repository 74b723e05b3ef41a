import { expect, test } from "vitest";
import { mwbcHotsNotGrouped } from "../../shared-model/rules/checks/mwbc-hots-not-grouped.ts";
import { Drawing } from "./drawing.ts";
import { multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A multiwire circuit on single conductors of a raceway; with `shared`, a third circuit comes by the same raceway. */
function raceway({ shared, grouped }: { readonly shared: boolean; readonly grouped?: boolean }): Drawing {
  const facts = grouped === undefined ? {} : { groupedInPanel: grouped };
  const drawing = new Drawing()
    .panel("P")
    .breaker("Q1", 20, facts)
    .breaker("Q2", 20, { legs: ["B"], tiedTo: "Q1" as never, ...facts })
    .breaker("Q3", 20)
    .box("B1", 30);
  for (const number of ["1", "2", "3"])
    drawing
      .cable(`H${number}`, "single-12-black", "P", "B1")
      .device(`R${number}`, "receptacle-15", "B1")
      .put({ [`H${number}.bk@P`]: `Q${number}.OUT`, [`H${number}.bk@B1`]: `R${number}.H1` });
  drawing
    .cable("N", "single-12-white", "P", "B1")
    .cable("N3", "single-12-white", "P", "B1")
    .splice("n", "B1", "twist-medium")
    .put({ "N.wh@P": "P-NB.BAR", "N.wh@B1": "n", "N3.wh@P": "P-NB.BAR", "N3.wh@B1": "R3.N1" })
    .jumper("u", "B1", "n", "R1.N1", { colour: "white" })
    .jumper("v", "B1", "n", "R2.N1", { colour: "white" });
  for (const name of ["H1", "H2", "H3", "N", "N3"]) {
    const cable = drawing.cables[name];
    if (cable !== undefined) cable.route = !shared && name.endsWith("3") ? "raceway 2" : "raceway 1";
  }
  return drawing;
}

/** Its own section comes by the same raceway: the third circuit goes to a box of its own. */
const elsewhere = (route: string, grouped?: boolean): Drawing => {
  const drawing = raceway({ shared: true, ...(grouped !== undefined && { grouped }) }).box("B9", 30);
  drawing.device("R9", "receptacle-15", "B9").breaker("Q9", 20);
  for (const name of ["H3", "N3"]) {
    const cable = drawing.cables[name];
    if (cable !== undefined) cable.route = "raceway 2";
  }
  drawing
    .cable("H9", "single-12-black", "P", "B9")
    .cable("N9", "single-12-white", "P", "B9")
    .put({ "H9.bk@P": "Q9.OUT", "H9.bk@B9": "R9.H1", "N9.wh@P": "P-NB.BAR", "N9.wh@B9": "R9.N1" });
  for (const name of ["H9", "N9"]) {
    const cable = drawing.cables[name];
    if (cable !== undefined) cable.route = route;
  }
  return drawing;
};

ruleTester(mwbcHotsNotGrouped, {
  passes: [
    { name: "one cable holds them", drawing: () => multiwire() },
    { name: "a raceway of their own", drawing: () => raceway({ shared: false }) },
    { name: "held together", drawing: () => raceway({ shared: true, grouped: true }) },
    { name: "a circuit to boxes of its own comes by another raceway", drawing: () => elsewhere("raceway 3", false) },
  ],
  finds: [
    {
      name: "spread",
      drawing: () => raceway({ shared: true, grouped: false }),
      findings: [{ on: "Q1 Q2", severity: "caution", says: ["hots of Q1 and Q2", "in P"] }],
    },
    {
      name: "spread, and the other circuit of the raceway goes to boxes of its own",
      drawing: () => elsewhere("raceway 1", false),
      findings: [{ on: "Q1 Q2" }],
    },
    {
      name: "one of the two, and by whom it is known",
      drawing: () =>
        raceway({ shared: true, grouped: true }).setDevice("Q2", {
          groupedInPanel: false,
          evidence: { groupedInPanel: "told" },
        }),
      findings: [{ on: "Q1 Q2", basis: "told" }],
    },
  ],
  cannotTell: [
    { name: "not recorded", drawing: () => raceway({ shared: true }), on: ["Q1 Q2"], missing: "held together in P" },
  ],
});

test("they are tied", () => {
  const { title, project } = trySectionFix(raceway({ shared: true, grouped: false }), "mwbc-hots-not-grouped", "Q1");
  expect(title).toBe("Tie the conductors of Q1 and Q2 together in P");
  expect(project.proposed?.enclosures["P" as never]?.devices["Q2" as never]).toMatchObject({ groupedInPanel: true });
});
