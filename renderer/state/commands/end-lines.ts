import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { cableEnd, type EndKey, jumperEnd } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { COLOURS, colourCode } from "../../../shared-model/units/colour.ts";
import { conductorKeys } from "../conductor-keys.ts";
import { placeWords } from "../place-words.ts";
import type { Selected } from "../selection.ts";
import { goTo } from "../session-store.ts";
import { type CommandLine, SHOWN } from "./entry.ts";
import { laterWording } from "./later-words.ts";

/** A cable or a jumper, by which its ends are called. */
interface Owner {
  /** Small letters, as it is searched. */
  readonly name: string;
  readonly ends: () => readonly (readonly [Enclosure, EndKey])[];
}

/** What else than the names of owners and boxes can stand in the name of an end. */
const OTHER_WORDS = [...COLOURS.map(colourCode), "as", laterWording.endIn, "2"].join(" ").toLowerCase();

/**
 * Conductor ends that are called what was typed: by their cable or jumper, and by colour or box besides. A house has
 * tens of thousands of ends, so that only those are named that can be meant, and no more than are shown.
 */
export function endLines(installation: Installation, typed: string): readonly EndLine[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const all = keptOwners(installation);
  const owners = [
    ...all.filter(({ name }) => words.includes(name)),
    ...all.filter(({ name }) => !words.includes(name) && words.some((word) => name.includes(word))),
  ];
  const lines: EndLine[] = [];
  for (const owner of owners) {
    for (const [enclosure, end] of owner.ends()) {
      const about = `${owner.name} ${OTHER_WORDS} ${enclosure.name.toLowerCase()}`;
      if (!words.every((word) => about.includes(word))) continue;
      const line = lineOf(installation, enclosure, end);
      const text = `${line.title} ${line.note}`.toLowerCase();
      if (words.every((word) => text.includes(word))) lines.push(line);
    }
    if (lines.length >= SHOWN) break;
  }
  return lines;
}

const kept = new WeakMap<Installation, readonly Owner[]>();

function keptOwners(installation: Installation): readonly Owner[] {
  const known = kept.get(installation) ?? ownersOf(installation);
  kept.set(installation, known);
  return known;
}

function ownersOf(installation: Installation): Owner[] {
  const { cables, enclosures } = installation;
  const ofCables = Object.values(cables).map((cable): Owner => {
    const ends = () =>
      (["a", "b"] as const).flatMap((side) => {
        const at = cable.sides[side];
        const enclosure = "enclosure" in at ? enclosures[at.enclosure] : undefined;
        if (enclosure === undefined) return [];
        const all = conductorKeys(cable).map((key) => [enclosure, cableEnd(cable.id, key, side)] as const);
        return all.filter(([, end]) => end in enclosure.places);
      });
    return { name: cable.name.toLowerCase(), ends };
  });
  const ofJumpers = Object.values(enclosures).flatMap((enclosure) =>
    Object.values(enclosure.jumpers).map(({ id, name }): Owner => {
      const ends = () => [[enclosure, jumperEnd(id, "a")] as const, [enclosure, jumperEnd(id, "b")] as const];
      return { name: name.toLowerCase(), ends };
    }),
  );
  return [...ofCables, ...ofJumpers];
}

export interface EndLine extends CommandLine {
  readonly target: Extract<Selected, { readonly kind: "end" }>;
}

const lineOf = (installation: Installation, enclosure: Enclosure, end: EndKey): EndLine => ({
  key: `end ${enclosure.id} ${end}`,
  title: nameOfEnd(installation, enclosure, end),
  note: laterWording.endIn2(enclosure.name, placeWords(enclosure, end)),
  target: { kind: "end", enclosure: enclosure.id, id: end },
  run: () => goTo({ kind: "end", enclosure: enclosure.id, id: end }, "details"),
});
