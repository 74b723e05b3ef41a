import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device, LoadPriority } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { Installation } from "../../model/project.ts";
import type { OutletStanding } from "../../solver/section.ts";
import { toLineFix } from "../line-side-fix.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { hotOf, neutralOf } from "../section-parts.ts";
import { PRIORITY_WORDS } from "../shared-trip.ts";
import { listedShort, pluggedAt, priorityOf, tripsOf } from "../trip-parts.ts";

const messages = templates({
  shares:
    "{device} in {box} covers {important} and also {others}: whatever trips it there stops {it} too, and nobody may notice. {cure}; where the place needs protection it must keep it.",
  together:
    "{important} are all behind {device} in {box}: whatever trips it at one of them stops the rest too, and nobody may notice. Give each a device of its own; where the place needs protection it must keep it.",
});

const wording = catalogue({
  important: (load: Part, outlet: Part) => `the ${load} at ${outlet}`,
  it: (count: number) => (count === 1 ? "it" : "them"),
  ownCircuit: (count: number) => (count === 1 ? "Give it a circuit of its own" : "Give them a circuit of their own"),
  ownDevice: (count: number, outlets: Part, device: Part) =>
    `Give ${count === 1 ? "it a device of its" : "them a device of their"} own at ${outlets}, fed past ${device}`,
});

/** What must not go off unnoticed goes off with other outlets when a device trips. Alarms are told by their own rule. */
export const freezerSharesTrip = defineRule({
  id: "freezer-shares-trip",
  status: "stable",
  scope: "section",
  severity: "advice",
  summary: "What must not go off unnoticed should not share a ground-fault device with other outlets.",
  why: "A leaking lamp on the porch trips the device in the laundry, and the freezer behind it thaws over the weekend. The cure is a device of its own at the freezer, fed from the LINE side of the other one; never an outlet without the protection that its place needs. It is told of loads and appliances that are recorded as a freezer, medical equipment or a sump pump.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, installation, state, report }) {
    for (const { device, enclosure, isPersonnel, outlets } of tripsOf(section)) {
      if (!isPersonnel || outlets.length < 2) continue;
      const important = outlets.filter((standing) => importantAt(installation, standing).length > 0);
      const others = outlets.filter((standing) => !important.includes(standing));
      if (important.length === 0) continue;
      const loads = important.flatMap((standing) => importantAt(installation, standing));
      const [only, ...more] = important;
      const shown = {
        device: device.name,
        box: enclosure.name,
        important: listed(loads.map(({ words, at }) => wording.important(words, at))),
      };
      report({
        subjects: [subject("device", device)],
        message:
          others.length === 0
            ? capitalised(fillIn(messages.together, shown))
            : fillIn(messages.shares, {
                ...shown,
                others: listedShort(others.map(({ outlet }) => outlet.name)),
                it: wording.it(loads.length),
                cure: cureWords(enclosure, device, loads.length, important),
              }),
        data: { outlets: outlets.length },
        ...basisOf(loads.flatMap(({ marks }) => marks)),
        ...(state === "proposed" && more.length === 0 && only !== undefined && offersFor(only)),
      });

      function offersFor(standing: OutletStanding) {
        const fix = toLineFix(section, device.id, [hotOf(standing), neutralOf(standing)], state);
        return fix === undefined ? {} : { offers: [fix] };
      }
    }
  },
});

interface Important {
  readonly words: string;
  readonly at: string;
  readonly marks: readonly EvidenceMark[];
}

function importantAt(installation: Installation, standing: OutletStanding): readonly Important[] {
  const { device, name, receptacle } = standing.outlet;
  const loads = pluggedAt(installation, standing);
  if (loads.length === 0 && device.priority === undefined) return [];
  const own = receptacle ? [] : [{ user: device, priority: device.priority ?? "none" }];
  const plugged = loads.map((load) => ({ user: load, priority: priorityOf(load) }));
  return [...own, ...plugged].flatMap(({ user, priority }) =>
    isImportant(priority)
      ? { words: PRIORITY_WORDS[priority], at: name, marks: marksOn(user, "priority", "plug") }
      : [],
  );
}

/** From a breaker nothing leads past it: there the whole circuit is behind. */
function cureWords({ kind }: Enclosure, { name }: Device, count: number, at: readonly OutletStanding[]): string {
  if (kind === "panel") return wording.ownCircuit(count);
  return wording.ownDevice(count, listed(at.map(({ outlet }) => outlet.name)), name);
}

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const isImportant = (priority: LoadPriority): priority is "freezer" | "medical" | "sump-pump" =>
  priority === "freezer" || priority === "medical" || priority === "sump-pump";
