import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { EndKey } from "../../model/ids.ts";
import type { Installation, StateName } from "../../model/project.ts";
import type { Section } from "../../solver/section.ts";
import { fedPast, type Past } from "../fed-past.ts";
import { isCure } from "../fix-trial.ts";
import { titled } from "../line-load-fixes.ts";
import { bringAll, isCurrentCarrying } from "../line-side-fix.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import type { LineLoadDevice } from "../section-parts.ts";
import { outletsBehindAfter, sharedTripWords } from "../shared-trip.ts";
import { listedShort } from "../trip-parts.ts";

const messages = templates({
  empty:
    "Only {device} itself is protected: nothing is on its LOAD, and {outlets} beyond {box} {is} fed past it by {cables}. If {they} should be protected too, bring both conductors of {cables} to LOAD; if not, decide against it in the details of {outlets}.",
});

const wording = catalogue({
  bring: (cables: Part, device: Part, shared: Part) => `Bring ${cables} from the LOAD side of ${device}${shared}`,
  is: (count: number) => (count === 1 ? "is" : "are"),
  they: (count: number) => (count === 1 ? "it" : "they"),
});

/** Unprotected receptacles that its LINE joints feed, where nobody has decided that they stay so. */
export const gfciLoadEmptyTape = defineRule({
  id: "gfci-load-empty-tape",
  status: "stable",
  scope: "section",
  severity: "advice",
  summary: "Where a ground-fault device has nothing on LOAD, the receptacles fed past it have no protection from it.",
  why: "LOAD comes with a tape over it, and many devices are put in with the tape left on: all cables of the box stay on LINE. That is right where it is meant, for a freezer or a light; it is a trap for whoever takes the next outlet along to be protected. It is told of receptacles alone, without those that hold a freezer or the like, and without those of which somebody has decided that they stay outside.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, installation, state, report }) {
    for (const [found, past] of fedPast(section, installation)) {
      const { device, enclosure } = found;
      const cables = [...new Set(past.map(({ cable }) => cable))];
      const names = past.map(({ standing }) => standing.outlet.name);
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.empty, {
          device: device.name,
          box: enclosure.name,
          outlets: listedShort(names),
          is: wording.is(names.length),
          they: wording.they(names.length),
          cables: listed(cables.map((id) => installation.cables[id]?.name ?? id)),
        }),
        data: { outlets: names.length },
        ...basisOf(
          marksOn(device, "type"),
          past.flatMap(({ ends }) => ends.flatMap((end) => marksAt(end))),
        ),
        ...(state === "proposed" && { offers: offersFor(section, installation, found, past, state) }),
      });

      function marksAt(end: EndKey) {
        const place = enclosure.places[end];
        return place === undefined ? [] : marksOn(place, "at");
      }
    }
  },
});

/** All of these cables brought to LOAD, each with both conductors. */
function offersFor(
  section: Section,
  installation: Installation,
  { device, enclosure }: LineLoadDevice,
  past: readonly Past[],
  state: StateName,
): readonly Fix[] {
  const hots = [...new Set(past.map(({ ends: [hot] }) => hot))].sort();
  const neutrals = [...new Set(past.map(({ ends: [, neutral] }) => neutral))].sort();
  const isMovable = (end: EndKey): boolean => isCurrentCarrying(section.installation, enclosure, end);
  if (![...hots, ...neutrals].every(isMovable)) return [];
  const plan = new MakeUpPlan(section.installation, enclosure, state);
  const at = [enclosure, device] as const;
  if (!bringAll(plan, section.installation, at, hots, ["LOAD", "hot"])) return [];
  if (!bringAll(plan, section.installation, at, neutrals, ["LOAD", "neutral"])) return [];
  const untitled = plan.fix(() => "");
  if (untitled === undefined || !isCure(section, untitled)) return [];
  const shared = sharedTripWords(installation, outletsBehindAfter(section, untitled, device.id));
  const cables = listed([...new Set(past.map(({ cable }) => installation.cables[cable]?.name ?? cable))].sort());
  const fix = plan.fix((words) => titled(wording.bring(cables, device.name, shared), words));
  return fix === undefined ? [] : [fix];
}
