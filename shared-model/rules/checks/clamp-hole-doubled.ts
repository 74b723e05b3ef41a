import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { TerminalName } from "../../model/ids.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type Landing, landedAt } from "../../queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";

const messages = templates({
  doubled: "{terminal} in {box} holds {holes}; a hole takes {allowed}. {cure}",
});

const wording = catalogue({
  conductors: (count: number) => counted(count, "conductor"),
  freeHole: "Move one to the free hole beside it.",
  inAnother: (ends: Part) => `${ends} in another`,
  inOneHole: (ends: Part) => `${ends} in one hole`,
  oneInEach: (terminal: Part) => `Put one conductor in each hole of ${terminal}`,
  pigtail: "Splice them and bring one pigtail to the terminal: the box fill stays the same.",
  spliceOn: (terminal: Part) => `Splice the conductors on ${terminal} and bring one pigtail to it`,
  unlike: (kinds: Part) => `Here are ${kinds}: take off what does not belong on this terminal.`,
});

/** Holes of clamp plates only. In a push-in terminal the second conductor may stand under its screw, which is not recorded. */
export const clampHoleDoubled = defineRule({
  id: "clamp-hole-doubled",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A hole of a clamp plate holds one conductor.",
  why: "A clamp plate presses on the thicker or stiffer of two conductors in one hole and lets the other go. The plate has two holes, so two conductors are fine, one in each; a third belongs in a splice with a pigtail.",
  messages,
  sections: everyEdition("110.14(A)", "from-memory"),
  values: ["wiresPerHole"],
  check({ enclosure, installation, edition, state, report }) {
    const allowed = edition.values.wiresPerHole.value;
    for (const device of inOrder(enclosure.devices)) {
      for (const { name, entryKind, holes } of terminalsOf(device)) {
        if (entryKind !== "clamp-plate") continue;
        const landed = landedAt(enclosure, device.id, name);
        const byHole = Array.from({ length: holes }, (_, index) => landed.filter(({ hole }) => hole === index + 1));
        const doubled = byHole.filter((hole) => hole.length > allowed);
        if (doubled.length === 0) continue;
        const terminal = nameOfTerminal(device, name);
        const fits = landed.length <= holes * allowed;
        const namesOf = (ends: readonly Landing[]): string =>
          listed(ends.map(({ end }) => nameOfEnd(installation, enclosure, end)));
        const plan = new MakeUpPlan(installation, enclosure, state);
        const unlike = unlikeKinds(
          installation,
          enclosure,
          landed.map(({ end }) => end),
        );
        const fix =
          unlike !== undefined
            ? undefined
            : fits
              ? spread(plan, device, name, byHole, allowed, terminal)
              : pigtail(plan, device, name, terminal);
        report({
          subjects: [{ kind: "terminal", id: `${device.id}.${name}`, name: terminal }],
          message: fillIn(messages.doubled, {
            terminal,
            box: enclosure.name,
            holes: doubled
              .map((hole, at) => (at === 0 ? wording.inOneHole : wording.inAnother)(namesOf(hole)))
              .join(", "),
            allowed: wording.conductors(allowed),
            cure: cureWords(fits, unlike),
          }),
          data: { conductors: landed.length, holes, allowed },
          ...basisOf(
            landed.flatMap(({ end }) => marksOn(enclosure.places[end] ?? {}, "at")),
            marksOn(device, "type", "entryKind"),
          ),
          ...(fix !== undefined && { fix }),
        });
      }
    }
  },
});

function cureWords(fits: boolean, unlike: string | undefined): string {
  if (unlike !== undefined) return wording.unlike(unlike);
  return fits ? wording.freeHole : wording.pigtail;
}

/** Every conductor too many into a hole with room. */
function spread(
  plan: MakeUpPlan,
  { id }: Device,
  name: TerminalName,
  byHole: readonly (readonly Landing[])[],
  allowed: number,
  terminal: string,
): Fix | undefined {
  const extra = byHole.flatMap((landed) => landed.slice(allowed));
  const free = byHole.flatMap((landed, index) =>
    Array.from({ length: Math.max(0, allowed - landed.length) }, () => index + 1),
  );
  extra.forEach(({ end }, index) => {
    const hole = free[index];
    if (hole !== undefined) plan.land(end, { kind: "terminal", device: id, terminal: name, hole });
  });
  return plan.fix(() => wording.oneInEach(terminal));
}

function pigtail(plan: MakeUpPlan, { id }: Device, name: TerminalName, terminal: string): Fix | undefined {
  plan.pigtail(id, name);
  return plan.fix(() => wording.spliceOn(terminal));
}
