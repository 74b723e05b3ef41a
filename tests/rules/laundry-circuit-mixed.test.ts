import { asId } from "../../shared-model/model/ids.ts";
import { laundryCircuitMixed } from "../../shared-model/rules/checks/laundry-circuit-mixed.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { lastIsNew, onOneCircuit, type Placed } from "./mixed-circuit.ts";
import { ruleTester } from "./rule-tester.ts";
import { plan } from "./two-states.ts";

const WASHER: Placed = ["R1", "receptacle-15", "Laundry", "laundry"];
const IRON: Placed = ["R2", "receptacle-15", "Laundry", "laundry"];
const HALL: Placed = ["R3", "receptacle-15", "Hall", "hallway"];

const laundryPlan = () =>
  laundryProposed()
    .setDevice("R1b", { replaces: asId("R1") })
    .setDevice("R4b", { replaces: asId("R4") });

/** NFPA 70 210.11(C)(2), from memory. */
ruleTester(laundryCircuitMixed, {
  passes: [
    { name: "laundry receptacles only", drawing: () => onOneCircuit(20, [WASHER, IRON]) },
    { name: "the laundry circuit on 15 A", drawing: () => laundryProposed().breaker("Q14", 15) },
    { name: "no laundry", drawing: () => onOneCircuit(20, [HALL]) },
  ],
  finds: [
    {
      name: "the laundry circuit as found",
      drawing: () => laundryAsFound(),
      findings: [
        {
          on: "Q14",
          severity: "caution",
          says: ["(R1 and R2) also feeds L1, R3, R4 and R5", "It may stay; think before you hang more on it."],
        },
      ],
    },
    {
      name: "the plan: receptacles replaced, nothing added",
      drawing: () => plan(laundryAsFound(), laundryPlan()),
      findings: [{ on: "Q14", severity: "caution", says: ["(R1b and R2) also feeds L1, R3, R4b and R5"] }],
    },
    {
      name: "a hall receptacle hung on it by the work",
      drawing: () => lastIsNew(20, [WASHER, HALL]),
      findings: [{ on: "Q1", severity: "violation", says: ["Feed R3 from elsewhere"] }],
    },
  ],
  cannotTell: { never: "a circuit whose rating or rooms are not recorded is not taken for one of the kind" },
});
