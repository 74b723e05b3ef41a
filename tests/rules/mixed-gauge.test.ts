import type { Material } from "../../shared-model/model/cable.ts";
import { mixedGauge } from "../../shared-model/rules/checks/mixed-gauge.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import type { WireSize } from "../../shared-model/units/wire-size.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A home run and a cable onward behind one breaker. */
const two = (ratingA: number | undefined, home: WireSize, onward: WireSize, material: Material = "copper"): Drawing =>
  new Drawing()
    .panel()
    .breaker("Q", ratingA)
    .box("A", 60)
    .box("B", 60)
    .cable("C1", "nm-12-2-g", "P", "A")
    .cable("C2", "nm-12-2-g", "A", "B")
    .setConductors("C1", { awg: home, material })
    .setConductors("C2", { awg: onward, material })
    .device("R1", "receptacle-15", "A")
    .device("R2", "receptacle-15", "B")
    .put({ "C1.bk@P": "Q.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" })
    .put({ "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2", "C2.bk@B": "R2.H1", "C2.wh@B": "R2.N1" });

const laundryWith14 = () => laundryProposed().setConductors("C6", { awg: "14" });

ruleTester(mixedGauge, {
  passes: [
    { name: "one size", drawing: () => laundryProposed() },
    { name: "the home run is what is thin: everybody sees it", drawing: () => two(15, "14", "12") },
    { name: "the breaker is too large already, which is a fault of its own", drawing: () => two(20, "12", "14") },
    { name: "one amp too large", drawing: () => two(16, "12", "14") },
    { name: "the rating is not recorded, which is asked elsewhere", drawing: () => two(undefined, "12", "14") },
    {
      name: "a ground thinner than the rest",
      drawing: () => laundryProposed().setJumper("e", { awg: "14" }),
    },
  ],
  finds: [
    {
      name: "the last cable of the laundry circuit is 14 AWG, the breaker 15 A",
      drawing: () => laundryWith14().setDevice("Q14", { breakerRatingA: amps(15) }),
      findings: [
        {
          on: "Q14 C6",
          severity: "caution",
          data: { breakerA: 15, atBreaker: "12", thinnest: "14" },
          says: ["Q14 of 15 A in P shows 12 AWG", "C6 is 14 AWG"],
        },
      ],
    },
    {
      name: "exactly the limit of the thin one",
      drawing: () => two(20, "10", "12"),
      findings: [{ on: "Q C2", data: { breakerA: 20, atBreaker: "10", thinnest: "12" } }],
    },
    {
      name: "a jumper",
      drawing: () =>
        laundryProposed()
          .setJumper("c", { awg: "14" })
          .setDevice("Q14", { breakerRatingA: amps(15) }),
      findings: [{ on: "Q14 c", says: ["jumper c in B1 is 14 AWG"] }],
    },
    {
      name: "aluminium is named",
      drawing: () => two(15, "10", "12", "aluminium"),
      findings: [{ on: "Q C2", says: ["C2 is 12 AWG aluminium"] }],
    },
    {
      name: "many thin pieces are counted",
      drawing: () => {
        const drawing = laundryProposed().setDevice("Q14", { breakerRatingA: amps(15) });
        for (const cable of ["C2", "C3", "C4", "C5", "C6", "C7"]) drawing.setConductors(cable, { awg: "14" });
        return drawing;
      },
      findings: [{ on: "Q14 C2", says: ["C2, C3, C4, C5 and 2 more are 14 AWG"] }],
    },
  ],
  cannotTell: { never: "the rating that it needs is asked for by the rule on the size of conductors" },
});
