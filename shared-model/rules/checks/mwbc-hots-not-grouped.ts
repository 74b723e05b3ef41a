import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import { type ConductorKey, cableEnd, type EnclosureId, type EndKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { isSingle } from "../../solver/neutral-shares.ts";
import type { Section } from "../../solver/section.ts";
import { sectionOf } from "../../solver/sections.ts";
import { fixBy, fixIn, fixTogether } from "../fix-parts.ts";
import { breakersOf, type Multiwire, multiwiresOf } from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  spread:
    "The hots of {breakers} and the neutral that they share are not held together in {panel}. Put a cable tie round them there, where they end.",
  unknown:
    "Cannot tell whether the hots of {breakers} are held together with their shared neutral in {panel}: they come by a raceway with other circuits, and it is not recorded. Look, and record it at the breaker.",
});

const wording = catalogue({
  tie: (breakers: Part, panel: Part) => `Tie the conductors of ${breakers} together in ${panel}`,
  whetherGrouped: (breakers: Part, panel: Part) =>
    `whether the conductors of ${breakers} are held together in ${panel}`,
});

/** In one cable they are grouped by it; so are conductors of a raceway that holds nothing else. */
export const mwbcHotsNotGrouped = defineRule({
  id: "mwbc-hots-not-grouped",
  status: "stable",
  scope: "project",
  severity: "caution",
  summary: "In the panel, the conductors of a multiwire circuit must be held together.",
  why: "In a full panel nobody sees which white belongs to which two hots, and the next who takes out a breaker parts them or puts both on one leg. Conductors of one cable, or of a raceway of their own, are plain to see; of a raceway that several circuits share they need a tie.",
  messages,
  sections: everyEdition("210.4(D)", "from-memory"),
  check({ installation, state, report, cannotTell }) {
    const singles = singlesOf(installation);
    for (const multiwire of [...new Set(singles.map(({ section }) => section))].flatMap(multiwiresOf)) {
      const { back, poles } = multiwire;
      if (!isSingle(back.cable) || !isShared(multiwire, singles)) continue;
      const breakers = breakersOf(poles);
      const shown = { breakers: listed(breakers.map(({ name }) => name)), panel: back.panel.name };
      const subjects = breakers.map((breaker) => subject("device", breaker));
      const spread = breakers.filter(({ groupedInPanel }) => groupedInPanel === false);
      const unknown = breakers.find(({ groupedInPanel }) => groupedInPanel === undefined);
      if (spread.length > 0) {
        report({
          subjects,
          message: fillIn(messages.spread, shown),
          ...basisOf(spread.flatMap((breaker) => marksOn(breaker, "groupedInPanel"))),
          ...fixIn(state, () => {
            const calls = spread.map(({ id }) => ({
              command: "set-property",
              args: { state, target: { kind: "device", id }, field: "groupedInPanel", value: true },
            }));
            const title = wording.tie(shown.breakers, shown.panel);
            const [only] = calls;
            return calls.length === 1 && only !== undefined
              ? fixBy(title, only.command, only.args)
              : fixTogether(title, calls);
          }),
        });
      } else if (unknown !== undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.unknown, shown),
          missing: wording.whetherGrouped(shown.breakers, shown.panel),
          enterAt: subject("device", unknown),
        });
      }
    }
  },
});

/** A single conductor between a panel and a box. */
interface Single {
  readonly cable: Cable;
  readonly panel: EnclosureId;
  readonly end: EndKey;
  readonly section: Section;
}

const found = new WeakMap<Installation["cables"], readonly Pick<Single, "cable" | "panel" | "end">[]>();

function singlesOf(installation: Installation): readonly Single[] {
  const { cables, enclosures } = installation;
  let singles = found.get(cables);
  if (singles === undefined) {
    singles = Object.values(cables).flatMap((cable) => {
      const [conductor] = Object.keys(cable.conductors) as ConductorKey[];
      if (conductor === undefined || !isSingle(cable)) return [];
      return (["a", "b"] as const).flatMap((side) => {
        const at = cable.sides[side];
        const isInPanel = "enclosure" in at && enclosures[at.enclosure]?.kind === "panel";
        return isInPanel ? { cable, panel: at.enclosure, end: cableEnd(cable.id, conductor, side) } : [];
      });
    });
    found.set(cables, singles);
  }
  return singles.flatMap((one) => {
    const { a, b } = one.cable.sides;
    const box = [a, b].find((at) => "enclosure" in at && at.enclosure !== one.panel);
    const section = box === undefined || !("enclosure" in box) ? undefined : sectionOf(installation, box.enclosure);
    return section === undefined ? [] : { ...one, section };
  });
}

/** Hots of other circuits come by the same raceway, whichever boxes they go to. */
const isShared = ({ back, poles }: Multiwire, singles: readonly Single[]): boolean =>
  back.partners.some((pole) => !poles.includes(pole)) ||
  singles.some(
    ({ cable, panel, end, section }) =>
      panel === back.panel.id &&
      cable.route === back.cable.route &&
      section
        .breakers()
        .some(
          ({ device }) =>
            !poles.some(({ breaker }) => breaker.id === device.id) &&
            section.circuitOf(device.id).hotEnds.includes(end),
        ),
  );
