import { findDeviceType } from "../../catalog/device-types.ts";
import { findLoadItem } from "../../catalog/load-items.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Panel } from "../../model/enclosure.ts";
import { ASSUMED_CABLE_FT, ASSUMED_JUMPER_IN, ASSUMED_LOAD_W } from "./modelling-values.ts";
import type { Wiring } from "./wiring.ts";

const wording = catalogue({
  powerUnknown: (name: Part, watts: Part) => `What ${name} uses is not known: ${watts} W assumed.`,
  nothingJoined: "Nothing drawn here is joined to a service panel: everything is dead.",
  onLegC: (name: Part) => `${name} stands on leg C, which a 120/240 V supply does not have: that leg is dead.`,
  bondUnknown: (name: Part) => `Where the main bond is, is not known: taken to be in ${name}.`,
  bondElsewhere: (name: Part) =>
    `The main bond is not in ${name}: the way from there to its ground bar is taken to be sound.`,
  barsUnknown: (name: Part) => `Whether the bars of ${name} are joined is not known: taken not to be.`,
  lengthOfJumper: (inches: Part) => `No length of a jumper is known: ${inches} in. assumed.`,
  lengthOfJumpers: (jumpers: Part, inches: Part) =>
    `No length of ${jumpers} jumpers is known: ${inches} in. each assumed.`,
  lengthZero: (name: Part) => `The length of ${name} is 0 ft: the least resistance there is is taken.`,
  armourLeftOut: (name: Part) => `The armour of ${name} is left out: it may carry current as a ground path.`,
  insideUnknown: (name: Part) => `What ${name} is inside is not known: nothing in it conducts.`,
  and: (names: Part, last: Part) => `${names} and ${last}`,
  andMore: (names: Part, left: Part) => `${names} and ${left} more`,
  lengthOfEach: (cables: Part, feet: Part) => `No length of ${cables} is known: ${feet} ft each assumed.`,
  lengthOfOne: (cable: Part, feet: Part) => `No length of ${cable} is known: ${feet} ft assumed.`,
});

const made = new WeakMap<Wiring, readonly string[]>();

/** What was not known and what was taken instead, and what a reading leaves out, as sentences. Cached by the wiring. */
export function assumptionsOf(wiring: Wiring): readonly string[] {
  let sentences = made.get(wiring);
  if (sentences === undefined) {
    const { scope, enclosures, loads } = wiring;
    sentences = [
      ...supplySentences(wiring),
      ...lengthSentences(wiring),
      ...scope.cables.flatMap(cableSentences),
      ...[...enclosures.values()].flatMap(({ nets }) => nets.assumptions),
      ...[...enclosures.values()].flatMap(({ nets }) => unknownDevices(nets.enclosure)),
      ...loads
        .filter(({ loadOhm, loadW, item }) => (loadOhm ?? loadW ?? findLoadItem(item)) === undefined)
        .map(({ name }) => wording.powerUnknown(name, ASSUMED_LOAD_W)),
    ];
    made.set(wiring, sentences);
  }
  return sentences;
}

function supplySentences({ scope, supply, legs }: Wiring): readonly string[] {
  const panels = scope.enclosures.filter((enclosure): enclosure is Panel => enclosure.kind === "panel");
  const sentences = panels.flatMap((panel) => bondSentences(panel));
  if (legs.length === 0) sentences.unshift(wording.nothingJoined);
  if (supply.system === "120/240")
    for (const panel of panels)
      for (const { name, legs: on = [] } of Object.values(panel.devices))
        if (panel.supply === "service" && on.includes("C")) sentences.push(wording.onLegC(name));
  return sentences;
}

function bondSentences({ name, supply, mainBond }: Panel): string[] {
  if (supply === "service") {
    if (mainBond === "unknown") return [wording.bondUnknown(name)];
    if (mainBond === "elsewhere") return [wording.bondElsewhere(name)];
  } else if (mainBond === "unknown") return [wording.barsUnknown(name)];
  return [];
}

function lengthSentences({ scope, enclosures }: Wiring): readonly string[] {
  const unknown = scope.cables.filter(({ lengthFt }) => lengthFt === undefined).map(({ name }) => name);
  let jumpers = 0;
  for (const { nets } of enclosures.values()) jumpers += nets.jumpersOfUnknownLength;
  return [
    ...(unknown.length === 1 ? [wording.lengthOfOne(listed(unknown), ASSUMED_CABLE_FT)] : []),
    ...(unknown.length > 1 ? [wording.lengthOfEach(listed(unknown), ASSUMED_CABLE_FT)] : []),
    ...(jumpers === 1 ? [wording.lengthOfJumper(ASSUMED_JUMPER_IN)] : []),
    ...(jumpers > 1 ? [wording.lengthOfJumpers(jumpers, ASSUMED_JUMPER_IN)] : []),
  ];
}

/** A few names, and how many more there are. */
const MOST_NAMED = 8;

function listed(names: readonly string[]): string {
  const shown = [...names].sort((p, q) => p.localeCompare(q, "en", { numeric: true })).slice(0, MOST_NAMED);
  const left = names.length - shown.length;
  if (left > 0) return wording.andMore(shown.join(", "), left);
  return shown.length < 2 ? shown.join("") : wording.and(shown.slice(0, -1).join(", "), shown.at(-1) ?? "");
}

function cableSentences({ name, lengthFt, construction }: Cable): readonly string[] {
  return [
    ...(lengthFt === 0 ? [wording.lengthZero(name)] : []),
    ...(construction === "armoured-old" || construction === "armoured-bonded" ? [wording.armourLeftOut(name)] : []),
  ];
}

function unknownDevices({ devices }: Wiring["scope"]["enclosures"][number]): readonly string[] {
  return Object.values(devices)
    .filter(({ type }) => findDeviceType(type) === undefined)
    .map(({ name }) => wording.insideUnknown(name));
}
