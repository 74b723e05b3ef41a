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
import { wording } from "./words.ts";

/** Letter of a condition in its tag, the word for it, and its pattern. */
export const CONDITION_TAGS: Readonly<Record<ConditionKind, ConditionWords>> = {
  live: { letter: "L", word: "live", pattern: wording.aWholeSleeve },
  switched: { letter: "S", word: wording.liveThroughASwitch, pattern: wording.aSleeveInLongDashes },
  "through-load": { letter: "T", word: wording.liveThroughALoad, pattern: wording.aSleeveWithAShortDashed },
  neutral: { letter: "N", word: "neutral", pattern: wording.aSleeveWithADottedEdge },
  ground: { letter: "G", word: "ground", pattern: wording.noSleeve },
  "neutral-and-ground": { letter: "NG", word: wording.neutralAndGroundJoined, pattern: wording.aSleeveWithDashAndDot },
  floating: { letter: "F", word: wording.floatingNotProvenDead, pattern: wording.aSleeveWithLongDashAnd },
  dead: { letter: "0", word: "dead", pattern: wording.hollowAndDottedNoSleeve },
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
      note: wording.floatingALowImpedanceMeterReads(rounded(lowVolts)),
    };
  }
  const { ohm, continuous } = reading;
  const note = continuous ? wording.continuityItSounds : wording.noContinuity;
  if (ohm === undefined) return { number: "open", unit: "", note };
  if (ohm >= 999_500) return { number: (ohm / 1e6).toPrecision(3), unit: "MΩ", note };
  if (ohm >= 999.5) return { number: (ohm / 1000).toPrecision(3), unit: "kΩ", note };
  return { number: ohm < 10 ? ohm.toFixed(2) : ohm.toFixed(ohm < 100 ? 1 : 0), unit: "Ω", note };
}

/** The name of a place for a lead: "R1b LINE H, brass", "HL in B1", "C1 BK at B1". */
export function leadWords(place: LeadPlace, installation: Installation = shownInstallation()): string {
  switch (place.kind) {
    case "earth":
      return wording.groundOutside;
    case "bond": {
      const box = installation.enclosures[place.enclosure];
      return wording.metalOf(box?.name ?? wording.aBoxThatIsGone);
    }
    case "panel":
      return `${installation.enclosures[place.panel]?.name ?? "panel"} ${place.node.replace("@", "")}`;
    case "splice": {
      const found = findSplice(installation, place.splice);
      return found === undefined ? wording.aSpliceThatIsGone : wording.inWord(found.splice.name, found.enclosure.name);
    }
    case "end": {
      const box = Object.values(installation.enclosures).find(({ places }) => place.end in places);
      return box === undefined
        ? wording.anEndThatIsGone
        : wording.inWord2(nameOfEnd(installation, box, place.end), box.name);
    }
    case "device":
      return nodeWords(place.device, place.node, installation);
  }
}

const SLOT: Readonly<Record<string, string>> = { H: wording.hotSlot, N: wording.neutralSlot, G: wording.groundContact };
const HALF: Readonly<Record<string, string>> = { U: "upper ", L: "lower " };

function nodeWords(id: DeviceId, node: string, installation: Installation): string {
  const device = findDevice(installation, id)?.device;
  if (device === undefined) return wording.aDeviceThatIsGone;
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
    return { title, value: done?.holds ? "closed" : wording.staysOpen };
  }
  return { title, value: who.length === 0 ? wording.nothingOpened : wording.opened(who.join(", ")) };
}

function titleOf(act: Act, name: (id: DeviceId) => string): string {
  switch (act.kind) {
    case "own-test":
      return wording.testOf(name(act.device));
    case "reset":
      return wording.resetOf(name(act.device));
    case "plug-in-button":
      return wording.plugInTesterSButtonAt(name(parseOutlet(act.outlet).device));
    case "leak":
      return wording.leakOfMaAtToGround(act.mA, name(parseOutlet(act.outlet).device), act.contact);
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
      return one.stands === "cannot-be-reset" ? wording.cannotBeReset : one.stands;
    case "load":
      return one.inUse ? wording.inUse : one.plugged ? "unplugged" : wording.notInUse;
  }
}
