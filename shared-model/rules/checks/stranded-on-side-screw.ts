import type { EntryKind } from "../../catalog/device-type.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { nameOfTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { isThicker, thickestOf } from "../../units/wire-size.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn } from "../rule-parts.ts";

const messages = templates({
  loose:
    "{ends} {is} stranded and under the screw {terminal} in {box}: strands spread from under a plain screw. Bring a solid pigtail to it, or crimp a fork on, unless the marking of the device accepts strands.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  pigtail: (terminal: Part) => `Bring a solid pigtail to ${terminal}`,
});

const SCREWS: ReadonlySet<EntryKind> = new Set(["side-screw", "green-screw"]);

/** Clamp plates and lugs hold strands. A device that is not recorded to accept them is taken not to. */
export const strandedOnSideScrew = defineRule({
  id: "stranded-on-side-screw",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "A stranded conductor goes under a plain screw only where the device is made for it.",
  why: "Tightening a plain screw pushes strands out sideways: a few of them carry all the current, and one that stands off touches the box. Some devices say in their marking that they take strands; a clamp plate takes them, and so does a crimped fork. Fixture wire and the leads of dimmers are the strands that turn up in a dwelling.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ enclosure, installation, state, report }) {
    for (const device of inOrder(enclosure.devices)) {
      if (device.acceptsStranded === true) continue;
      for (const { name, entryKind, thickest } of terminalsOf(device)) {
        if (!SCREWS.has(entryKind)) continue;
        const landed = landedAt(enclosure, device.id, name).map(({ end }) => end);
        const facts = landed.map((end) => getEndFacts(installation, enclosure, end));
        const stranded = landed.filter((_, index) => facts[index]?.stranded === true);
        if (stranded.length === 0) continue;
        const terminal = nameOfTerminal(device, name);
        const plan = new MakeUpPlan(installation, enclosure, state);
        const awg = thickestOf(facts.map((one) => one.awg));
        const [first] = facts;
        const isFit =
          facts.every(({ material }) => material === "copper") &&
          unlikeKinds(installation, enclosure, landed) === undefined;
        if (isFit && first !== undefined && awg !== undefined && !isThicker(awg, thickest))
          plan.pigtailTo({ kind: "terminal", device: device.id, terminal: name, hole: 1 }, landed, {
            awg,
            colour: first.colour,
          });
        const fix = plan.fix(() => wording.pigtail(terminal));
        report({
          subjects: [{ kind: "terminal", id: `${device.id}.${name}`, name: terminal }],
          message: fillIn(messages.loose, {
            ends: listed(stranded.map((end) => nameOfEnd(installation, enclosure, end))),
            is: wording.is(stranded.length),
            terminal,
            box: enclosure.name,
          }),
          data: { conductors: stranded.length },
          ...basisOf(
            marksOn(device, "type", "entryKind", "acceptsStranded"),
            stranded.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at")),
          ),
          ...(fix !== undefined && { fix }),
        });
      }
    }
  },
});
