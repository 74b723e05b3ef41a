import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import type { Installation } from "../../model/project.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import { CLASS_A_TRIPS, STANDING_LEAK_SHARE } from "../editions/product-values.ts";
import { OWN_CHECK } from "../own-check.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { listedShort, pluggedAt, tripsOf } from "../trip-parts.ts";

const messages = templates({
  over: "{sum} mA leaks to ground behind {device} in {box} with nothing wrong: {users}. {device} trips at {trips} mA, and with more than {budget} mA standing it is likely to trip for nothing. Spread these over two devices, or feed one of them past {device} from a device of its own.",
});

const wording = catalogue({
  at: (user: Part, outlet: Part) => `${user} at ${outlet}`,
  leak: (user: Part, milliamps: Part) => `${user} ${milliamps}`,
});

/** What leaks without a fault, added up as if all of it were on at once; a leak without a ground to flow to is none. */
export const standingLeakBudget = defineRule({
  id: "standing-leak-budget",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "What leaks to ground in normal use behind one ground-fault device must stay well below what trips it.",
  why: "Heating elements, motors and electronics leak a little to ground from new. A device sums all of it, so that a few such loads behind one device leave little to the level at which it trips: it then trips when the washer starts, nobody finds a fault, and somebody takes it out. Leaks are those recorded on loads and devices; one that is not recorded counts as none, and so does one at an outlet that no ground reaches. The budget is common practice, not a rule of the code.",
  messages,
  sections: everyEdition(OWN_CHECK, "own-rule"),
  check({ section, installation, report }) {
    for (const { device, enclosure, isPersonnel, outlets } of tripsOf(section)) {
      if (!isPersonnel) continue;
      const leaks = outlets.flatMap((standing) => leaksAt(section, installation, standing));
      const sum = leaks.reduce((total, { microamps }) => total + microamps, 0);
      const budget = Math.round(1000 * CLASS_A_TRIPS * STANDING_LEAK_SHARE);
      if (sum <= budget) continue;
      const users = [...leaks].sort((a, b) => b.microamps - a.microamps || (a.name < b.name ? -1 : 1));
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.over, {
          sum: inMilliamps(sum),
          device: device.name,
          box: enclosure.name,
          users: listedShort(users.map(({ name, microamps }) => wording.leak(name, inMilliamps(microamps)))),
          trips: CLASS_A_TRIPS,
          budget: inMilliamps(budget),
        }),
        data: { leakMa: sum / 1000, budgetMa: budget / 1000, tripsAtMa: CLASS_A_TRIPS },
        ...basisOf(leaks.flatMap(({ marks }) => marks)),
      });
    }
  },
});

interface Leak {
  readonly name: string;
  /** Whole, so that exactly the budget is exactly the budget. */
  readonly microamps: number;
  readonly marks: readonly EvidenceMark[];
}

function leaksAt(section: Section, installation: Installation, standing: OutletStanding): readonly Leak[] {
  const { key, name, device, ground, receptacle } = standing.outlet;
  // What a device leaks itself it leaks once, however many outlets it has.
  const own = receptacle || device.leakMa === undefined || outletsOf(device)[0]?.key !== key ? [] : [device];
  const users = [...own, ...pluggedAt(installation, standing)].filter(({ leakMa }) => (leakMa ?? 0) > 0);
  if (users.length === 0 || ground === undefined) return [];
  if (!section.reach().isOnGround({ device: device.id, node: ground })) return [];
  return users.map((user) => ({
    name: user === device ? device.name : wording.at(user.name, name),
    microamps: Math.round(1000 * (user.leakMa ?? 0)),
    marks: marksOn(user, "leakMa"),
  }));
}

/** "2.0", "0.85": as many digits as it has, one at least. */
const inMilliamps = (microamps: number): string => (microamps / 1000).toFixed(3).replace(/0{1,2}$/, "");
