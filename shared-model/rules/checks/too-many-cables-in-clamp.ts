import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure, Entry } from "../../model/enclosure.ts";
import type { Installation, StateName } from "../../model/project.ts";
import { cablesAtEntry } from "../../queries/cables-at-entry.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { inOrder } from "../../queries/in-order.ts";
import { fixTogether } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  tooMany:
    "{cables} go through one {means} of {box}, which is marked for {marked}. Give each of them an opening of its own, or fit a connector that is marked for {count} cables of this size.",
  notRecorded:
    "Cannot tell whether one {means} of {box} may hold {cables}: for how many cables it is marked is not recorded. Look at its marking or its package.",
});

const wording = catalogue({
  cables: (count: number) => (count === 1 ? "one cable" : `${count} cables`),
  fit: (count: Part, box: Part, cables: Part) => `Fit a connector marked for ${count} cables at ${box} (${cables})`,
  howMany: (means: Part, cables: Part, box: Part) =>
    `how many cables the ${means} for ${cables} is marked for, at ${box}`,
});

/** Sheaths under one clamp or connector. Conductors that share a raceway are no sheaths. */
export const tooManyCablesInClamp = defineRule({
  id: "too-many-cables-in-clamp",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "A clamp or connector must hold no more cables than it is marked for.",
  why: "A clamp is made for one cable, some for two. More sheaths under one screw are either crushed, so that the insulation inside is cut, or the one in the middle is not held at all and can be pulled out of the box. Where one cable comes in by an opening, nothing is asked; where several do, the marking of the clamp decides.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ enclosure, installation, state, report, cannotTell }) {
    if (haveOpeningsOfTheirOwn(installation, enclosure)) return;
    for (const entry of inOrder(enclosure.entries)) {
      if (entry.means === "none") continue;
      const cables = sheathsAt(installation, enclosure, entry);
      const { markedForCables: marked } = entry;
      if (cables.length < 2 || (marked !== undefined && cables.length <= marked)) continue;
      const names = listed(cables.map(({ name }) => name));
      const shown = { cables: names, means: MEANS[entry.means], box: enclosure.name };
      const subjects = [...cables.map((cable) => subject("cable", cable)), subject("enclosure", enclosure)];
      if (marked === undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.notRecorded, shown),
          missing: wording.howMany(MEANS[entry.means], names, enclosure.name),
          enterAt: subject("enclosure", enclosure),
        });
        continue;
      }
      report({
        subjects,
        message: fillIn(messages.tooMany, {
          ...shown,
          marked: wording.cables(marked),
          count: cables.length,
        }),
        data: { cables: cables.length, marked },
        ...basisOf(marksOn(entry, "means", "markedForCables")),
        offers: [connectorFor(enclosure, entry, state, names, cables.length)],
      });
    }
  },
});

const MEANS: Readonly<Record<Exclude<Entry["means"], "none">, string>> = catalogue({
  "internal-clamp": "clamp",
  "integral-clamp": "clamp",
  "external-connector": "connector",
});

const sheathsAt = (installation: Installation, enclosure: Enclosure, { id }: Entry): readonly Cable[] =>
  cablesAtEntry(installation, enclosure, id).filter(({ construction }) => SHEATHED.has(construction));

const SHEATHED: ReadonlySet<Cable["construction"]> = new Set([
  "nonmetallic-sheathed",
  "armoured-bonded",
  "armoured-old",
]);

function connectorFor(
  { id: enclosure, name }: Enclosure,
  entry: Entry,
  state: StateName,
  names: string,
  count: number,
) {
  const set = (field: string, value: unknown) => ({
    command: "set-property",
    args: { state, target: { kind: "entry", enclosure, id: entry.id }, field, value },
  });
  return fixTogether(wording.fit(count, name, names), [
    set("means", "external-connector"),
    set("markedForCables", count),
  ]);
}

/** As nearly everywhere: each cable comes in by another entry. */
function haveOpeningsOfTheirOwn({ cables }: Installation, { id, passThroughs }: Enclosure): boolean {
  const into = cablesInto(cables, id);
  if (Object.keys(passThroughs).length > 0) return false;
  return into.every(({ entry }, index) => into.findIndex((other) => other.entry === entry) === index);
}
