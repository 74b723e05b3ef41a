import type { StepReading } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EndKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { groundsOf } from "../../rules/grounds.ts";
import { sectionOf } from "../../solver/sections.ts";
import { type BoxNet, boxNets } from "../box-nets.ts";
import { placeWords } from "../scope/scope-words.ts";

const wording = catalogue({
  at: (end: Part, place: Part) => `${end} at ${place}`,
  box: "the box",
  free: (end: Part, place: Part) => `${end}, ${place}`,
  noGround:
    "No ground is drawn to come here, and between hot and neutral an open neutral reads as dead: measure each to a ground that is known to be good as well, brought here by a lead, and prove the tester between that ground and a live source.",
  pair: (one: Part, other: Part) => `${one} to ${other}`,
  slots: (outlet: Part) => `${outlet}, both halves: each slot to each other`,
  toAll: (one: Part) => `${one} to every other, to ground and to the box`,
  toKnown: (one: Part) => `${one} to the ground brought here`,
});

/** With more pieces of metal than this every pair is not named one by one: each is then told against all others. */
const MOST_NAMED = 8;

/** Everything in a box that can be live, each piece of metal once, as a person finds it: a joint, a screw, a free end. */
function pieces(installation: Installation, enclosure: Enclosure): readonly string[] {
  const nets = boxNets(enclosure);
  const names: string[] = [];
  const ends: (EndKey | undefined)[] = [];
  const told = new Set<BoxNet>();
  for (const end of (Object.keys(enclosure.places) as EndKey[]).sort()) {
    const at = enclosure.places[end]?.at;
    if (at === undefined) continue;
    const net =
      at.kind === "splice"
        ? nets.get(`s ${at.splice}`)
        : at.kind === "bond"
          ? nets.get("b")
          : at.kind === "terminal"
            ? nets.get(`t ${at.device}.${at.terminal}`)
            : undefined;
    if (net === undefined) {
      names.push(wording.free(nameOfEnd(installation, enclosure, end), placeWords(enclosure, at)));
      ends.push(undefined);
    } else if (!told.has(net)) {
      told.add(net);
      const [splice] = net.splices;
      names.push(splice === undefined ? placeWords(enclosure, at) : (enclosure.splices[splice]?.name ?? splice));
      ends.push(end);
    }
  }
  // Two screws of one name, as both hot ones of a duplex, are told apart by what is on them.
  const apart = names.map((name, i) => {
    const end = ends[i];
    const isAlone = names.indexOf(name) === names.lastIndexOf(name);
    return end === undefined || isAlone ? name : wording.at(nameOfEnd(installation, enclosure, end), name);
  });
  const isBonded = [...told].some(({ bond }) => bond);
  const isMetal = enclosure.kind === "panel" || enclosure.material !== "nonmetallic";
  return isMetal && !isBonded ? [...apart, wording.box] : apart;
}

/**
 * A box to which no ground comes has nothing to measure against: hot to neutral reads 0 V too where the neutral alone is
 * open, and hot to a box that is not grounded reads little. Source: NFPA 70E 120.5 and OSHA 29 CFR 1910.333(b)(2)(iv), from
 * memory, ask for each conductor to ground; how a ground is brought there is common practice.
 */
function isWithoutGround(installation: Installation, enclosure: Enclosure): boolean {
  const section = enclosure.kind === "box" ? sectionOf(installation, enclosure.id) : undefined;
  return enclosure.kind === "box" && section !== undefined && !groundsOf(section, enclosure).present;
}

/** What a person must know to prove a box dead to which no ground comes. */
export const withoutGroundWords = (installation: Installation, enclosure: Enclosure): readonly string[] =>
  isWithoutGround(installation, enclosure) ? [wording.noGround] : [];

/** What is measured to know that a box is dead: the faces of its devices, then every pair by name. */
export function deadReadings(installation: Installation, enclosure: Enclosure): readonly StepReading[] {
  const all = pieces(installation, enclosure);
  const at = { point: enclosure.id, name: enclosure.name, test: "dead" as const };
  const dead = { expected: { kind: "word", word: "dead" }, expect: "0 V" } as const;
  const pairs =
    all.length > MOST_NAMED
      ? all.map((one) => ({
          id: `each:${one}`,
          what: wording.toAll(one),
          ...at,
          ...dead,
        }))
      : all.flatMap((one, index) =>
          all
            .slice(index + 1)
            .map((other) => ({ id: `pair:${one}:${other}`, what: wording.pair(one, other), ...at, ...dead })),
        );
  const toKnown = !isWithoutGround(installation, enclosure)
    ? []
    : all.map((one) => ({ id: `known-ground:${one}`, what: wording.toKnown(one), ...at, ...dead }));
  const faces = inOrder(enclosure.devices).flatMap((device) =>
    outletsOf(device).flatMap(({ key, name, receptacle }) =>
      receptacle
        ? [
            {
              id: `face:${key}`,
              what: wording.slots(name),
              ...at,
              point: key,
              name,
              ...dead,
            },
          ]
        : [],
    ),
  );
  // A face is measured before the cover comes off and a hand goes in.
  return [...faces, ...pairs, ...toKnown];
}
