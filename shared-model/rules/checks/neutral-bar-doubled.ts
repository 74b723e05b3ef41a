import type { EntryKind } from "../../catalog/device-type.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { EndKey } from "../../model/ids.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { type Landing, landedAt } from "../../queries/landings.ts";
import { type PlacedTerminal, terminalsOf } from "../../queries/terminals-of.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, counted, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  neutrals: "Hole {hole} of {bar} in {panel} holds {ends}: a neutral has a hole of its own. {cure}",
  grounds:
    "Hole {hole} of {bar} in {panel} holds {ends}, a neutral and a ground together: a neutral has a hole of its own. {cure}",
});

const wording = catalogue({
  full: (bar: Part) => `${bar} is full: add a bar that is listed for the panel.`,
  hole: (hole: Part, bar: Part) => `hole ${hole} of ${bar}`,
  move: (ends: Part, count: number, bar: Part, free: number) =>
    `Move ${ends} to ${count === 1 ? "a free hole" : "free holes"}: ${bar} has ${counted(free, "free hole")}.`,
  moveApart: (ends: Part) => `Move ${ends} to holes of their own`,
  moveTo: (end: Part, hole: Part) => `Move ${end} to hole ${hole}`,
});

const BARS: ReadonlySet<EntryKind> = new Set(["neutral-bar", "ground-bar"]);

/** Several grounds may share a hole where the marking of the panel says so; that is not recorded and not judged. */
export const neutralBarDoubled = defineRule({
  id: "neutral-bar-doubled",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "Each neutral has a hole of a bar to itself.",
  why: "When one of two neutrals under a screw is taken off, the other comes loose with it while its own circuit is on: on a shared neutral that puts up to 240 V on what is plugged in. Two neutrals under one screw are also what a full bar looks like after a circuit was added. Several grounds in a hole are allowed where the marking of the panel says so.",
  messages,
  sections: everyEdition("408.41", "unconfirmed"),
  check(context) {
    const { enclosure, installation, report } = context;
    if (enclosure.kind !== "panel") return;
    for (const bar of inOrder(enclosure.devices)) {
      for (const terminal of terminalsOf(bar)) {
        if (!BARS.has(terminal.entryKind)) continue;
        for (const [hole, ends] of byHole(landedAt(enclosure, bar.id, terminal.name))) {
          const neutrals = ends.filter((end) => !getEndFacts(installation, enclosure, end).grounding);
          if (neutrals.length === 0 || ends.length < 2) continue;
          const withGround = neutrals.length < 2;
          const { cure, fix } = apart(context, bar, terminal, hole, ends);
          report({
            subjects: [
              { kind: "terminal", id: `${bar.id}.${terminal.name}#${hole}`, name: wording.hole(hole, bar.name) },
              ...ends.map((end) => subject("end", { id: end, name: nameOfEnd(installation, enclosure, end) })),
            ],
            message: fillIn(withGround ? messages.grounds : messages.neutrals, {
              hole,
              bar: bar.name,
              panel: enclosure.name,
              ends: listed(ends.map((end) => nameOfEnd(installation, enclosure, end))),
              cure,
            }),
            data: { conductors: ends.length, neutrals: neutrals.length },
            ...basisOf(ends.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at"))),
            offers: fix === undefined ? [] : [fix],
          });
        }
      }
    }
  },
});

function byHole(landed: readonly Landing[]): ReadonlyMap<number, readonly EndKey[]> {
  const holes = new Map<number, EndKey[]>();
  for (const { end, hole } of landed) {
    const ends = holes.get(hole);
    if (ends === undefined) holes.set(hole, [end]);
    else ends.push(end);
  }
  return new Map([...holes].sort(([a], [b]) => a - b));
}

/** The first conductor stays, the others go to the nearest free holes of the same bar. */
function apart(
  { enclosure, installation, state }: BoxContext,
  bar: Device,
  terminal: PlacedTerminal,
  hole: number,
  [_stays, ...others]: readonly EndKey[],
) {
  const used = new Set(landedAt(enclosure, bar.id, terminal.name).map((landing) => landing.hole));
  const free = Array.from({ length: terminal.holes }, (_, index) => index + 1)
    .filter((one) => !used.has(one))
    .sort((a, b) => Math.abs(a - hole) - Math.abs(b - hole) || a - b);
  if (free.length < others.length) return { cure: wording.full(bar.name) };
  const plan = new MakeUpPlan(installation, enclosure, state);
  others.forEach((end, index) => {
    const at = { kind: "terminal", device: bar.id, terminal: terminal.name, hole: free[index] ?? hole } as const;
    plan.land(end, at);
  });
  const names = listed(others.map((end) => nameOfEnd(installation, enclosure, end)));
  const cure = wording.move(names, others.length, bar.name, free.length);
  return {
    cure,
    fix: plan.fix(() => (others.length === 1 ? wording.moveTo(names, free[0] ?? hole) : wording.moveApart(names))),
  };
}
