import type { Role } from "../../answers/circuit.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Section } from "../../solver/section.ts";
import { isThicker, type WireSize } from "../../units/wire-size.ts";
import { type Loop, loopsOf } from "../loops.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  pair: "{cables} join the same {what} in {a} and in {b}: two conductors of {awg} AWG in parallel, where {least} AWG is the thinnest that may be. If one of them comes loose, nobody notices, and the other carries all of it. Take one of them off at both ends.",
  ring: "The {what} runs in a ring, {cables} through {boxes}: both ways carry it, in conductors of {awg} AWG, where {least} AWG is the thinnest that may be joined so. Open the ring at one place, and cap both conductors there.",
});

const wording = catalogue({
  hot: "hot",
  neutral: "neutral",
  traveller: "traveller",
});

const BEFORE_2020 = { section: "310.10(H)", confidence: "unconfirmed" } as const;

/** A ring through a panel's bar counts where one circuit makes it; neutrals of two circuits are another matter. */
export const parallelSmall = defineRule({
  id: "parallel-small",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Small conductors are not joined in parallel, nor a circuit in a ring.",
  why: "Two thin conductors do not share a current evenly, and when one of them opens the other carries all of it with nothing to show for it. A ring also keeps a part live that was taken off at one end. It comes from a forgotten third cable between two boxes, or from closing a circuit with itself in the last box. Grounds may be joined as often as one likes.",
  messages,
  sections: everyEdition("310.10(G)", "unconfirmed", { 2011: BEFORE_2020, 2014: BEFORE_2020, 2017: BEFORE_2020 }),
  values: ["parallelFromAwg"],
  check({ section, edition, report }) {
    const least = edition.values.parallelFromAwg.value;
    for (const { cables, loops } of byCables(loopsOf(section))) {
      const sizes = loops.flat().flatMap(({ cable, key }) => cable.conductors[key]?.awg ?? []);
      const thinnest = sizes.reduce((thin: WireSize, size) => (isThicker(thin, size) ? size : thin), "4/0");
      if (!isThicker(least, thinnest)) continue;
      const boxes = [...new Set(loops.flat().flatMap(({ cable }) => namesAt(section, cable)))].sort();
      const [a = "", b = ""] = boxes;
      report({
        subjects: cables.map((cable) => subject("cable", cable)),
        message: fillIn(cables.length === 2 && boxes.length === 2 ? messages.pair : messages.ring, {
          cables: listed(cables.map(({ name }) => name)),
          what: whatWords(section, loops),
          a,
          b,
          boxes: listed(boxes),
          awg: thinnest,
          least,
        }),
        data: { awg: thinnest, leastAwg: least },
        ...basisOf(
          cables.flatMap((cable) => marksOn(cable, "item", "conductors")),
          loops
            .flat()
            .flatMap(({ cable, a: one, b: other }) => [
              ...marksAt(section, cable, "a", one),
              ...marksAt(section, cable, "b", other),
            ]),
        ),
      });
    }
  },
});

interface Ring {
  readonly cables: readonly Cable[];
  readonly loops: readonly Loop[];
}

/** Hot and neutral of the same cables in a ring are one ring. */
function byCables(loops: readonly Loop[]): readonly Ring[] {
  const rings = new Map<string, { readonly cables: readonly Cable[]; readonly loops: Loop[] }>();
  for (const loop of loops) {
    const cables = [...new Set(loop.map(({ cable }) => cable))].sort((p, q) => (p.id < q.id ? -1 : 1));
    const key = cables.map(({ id }) => id).join(" ");
    const known = rings.get(key);
    if (known === undefined) rings.set(key, { cables, loops: [loop] });
    else known.loops.push(loop);
  }
  return [...rings.values()];
}

const WORDS: Readonly<Partial<Record<Role, string>>> = {
  grounded: wording.neutral,
  traveller: wording.traveller,
};

function whatWords(section: Section, loops: readonly Loop[]): string {
  const words = loops.flatMap(([first]) =>
    first === undefined ? [] : (WORDS[section.roleOfEnd(first.a)] ?? wording.hot),
  );
  return listed([...new Set(words)].sort());
}

const namesAt = ({ installation }: Section, { sides }: Cable): readonly string[] =>
  [sides.a, sides.b].flatMap((side) =>
    "enclosure" in side ? (installation.enclosures[side.enclosure]?.name ?? []) : [],
  );

function marksAt({ installation }: Section, { sides }: Cable, side: "a" | "b", end: Loop[number]["a"]) {
  const where = sides[side];
  const place = "enclosure" in where ? installation.enclosures[where.enclosure]?.places[end] : undefined;
  return place === undefined ? [] : marksOn(place, "at");
}
