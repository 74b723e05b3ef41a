import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { cableEnd, type EndKey } from "../../model/ids.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import type { Section } from "../../solver/section.ts";
import { fixBy, fixIn } from "../fix-parts.ts";
import { keysOf } from "../ground-leads.ts";
import { isBeingSurveyed } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  live: "{end} in {box} is loose and live: its bare end touches whatever comes near. Switch off, and cap it with a connector or land it.",
  sometimes:
    "{end} in {box} is loose, and a switch makes it live: its bare end touches whatever comes near. Switch off, and cap it with a connector or land it.",
});

const wording = catalogue({
  cap: (end: Part, box: Part) => `Cap ${end} in ${box}`,
});

/** Judged with every breaker on and over all switch positions. A capped end is not loose. */
export const liveLooseEnd = defineRule({
  id: "live-loose-end",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "An end that a hot reaches must be landed or capped.",
  why: "A loose end looks dead, above all when it comes from a breaker or a switch that happens to be off. It shocks whoever takes the cover off, and touches the box when a device is pushed home. While a box is being surveyed its ends may be parted on purpose: nothing is said of it then, and the breaker has to be off.",
  messages,
  sections: everyEdition("110.27, 110.12", "unconfirmed"),
  check({ section, state, report }) {
    const { installation } = section;
    const reach = section.reach();
    for (const { enclosure, end } of looseEnds(section)) {
      if (!reach.isLive({ end })) continue;
      const shown = { end: nameOfEnd(installation, enclosure, end), box: enclosure.name };
      report({
        subjects: [subject("end", { id: end, name: shown.end }), subject("enclosure", enclosure)],
        message: fillIn(reach.isAlwaysLive({ end }) ? messages.live : messages.sometimes, shown),
        ...basisOf(marksOn(enclosure.places[end] ?? {}, "at")),
        hides: [
          { rule: "open-hot", subjects: deadBy(section, end) },
          { rule: "switch-no-effect", subjects: switchesTo(section, end) },
        ],
        ...fixIn(state, () =>
          fixBy(wording.cap(shown.end, shown.box), "land-end", {
            state,
            enclosure: enclosure.id,
            end,
            at: { kind: "capped" },
          }),
        ),
      });
    }
  },
});

/** Outlets whose hot stops at a loose end: to land it is all they need. */
const deadBy = (section: Section, end: EndKey): readonly string[] =>
  section
    .outlets()
    .filter(({ outlet, live }) => !live && section.whereHotStops(outlet.key)?.ends.includes(end) === true)
    .map(({ outlet }) => outlet.key);

/** Switches that work nothing but this end: what hung on it is gone. */
const switchesTo = (section: Section, end: EndKey): readonly string[] =>
  section.reach().isAlwaysLive({ end })
    ? []
    : (section.wayFrom("ungrounded", { end }) ?? []).flatMap((step) => (step.kind === "device" ? step.device : []));

interface LooseEnd {
  readonly enclosure: Enclosure;
  readonly end: EndKey;
}

/** Loose ends in the boxes of a section, and those of its cables in panels; boxes that are being surveyed left out. */
function looseEnds(section: Section): readonly LooseEnd[] {
  const { enclosures } = section.installation;
  const inBoxes = section.enclosures
    .filter(({ id }) => !isBeingSurveyed(section, id))
    .flatMap((enclosure) => looseIn(enclosure).map((end) => ({ enclosure, end })));
  const inPanels = section.cables.flatMap((cable) =>
    (["a", "b"] as const).flatMap((side) => {
      const where = cable.sides[side];
      const enclosure = "enclosure" in where ? enclosures[where.enclosure] : undefined;
      if (enclosure?.kind !== "panel") return [];
      const ends = keysOf(cable).map((key) => cableEnd(cable.id, key, side));
      return ends.filter((end) => isLoose(enclosure, end)).map((end) => ({ enclosure, end }));
    }),
  );
  return [...inBoxes, ...inPanels];
}

const looseKept = new WeakMap<Enclosure, readonly EndKey[]>();

/** Sorted. Cached by the identity of the enclosure. */
function looseIn(enclosure: Enclosure): readonly EndKey[] {
  let loose = looseKept.get(enclosure);
  if (loose === undefined) {
    loose = (Object.keys(enclosure.places) as EndKey[]).filter((end) => isLoose(enclosure, end)).sort();
    looseKept.set(enclosure, loose);
  }
  return loose;
}

const isLoose = ({ places }: Enclosure, end: EndKey): boolean => places[end]?.at.kind === "loose";
