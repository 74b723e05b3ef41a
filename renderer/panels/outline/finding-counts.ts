import type { Finding, Severity, Subject } from "../../../shared-model/answers/finding.ts";
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { CableId, EnclosureId, LoadId, OutletKey } from "../../../shared-model/model/ids.ts";
import { parseOutlet } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { severityRank } from "../../../shared-model/model/severity.ts";

/** How many findings are about a thing or, for a box, about something in it; and the worst of them. */
export interface FindingCount {
  readonly count: number;
  readonly worst: Severity;
}

/** Counts by "kind id" of outline subjects; a terminal's as "terminal d1.LINE_H" and on its device too. */
export function countFindings(
  installation: Installation,
  findings: readonly Finding[],
): ReadonlyMap<string, FindingCount> {
  const homes = homesOf(installation.enclosures);
  const counts = new Map<string, FindingCount>();
  for (const { severity, subjects } of findings) {
    const keys = new Set(subjects.flatMap((subject) => keysOf(installation, homes, subject)));
    for (const key of keys) {
      const before = counts.get(key);
      counts.set(key, { count: (before?.count ?? 0) + 1, worst: worse(before?.worst, severity) });
    }
  }
  return counts;
}

const worse = (a: Severity | undefined, b: Severity): Severity =>
  a !== undefined && severityRank(a) <= severityRank(b) ? a : b;

function keysOf(
  installation: Installation,
  homes: ReadonlyMap<string, EnclosureId>,
  { kind, id }: Subject,
): readonly string[] {
  const own = `${kind} ${id}`;
  const homeOf = (part: string): readonly string[] => {
    const home = homes.get(part);
    return home === undefined ? [] : [`enclosure ${home}`];
  };
  switch (kind) {
    case "terminal":
    case "outlet": {
      const device = kind === "outlet" ? parseOutlet(id as OutletKey).device : (id.split(".")[0] ?? "");
      return [own, `device ${device}`, ...homeOf(device)];
    }
    case "cable":
      return [own, ...sidesOf(installation.cables[id as CableId])];
    case "load": {
      const plug = installation.loads[id as LoadId]?.plug;
      return [own, ...(plug === undefined ? [] : homeOf(parseOutlet(plug).device))];
    }
    default:
      return [own, ...homeOf(id)];
  }
}

function sidesOf(cable: Cable | undefined): readonly string[] {
  if (cable === undefined) return [];
  return [cable.sides.a, cable.sides.b].flatMap((side) => ("enclosure" in side ? [`enclosure ${side.enclosure}`] : []));
}

const cache = new WeakMap<Installation["enclosures"], ReadonlyMap<string, EnclosureId>>();

/** The enclosure that each device, splice, jumper, entry and end is in. Cached by the table. */
function homesOf(enclosures: Installation["enclosures"]): ReadonlyMap<string, EnclosureId> {
  const kept = cache.get(enclosures);
  if (kept !== undefined) return kept;
  const homes = new Map<string, EnclosureId>();
  for (const { id, devices, splices, jumpers, entries, places } of Object.values(enclosures))
    for (const table of [devices, splices, jumpers, entries, places])
      for (const part of Object.keys(table)) homes.set(part, id);
  cache.set(enclosures, homes);
  return homes;
}
