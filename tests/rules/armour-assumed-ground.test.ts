import type { Cable } from "../../shared-model/model/cable.ts";
import { armourAssumedGround } from "../../shared-model/rules/checks/armour-assumed-ground.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

type Facts = Parameters<Drawing["box"]>[2];

/** An armoured cable from the panel to a box with a receptacle whose ground screw is joined to the box. */
function armoured(facts: Partial<Cable>, box: Facts = {}, bonded = true): Drawing {
  const drawing = new Drawing()
    .panel()
    .box("A", 60, box)
    .cable("C", "armoured-12-2-old", "P", "A")
    .device("R", "receptacle-15", "A");
  if (bonded) drawing.jumper("g", "A", "bond", "R.G", { colour: "bare" });
  drawing.cables.C = { ...(drawing.cables.C as Cable), ...facts };
  return drawing;
}

const withStrip = (mark?: "seen" | "assumed" | "told" | "unknown"): Partial<Cable> => ({
  construction: "armoured-bonded",
  ...(mark !== undefined && { evidence: { construction: mark } }),
});

ruleTester(armourAssumedGround, {
  passes: [
    { name: "no armour", drawing: () => laundryProposed() },
    { name: "a bonding strip that was seen", drawing: () => armoured(withStrip("seen")) },
    { name: "a bonding strip, and no mark on how it is known", drawing: () => armoured(withStrip()) },
    { name: "old armour, and nothing is joined to the metal", drawing: () => armoured({}, {}, false) },
    { name: "old armour in a nonmetallic box", drawing: () => armoured({}, { material: "nonmetallic" }) },
    {
      name: "old armour that no connector joins to the box",
      drawing: () => armoured({}).setEntry("C", "A", { means: "none" }),
    },
    {
      name: "old armour in a box with a ground of its own",
      drawing: () => armoured({}).cable("E", "nm-12-2-g", "P", "A").put({ "E.cu@P": "P-GB.BAR", "E.cu@A": "bond" }),
    },
    {
      name: "armoured cable with a ground in it",
      drawing: () => new Drawing().panel().box("A", 60).cable("C", "armoured-12-2-g", "P", "A"),
    },
  ],
  finds: [
    {
      name: "a bonding strip that is assumed",
      drawing: () => armoured(withStrip("assumed")),
      findings: [
        { on: "C", severity: "caution", basis: "assumed", says: ["taken as the ground in A", "nobody has seen"] },
      ],
    },
    {
      name: "a bonding strip that somebody told of",
      drawing: () => armoured(withStrip("told")),
      findings: [{ on: "C", basis: "told" }],
    },
    {
      name: "old armour that a receptacle relies on",
      drawing: () => armoured({}),
      findings: [{ on: "C", says: ["A relies for its ground on the armour of C"] }],
    },
    {
      name: "old armour and a self-grounding receptacle",
      drawing: () => armoured({}, {}, false).setDevice("R", { selfGrounding: true }),
      findings: [{ on: "C" }],
    },
  ],
  cannotTell: { never: "armour without a mark on how its type is known is not asked for, cable by cable" },
});
