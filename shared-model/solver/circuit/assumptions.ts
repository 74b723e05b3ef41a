import { findDeviceType } from "../../catalog/device-types.ts";
import { findLoadItem } from "../../catalog/load-items.ts";
import type { Cable } from "../../model/cable.ts";
import type { Panel } from "../../model/enclosure.ts";
import { ASSUMED_CABLE_FT, ASSUMED_JUMPER_IN, ASSUMED_LOAD_W } from "./modelling-values.ts";
import type { Wiring } from "./wiring.ts";

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
        .map(({ name }) => `What ${name} uses is not known: ${ASSUMED_LOAD_W} W assumed.`),
    ];
    made.set(wiring, sentences);
  }
  return sentences;
}

function supplySentences({ scope, supply, legs }: Wiring): readonly string[] {
  const panels = scope.enclosures.filter((enclosure): enclosure is Panel => enclosure.kind === "panel");
  const sentences = panels.flatMap((panel) => bondSentences(panel));
  if (legs.length === 0) sentences.unshift("Nothing drawn here is joined to a service panel: everything is dead.");
  if (supply.system === "120/240")
    for (const panel of panels)
      for (const { name, legs: on = [] } of Object.values(panel.devices))
        if (panel.supply === "service" && on.includes("C"))
          sentences.push(`${name} stands on leg C, which a 120/240 V supply does not have: that leg is dead.`);
  return sentences;
}

function bondSentences({ name, supply, mainBond }: Panel): string[] {
  if (supply === "service") {
    if (mainBond === "unknown") return [`Where the main bond is, is not known: taken to be in ${name}.`];
    if (mainBond === "elsewhere")
      return [`The main bond is not in ${name}: the way from there to its ground bar is taken to be sound.`];
  } else if (mainBond === "unknown") return [`Whether the bars of ${name} are joined is not known: taken not to be.`];
  return [];
}

function lengthSentences({ scope, enclosures }: Wiring): readonly string[] {
  const unknown = scope.cables.filter(({ lengthFt }) => lengthFt === undefined).map(({ name }) => name);
  const each = unknown.length === 1 ? "" : "each ";
  let jumpers = 0;
  for (const { nets } of enclosures.values()) jumpers += nets.jumpersOfUnknownLength;
  return [
    ...(unknown.length > 0 ? [`No length of ${listed(unknown)} is known: ${ASSUMED_CABLE_FT} ft ${each}assumed.`] : []),
    ...(jumpers === 1 ? [`No length of a jumper is known: ${ASSUMED_JUMPER_IN} in. assumed.`] : []),
    ...(jumpers > 1 ? [`No length of ${jumpers} jumpers is known: ${ASSUMED_JUMPER_IN} in. each assumed.`] : []),
  ];
}

/** A few names, and how many more there are. */
const MOST_NAMED = 8;

function listed(names: readonly string[]): string {
  const shown = [...names].sort((p, q) => p.localeCompare(q, "en", { numeric: true })).slice(0, MOST_NAMED);
  const left = names.length - shown.length;
  if (left > 0) return `${shown.join(", ")} and ${left} more`;
  return shown.length < 2 ? shown.join("") : `${shown.slice(0, -1).join(", ")} and ${shown.at(-1)}`;
}

function cableSentences({ name, lengthFt, construction }: Cable): readonly string[] {
  return [
    ...(lengthFt === 0 ? [`The length of ${name} is 0 ft: the least resistance there is is taken.`] : []),
    ...(construction === "armoured-old" || construction === "armoured-bonded"
      ? [`The armour of ${name} is left out: it may carry current as a ground path.`]
      : []),
  ];
}

function unknownDevices({ devices }: Wiring["scope"]["enclosures"][number]): readonly string[] {
  return Object.values(devices)
    .filter(({ type }) => findDeviceType(type) === undefined)
    .map(({ name }) => `What ${name} is inside is not known: nothing in it conducts.`);
}
