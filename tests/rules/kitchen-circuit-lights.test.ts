import { kitchenCircuitLights } from "../../shared-model/rules/checks/kitchen-circuit-lights.ts";
import { lastIsNew, onOneCircuit, type Placed } from "./mixed-circuit.ts";
import { ruleTester } from "./rule-tester.ts";
import { unchanged } from "./two-states.ts";

const COUNTER: Placed = ["R1", "receptacle-15", "Counter", "kitchen-counter"];
const DINING: Placed = ["R2", "receptacle-15", "Dining room", "dining"];
const FRIDGE: Placed = ["R3", "receptacle-15", "Kitchen wall", "kitchen-other"];
const LIGHT: Placed = ["L1", "luminaire-60", "Counter", "kitchen-counter"];
const HALL: Placed = ["R4", "receptacle-15", "Hall", "hallway"];

/** NFPA 70 210.52(B), from the writer's knowledge. */
ruleTester(kitchenCircuitLights, {
  passes: [
    { name: "counter, dining room and refrigerator", drawing: () => onOneCircuit(20, [COUNTER, DINING, FRIDGE]) },
    { name: "a light and a refrigerator without a counter", drawing: () => onOneCircuit(20, [FRIDGE, LIGHT]) },
    { name: "a 15 A circuit is not one for small appliances", drawing: () => onOneCircuit(15, [COUNTER, LIGHT]) },
  ],
  finds: [
    {
      name: "counter and ceiling light, as found",
      drawing: () => onOneCircuit(20, [COUNTER, LIGHT]),
      findings: [
        { on: "Q1", severity: "caution", says: ["Q1 in P (counter: R1) also feeds L1", "It may stay; think before"] },
      ],
    },
    {
      name: "unchanged in proposed",
      drawing: () => unchanged(onOneCircuit(20, [COUNTER, LIGHT])),
      findings: [{ on: "Q1", severity: "caution" }],
    },
    {
      name: "counter and a ceiling light by the work",
      drawing: () => lastIsNew(20, [COUNTER, LIGHT]),
      findings: [{ on: "Q1", severity: "violation", says: ["Feed L1 from elsewhere"] }],
    },
    {
      name: "counter and hall",
      drawing: () => onOneCircuit(20, [COUNTER, DINING, HALL]),
      findings: [{ on: "Q1", severity: "caution", says: ["also feeds R4"] }],
    },
  ],
  cannotTell: { never: "a circuit whose rating or rooms are not recorded is not taken for one of the kind" },
});
