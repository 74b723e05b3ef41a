import type {
  Act,
  ConditionKind,
  Energised,
  LeadPlace,
  MeterReading,
  MeterVolts,
  Operable,
} from "../../../shared-model/answers/energised.ts";
import { type DeviceId, parseOutlet } from "../../../shared-model/model/ids.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { findDevice, findSplice } from "../../../shared-model/queries/find-item.ts";
import { findTerminal, nameOfTerminal } from "../../../shared-model/queries/terminals-of.ts";
import { shownInstallation } from "../document-store.ts";

/** Letter of a condition in its tag, the word for it, and its pattern. */
export const CONDITION_TAGS: Readonly<Record<ConditionKind, ConditionWords>> = {
  live: { letter: "L", word: "live", pattern: "a whole sleeve" },
  switched: { letter: "S", word: "live through a switch", pattern: "a sleeve in long dashes" },
  "through-load": { letter: "T", word: "live through a load", pattern: "a sleeve with a short-dashed edge" },
  neutral: { letter: "N", word: "neutral", pattern: "a sleeve with a dotted edge" },
  ground: { letter: "G", word: "ground", pattern: "no sleeve" },
  "neutral-and-ground": { letter: "NG", word: "neutral and ground joined", pattern: "a sleeve with dash and dot" },
  floating: { letter: "F", word: "floating, not proven dead", pattern: "a sleeve with long dash and dot" },
  dead: { letter: "0", word: "dead", pattern: "hollow and dotted, no sleeve" },
};

interface ConditionWords {
  readonly letter: string;
  readonly word: string;
  /** How the conductor is drawn, in words. */
  readonly pattern: string;
}

/** All conditions, the gravest for a person who touches them first. */
export const CONDITIONS = Object.keys(CONDITION_TAGS) as readonly ConditionKind[];

/** One decimal, and never a minus before nothing. */
export const rounded = (value: number): string => (Math.abs(value) < 0.05 ? "0.0" : value.toFixed(1));

/** "119.8 V"; "~83 V, floating". */
export const voltWords = ({ volts, floating }: MeterVolts): string =>
  floating ? `~${volts.toFixed(0)} V, floating` : `${rounded(volts)} V`;

/** What the meter shows, as number and unit, and what is to be said about it. */
export function meterWords(reading: MeterReading): {
  readonly number: string;
  readonly unit: string;
  readonly note: string;
} {
  if (reading.kind === "volts") {
    const { volts, lowVolts, floating } = reading;
    if (!floating) return { number: rounded(volts), unit: "V", note: "" };
    return {
      number: `~${volts.toFixed(0)}`,
      unit: "V",
      note: `Floating: a low-impedance meter reads ${rounded(lowVolts)} V. It is no proof of live, nor of dead.`,
    };
  }
  const { ohm, continuous } = reading;
  const note = continuous ? "Continuity: it sounds." : "No continuity.";
  if (ohm === undefined) return { number: "open", unit: "", note };
  if (ohm >= 999_500) return { number: (ohm / 1e6).toPrecision(3), unit: "MΩ", note };
  if (ohm >= 999.5) return { number: (ohm / 1000).toPrecision(3), unit: "kΩ", note };
  return { number: ohm < 10 ? ohm.toFixed(2) : ohm.toFixed(ohm < 100 ? 1 : 0), unit: "Ω", note };
}

/** The name of a place for a lead: "R1b LINE H, brass", "HL in B1", "C1 BK at B1". */
export function leadWords(place: LeadPlace, installation: Installation = shownInstallation()): string {
  switch (place.kind) {
    case "earth":
      return "ground outside";
    case "bond": {
      const box = installation.enclosures[place.enclosure];
      return `metal of ${box?.name ?? "a box that is gone"}`;
    }
    case "panel":
      return `${installation.enclosures[place.panel]?.name ?? "panel"} ${place.node.replace("@", "")}`;
    case "splice": {
      const found = findSplice(installation, place.splice);
      return found === undefined ? "a splice that is gone" : `${found.splice.name} in ${found.enclosure.name}`;
    }
    case "end": {
      const box = Object.values(installation.enclosures).find(({ places }) => place.end in places);
      return box === undefined ? "an end that is gone" : `${nameOfEnd(installation, box, place.end)} in ${box.name}`;
    }
    case "device":
      return nodeWords(place.device, place.node, installation);
  }
}

const SLOT: Readonly<Record<string, string>> = { H: "hot slot", N: "neutral slot", G: "ground contact" };
const HALF: Readonly<Record<string, string>> = { U: "upper ", L: "lower " };

function nodeWords(id: DeviceId, node: string, installation: Installation): string {
  const device = findDevice(installation, id)?.device;
  if (device === undefined) return "a device that is gone";
  const terminal = findTerminal(device, node as never);
  if (terminal !== undefined) {
    const finish = terminal.finish === "none" ? "" : `, ${terminal.finish}`;
    return `${nameOfTerminal(device, node as never)}${finish}`;
  }
  const [half = "", letter = ""] = node;
  const slot = SLOT[letter];
  return slot === undefined ? `${device.name} ${node}` : `${device.name} ${HALF[half] ?? ""}${slot}`;
}

/** What an act is called, and in one line what followed. */
export function actWords(
  act: Act,
  { act: done, opened }: Energised,
): { readonly title: string; readonly value: string } {
  const installation = shownInstallation();
  const name = (id: DeviceId): string => findDevice(installation, id)?.device.name ?? id;
  const title = titleOf(act, name);
  if (done?.impossible !== undefined) return { title, value: done.impossible };
  const who = opened.flat().map((one) => one.name);
  if (act.kind === "reset") {
    return { title, value: done?.holds ? "closed" : "stays open" };
  }
  return { title, value: who.length === 0 ? "nothing opened" : `${who.join(", ")} opened` };
}

function titleOf(act: Act, name: (id: DeviceId) => string): string {
  switch (act.kind) {
    case "own-test":
      return `TEST of ${name(act.device)}`;
    case "reset":
      return `RESET of ${name(act.device)}`;
    case "plug-in-button":
      return `Plug-in tester's button at ${name(parseOutlet(act.outlet).device)}`;
    case "leak":
      return `Leak of ${act.mA} mA at ${name(parseOutlet(act.outlet).device)}, ${act.contact} to ground outside`;
  }
}

/** How something stands, in a word. */
export function standsWords(one: Operable): string {
  switch (one.kind) {
    case "breaker":
      return one.stands;
    case "switch":
      return one.positions[one.position] ?? "";
    case "ground-fault":
      return one.stands === "cannot-be-reset" ? "cannot be reset" : one.stands;
    case "load":
      return one.inUse ? "in use" : one.plugged ? "unplugged" : "not in use";
  }
}
