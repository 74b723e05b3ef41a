import type { Cable } from "../model/cable.ts";
import type { CableId, EnclosureId } from "../model/ids.ts";
import type { Section } from "../solver/section.ts";

/** Cables that run together between two enclosures. */
export interface Run {
  readonly id: string;
  readonly ends: readonly [EnclosureId, EnclosureId];
  readonly cables: readonly Cable[];
  /** Open wiring: its conductors are apart by their nature. */
  readonly open: boolean;
}

/** Runs by cable that lie on a ring of enclosures: the others carry out what they bring in, whatever is landed. */
export function runsInRings(section: Section): ReadonlyMap<CableId, Run> {
  const runs = runsOf(section);
  const bridges = bridgesAmong(runs);
  const found = new Map<CableId, Run>();
  for (const run of runs) if (!bridges.has(run)) for (const cable of run.cables) found.set(cable.id, run);
  return found;
}

function runsOf({ cables }: Section): readonly Run[] {
  const groups = new Map<string, { readonly ends: Run["ends"]; readonly cables: Cable[] }>();
  for (const cable of cables) {
    const { a, b } = cable.sides;
    if (!("enclosure" in a) || !("enclosure" in b) || a.enclosure === b.enclosure) continue;
    const ends: Run["ends"] = a.enclosure < b.enclosure ? [a.enclosure, b.enclosure] : [b.enclosure, a.enclosure];
    const key = `${ends.join(" ")} ${togetherBy(cable)}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { ends, cables: [cable] });
    else group.cables.push(cable);
  }
  return [...groups].map(([id, group]) => ({
    id,
    ...group,
    open: group.cables.some(({ construction }) => construction === "knob-and-tube"),
  }));
}

/**
 * The same route, or the same opening at either end. Conductors of a raceway with no route recorded are taken to be in
 * one, because nobody draws a raceway for each.
 */
function togetherBy({ id, construction, route, sides: { a, b } }: Cable): string {
  if (route !== undefined && route !== "") return ["route", route].join(" ");
  if (construction === "raceway") return "raceway";
  const entries = [a, b].flatMap((side) => ("entry" in side ? side.entry : [])).sort();
  return construction === "single-conductor" ? ["entries", ...entries].join(" ") : ["cable", id].join(" ");
}

interface Visit {
  readonly at: EnclosureId;
  readonly by: Run | undefined;
  readonly runs: readonly Run[];
  next: number;
}

/** Runs without which the drawing falls apart. Depth first without recursion: a chain of boxes may be long. */
function bridgesAmong(runs: readonly Run[]): ReadonlySet<Run> {
  const at = new Map<EnclosureId, Run[]>();
  for (const run of runs) for (const end of run.ends) at.set(end, [...(at.get(end) ?? []), run]);
  const seen = new Map<EnclosureId, number>();
  const lowest = new Map<EnclosureId, number>();
  const bridges = new Set<Run>();
  for (const start of at.keys()) {
    if (seen.has(start)) continue;
    const stack: Visit[] = [];
    const enter = (id: EnclosureId, by: Run | undefined): void => {
      lowest.set(id, seen.size);
      seen.set(id, seen.size);
      stack.push({ at: id, by, runs: at.get(id) ?? [], next: 0 });
    };
    enter(start, undefined);
    for (let top = stack.at(-1); top !== undefined; top = stack.at(-1)) {
      const run = top.runs[top.next];
      top.next += 1;
      if (run === undefined) {
        stack.pop();
        const below = stack.at(-1);
        if (below === undefined || top.by === undefined) continue;
        const low = lowest.get(top.at) as number;
        lowest.set(below.at, Math.min(lowest.get(below.at) as number, low));
        if (low > (seen.get(below.at) as number)) bridges.add(top.by);
      } else if (run !== top.by) {
        const other = run.ends[0] === top.at ? run.ends[1] : run.ends[0];
        const known = seen.get(other);
        if (known === undefined) enter(other, run);
        else lowest.set(top.at, Math.min(lowest.get(top.at) as number, known));
      }
    }
  }
  return bridges;
}
