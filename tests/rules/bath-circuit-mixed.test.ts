import { bathCircuitMixed } from "../../shared-model/rules/checks/bath-circuit-mixed.ts";
import { allIsNew, lastIsNew, onOneCircuit, type Placed } from "./mixed-circuit.ts";
import { ruleTester } from "./rule-tester.ts";
import { unchanged } from "./two-states.ts";

const BATH: Placed = ["R1", "receptacle-15", "Bath", "bathroom"];
const SECOND: Placed = ["R2", "receptacle-15", "Second bath", "bathroom"];
const BEDROOM: Placed = ["R3", "receptacle-15", "Bedroom", "bedroom"];
const LIGHT: Placed = ["L1", "luminaire-60", "Bath", "bathroom"];

/** NFPA 70 210.11(C)(3) with its exception for a single bathroom, from memory. */
ruleTester(bathCircuitMixed, {
  passes: [
    { name: "receptacles of two bathrooms", drawing: () => onOneCircuit(20, [BATH, SECOND]) },
    { name: "one bathroom with its light", drawing: () => onOneCircuit(20, [BATH, LIGHT]) },
    { name: "a bedroom alone", drawing: () => onOneCircuit(20, [BEDROOM]) },
    { name: "a 15 A circuit is not the bathroom circuit", drawing: () => onOneCircuit(15, [BATH, BEDROOM]) },
  ],
  finds: [
    {
      name: "a bathroom and a bedroom, as found",
      drawing: () => onOneCircuit(20, [BATH, BEDROOM]),
      findings: [
        {
          on: "Q1",
          severity: "caution",
          says: ["Q1 in P feeds R1 in the bathroom and also R3 in Bedroom. It may stay; think before"],
        },
      ],
    },
    {
      name: "the same in proposed, nothing changed",
      drawing: () => unchanged(onOneCircuit(20, [BATH, BEDROOM])),
      findings: [{ on: "Q1", severity: "caution" }],
    },
    {
      name: "the bedroom is hung on it by the work",
      drawing: () => lastIsNew(20, [BATH, BEDROOM]),
      findings: [{ on: "Q1", severity: "violation", says: ["Feed R3 from elsewhere"] }],
    },
    {
      name: "a new circuit",
      drawing: () => allIsNew(20, [BATH, BEDROOM]),
      findings: [{ on: "Q1", severity: "violation" }],
    },
    {
      name: "two bathrooms and a light of one",
      drawing: () => onOneCircuit(20, [BATH, SECOND, LIGHT]),
      findings: [{ on: "Q1", severity: "caution", says: ["feeds R1 and R2 in the bathrooms and also L1 in Bath."] }],
    },
    {
      name: "it rests on the room of a box",
      drawing: () => onOneCircuit(20, [BATH, BEDROOM]).setBox("BR3", { evidence: { roomId: "assumed" } }),
      findings: [{ on: "Q1", severity: "caution", basis: "assumed" }],
    },
  ],
  cannotTell: { never: "a circuit whose rating or rooms are not recorded is not taken for one of the kind" },
});
