import type { EntryKind } from "../../catalog/device-type.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";

const messages = {
  doubled:
    "{terminal} in {box} holds {count} conductors ({ends}); its screw takes {allowed}. Splice them and bring one pigtail to the screw: the box fill stays the same.",
};

const SCREWS: ReadonlySet<EntryKind> = new Set(["side-screw", "green-screw"]);

/** Plain terminal screws only: holes of clamp plates, push-ins, leads, lugs and bars have rules of their own. */
export const twoWiresOneScrew = defineRule({
  id: "two-wires-one-screw",
  status: "draft",
  scope: "box",
  severity: "violation",
  summary: "A terminal screw holds one conductor.",
  why: "Two conductors under one screw head do not sit flat; one of them is loose from the start. Onward feeds belong in a splice with one pigtail to the device, which also keeps the rest of the circuit joined when the device is taken out.",
  messages,
  sections: everyEdition("110.14(A)", "from-memory"),
  values: ["wiresPerScrew"],
  check({ enclosure, installation, edition, state, report }) {
    const allowed = edition.values.wiresPerScrew.value;
    for (const device of inOrder(enclosure.devices)) {
      for (const { name, entryKind } of terminalsOf(device)) {
        if (!SCREWS.has(entryKind)) continue;
        const landed = landedAt(enclosure, device.id, name);
        if (landed.length <= allowed) continue;
        const terminal = nameOfTerminal(device, name);
        const plan = new MakeUpPlan(installation, enclosure, state);
        plan.pigtail(device.id, name);
        const fix = plan.fix(() => `Splice the conductors on ${terminal} and bring one pigtail to it`);
        report({
          subjects: [{ kind: "terminal", id: `${device.id}.${name}`, name: terminal }],
          message: fillIn(messages.doubled, {
            terminal,
            box: enclosure.name,
            count: landed.length,
            ends: listed(landed.map(({ end }) => nameOfEnd(installation, enclosure, end))),
            allowed: counted(allowed, "conductor"),
          }),
          data: { conductors: landed.length, allowed },
          ...basisOf(
            landed.flatMap(({ end }) => {
              const place = enclosure.places[end];
              return place === undefined ? [] : marksOn(place, "at");
            }),
            marksOn(device, "type", "entryKind"),
          ),
          ...(fix !== undefined && { fix }),
        });
      }
    }
  },
});
