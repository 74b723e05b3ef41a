import type { ScopeBox, ScopeItemKind } from "../../answers/scope.ts";
import { type ScopeSign, signOf } from "./scope-drawing.ts";

/** How many things of a box are of each sign: what is told of it from a distance. */
export type ScopeTally = Readonly<Record<Exclude<ScopeSign, "kept">, number>>;

/** Ends of a jumper are told with it, openings with the cables in them. */
const COUNTED: ReadonlySet<ScopeItemKind> = new Set(["enclosure", "device", "splice", "jumper", "end", "part", "ring"]);

const kept = new WeakMap<ScopeBox, ScopeTally>();

/** What is moved, removed and new in a box; an exchanged device counts once out and once in. */
export function scopeTally(box: ScopeBox): ScopeTally {
  const known = kept.get(box);
  if (known !== undefined) return known;
  const tally = { moved: 0, removed: 0, new: 0 };
  for (const { kind, item, owner } of box.changes) {
    if (!COUNTED.has(item.kind) || (item.kind === "end" && owner?.kind === "jumper")) continue;
    const sign = signOf(kind);
    if (sign === "kept") continue;
    tally[sign] += 1;
    if (kind === "replaced") tally.removed += 1;
  }
  kept.set(box, tally);
  return tally;
}
