import { findConnector } from "../../catalog/connectors.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { inSentence } from "../../lib/in-sentence.ts";
import type { SpliceMember } from "../../queries/connector-takes.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { membersOf } from "../../queries/landings.ts";
import { METAL_WORDS } from "../../queries/metal-words.ts";
import { describeMembers } from "../connector-capacity.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { isMixed, NO_CONNECTOR } from "../metals.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  touching:
    "{splice} in {box} joins {set} ({ends}) in a connector that is not listed for different metals ({connector}). Use one that is listed for aluminium with copper, in dry places only.",
  unknown:
    "Cannot tell whether the connector of {splice} in {box} is listed for different metals, {set}: the connector is not recorded. Look, and record it.",
});

const wording = catalogue({
  conductor: (awg: Part, metal: Part) => `${awg} AWG ${metal}`,
  connectorOf: (splice: Part, box: Part) => `the connector of ${splice} in ${box}`,
  join: (splice: Part, connectors: Part) =>
    `Join ${splice} in connectors listed for aluminium with copper: ${connectors}`,
  several: (count: Part, conductors: Part) => `${count} × ${conductors}`,
});

/** A joint without a connector, or of tape, is found by itself: what it needs is a connector, and one for these metals. */
export const alCuDirect = defineRule({
  id: "al-cu-direct",
  status: "stable",
  scope: "box",
  severity: "danger",
  summary: "Aluminium and copper meet only in a connector that is listed for it.",
  why: "Aluminium in contact with copper corrodes and creeps: the joint grows hot over the years without any overload, and boxes with such joints have burnt. An ordinary twist-on connector is for copper alone, whatever its size. Copper-clad aluminium counts as a metal of its own.",
  messages,
  sections: everyEdition("110.14", "from-memory"),
  check({ enclosure, installation, state, report, cannotTell }) {
    for (const splice of inOrder(enclosure.splices)) {
      const ends = membersOf(enclosure, splice.id);
      if (ends.length < 2 || NO_CONNECTOR.has(splice.connector)) continue;
      const members = ends.map((end) => getEndFacts(installation, enclosure, end));
      if (!isMixed(members)) continue;
      const subjects = [subject("splice", splice)];
      const shown = { splice: splice.name, box: enclosure.name, set: inMetals(members) };
      const connector = findConnector(splice.connector);
      if (connector === undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.unknown, shown),
          missing: wording.connectorOf(splice.name, enclosure.name),
        });
        continue;
      }
      if (members.every(({ material }) => connector.materials.includes(material))) continue;
      const fix = new MakeUpPlan(installation, enclosure, state)
        .touch(splice.id)
        .fix((words) => wording.join(splice.name, words));
      report({
        subjects,
        message: fillIn(messages.touching, {
          ...shown,
          ends: listed(ends.map((end) => nameOfEnd(installation, enclosure, end))),
          connector: inSentence(connector.title),
        }),
        data: { set: describeMembers(members), connector: connector.id },
        ...basisOf(
          marksOn(splice, "connector"),
          ends.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "at")),
        ),
        hides: [{ rule: "splice-over-capacity", subjects: [splice.id] }],
        offers: fix === undefined ? [] : [fix],
      });
    }
  },
});

/** "12 AWG copper and 2 × 12 AWG aluminium". */
function inMetals(members: readonly SpliceMember[]): string {
  const counts = new Map<string, { readonly words: string; count: number }>();
  for (const { awg, material } of members) {
    const key = `${awg} ${material}`;
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { words: wording.conductor(awg, METAL_WORDS[material]), count: 1 });
    else known.count += 1;
  }
  return listed(
    [...counts]
      .sort(([one], [other]) => (one < other ? 1 : -1))
      .map(([, { words, count }]) => (count === 1 ? words : wording.several(count, words))),
  );
}
