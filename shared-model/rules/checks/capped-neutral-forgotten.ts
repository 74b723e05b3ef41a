import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { cableEnd, type EndKey, otherSide } from "../../model/ids.ts";
import { enclosureAtSide } from "../../queries/cables-into.ts";
import { farEnd, nameOfEnd } from "../../queries/end-facts.ts";
import { fixBy, fixTogether } from "../fix-parts.ts";
import { keysOf } from "../ground-leads.ts";
import { OWN_CHECK } from "../own-check.ts";
import { isBeingSurveyed } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  half: "{ends} {is} capped in {box} and landed in {far}: half-connected. Land {it} in {box}, or mark {it} as spare if {they} {is} left so on purpose.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  it: (count: number) => (count === 1 ? "it" : "them"),
  markSpare: (ends: Part, box: Part) => `Mark ${ends} in ${box} as spare`,
  they: (count: number) => (count === 1 ? "it" : "they"),
});

/** Both ends are in boxes and neither is being surveyed. A loose end is another matter, and so is a ground. */
export const cappedNeutralForgotten = defineRule({
  id: "capped-neutral-forgotten",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "A conductor that is landed at one end is landed at the other, or marked as spare.",
  why: "A conductor capped at one end only is most often one that was forgotten: a white left under its cap darkens everything behind it, a black stays live to the cap. Left so on purpose, such as a neutral brought to a switch for later, it is marked as spare, and the next person does not go looking. Where an outlet is dead or without its neutral because of it, that is told, and this is folded under it.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, state, report }) {
    const { installation } = section;
    for (const cable of section.cables) {
      for (const side of ["a", "b"] as const) {
        const box = enclosureAtSide(section.installation, cable, side);
        const far = enclosureAtSide(section.installation, cable, otherSide(side));
        if (box === undefined || far === undefined) continue;
        if (isBeingSurveyed(section, box.id) || isBeingSurveyed(section, far.id)) continue;
        const ends = keysOf(cable)
          .filter((key) => cable.conductors[key]?.grounding !== true)
          .map((key) => cableEnd(cable.id, key, side))
          .filter((end) => isHalfConnected(box, far, end));
        if (ends.length === 0) continue;
        const named = ends.map((end) => ({ id: end, name: nameOfEnd(installation, box, end) }));
        const one = ends.length === 1;
        const calls = ends.map((end) => ({
          command: "mark-spare",
          args: { state, enclosure: box.id, end, spare: true },
        }));
        const title = wording.markSpare(listed(named.map(({ name }) => name)), box.name);
        const [first] = calls;
        report({
          subjects: [...named.map((end) => subject("end", end)), subject("enclosure", box)],
          message: fillIn(messages.half, {
            ends: listed(named.map(({ name }) => name)),
            is: wording.is(ends.length),
            it: wording.it(ends.length),
            they: wording.they(ends.length),
            box: box.name,
            far: far.name,
          }),
          data: { conductors: ends.length },
          ...basisOf(
            ends.flatMap((end) => marksOn(box.places[end] ?? {}, "at")),
            ends.flatMap((end) => marksOn(far.places[farEnd(end)] ?? {}, "at")),
          ),
          hides: [
            {
              rule: "switch-no-effect",
              subjects: ends.flatMap((end) => {
                const at = far.places[farEnd(end)]?.at;
                return at?.kind === "terminal" ? at.device : [];
              }),
            },
          ],
          offers:
            first === undefined ? [] : [one ? fixBy(title, first.command, first.args) : fixTogether(title, calls)],
        });
      }
    }
  },
});

function isHalfConnected(box: Enclosure, far: Enclosure, end: EndKey): boolean {
  const place = box.places[end];
  if (place?.at.kind !== "capped" || place.spare === true) return false;
  const there = far.places[farEnd(end)];
  // A panel that was drawn so that there is a supply was landed by nobody: what the box needs is told at the box.
  if (far.kind === "panel" && there?.evidence?.at === "assumed") return false;
  const other = there?.at.kind;
  return other === "terminal" || other === "splice" || other === "bond";
}
