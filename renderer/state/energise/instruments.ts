import type { LeadPlace } from "../../../shared-model/answers/energised.ts";
import { getDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure, Splice } from "../../../shared-model/model/enclosure.ts";
import type { EndKey, OutletKey, ReadingId } from "../../../shared-model/model/ids.ts";
import type { At } from "../../../shared-model/model/place.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { terminalsOf } from "../../../shared-model/queries/terminals-of.ts";
import { dispatch, shownInstallation } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { openPick } from "../pick-store.ts";
import { notify } from "../session-store.ts";
import { energiseStore, type LeadName, type LogLine, readMeter, readTester } from "./energise-store.ts";
import { leadWords, meterWords, voltWords } from "./energise-words.ts";
import { compute } from "./energising.ts";
import { evidenceLine, pointOf } from "./evidence.ts";
import { wording } from "./words.ts";

/** Takes a lead in the hand, or lays it down again. */
export function takeLead(lead: LeadName | undefined): void {
  energiseStore.merge({ inHand: lead });
}

/** Puts a lead on a place. From the hand, the other one comes to hand next, unless it is placed. */
export function putLead(lead: LeadName, place: LeadPlace | undefined): void {
  const { leads, inHand } = energiseStore.get();
  const { [lead]: _, ...others } = leads;
  const other = lead === "V" ? "COM" : "V";
  const goesOn = place !== undefined && inHand === lead && leads[other] === undefined;
  energiseStore.merge({
    leads: place === undefined ? others : { ...others, [lead]: place },
    inHand: goesOn ? other : undefined,
  });
  compute();
}

/** The place for a lead at a place of the drawing: the metal that the end is joined to, else the end itself. */
export function leadPlaceAt(enclosure: Enclosure, at: At, end: EndKey): LeadPlace {
  switch (at.kind) {
    case "terminal":
      return { kind: "device", device: at.device, node: at.terminal };
    case "splice":
      return { kind: "splice", splice: at.splice };
    case "bond":
      return { kind: "bond", enclosure: enclosure.id };
    default:
      return { kind: "end", end };
  }
}

interface NamedLead {
  readonly key: string;
  readonly place: LeadPlace;
  readonly name: string;
}

/** Every place of an enclosure that a lead can touch: contacts of outlets, terminals, splices, ends, the metal. */
export function leadPlacesIn(enclosure: Enclosure): readonly NamedLead[] {
  const installation = shownInstallation();
  const named = (place: LeadPlace): NamedLead => ({
    key: JSON.stringify(place),
    place,
    name: leadWords(place, installation),
  });
  const devices = inOrder<Device>(enclosure.devices).flatMap(leadPlacesOn);
  const splices = inOrder<Splice>(enclosure.splices).map(({ id }): LeadPlace => ({ kind: "splice", splice: id }));
  const ends = (Object.keys(enclosure.places) as EndKey[]).map((end): NamedLead => {
    const place: LeadPlace = { kind: "end", end };
    return { key: end, place, name: wording.inWord2(nameOfEnd(installation, enclosure, end), enclosure.name) };
  });
  const metal = enclosure.kind === "panel" || enclosure.material !== "nonmetallic";
  return [
    ...[...devices, ...splices, ...(metal ? [{ kind: "bond", enclosure: enclosure.id } as const] : [])].map(named),
    ...ends,
  ];
}

/** Contacts of a device's face, then its terminals. */
export function leadPlacesOn(device: Device): readonly LeadPlace[] {
  const outlets = getDeviceType(device.type).outlets.length > 0 ? outletsOf(device) : [];
  const terminals = terminalsOf(device).map(({ name }) => name as string);
  const contacts = outlets.flatMap(({ hot, neutral, ground }) => [hot, neutral, ...(ground ? [ground] : [])]);
  return [...new Set([...contacts, ...terminals])].map((node) => ({ kind: "device", device: device.id, node }));
}

/** Asks where a lead goes: first the places of a device or box, where one is given. */
export function pickLeadPlace(
  lead: LeadName,
  within?: { readonly enclosure?: Enclosure; readonly device?: Device },
): void {
  openPick({
    title: wording.where(lead === "V" ? wording.redLeadV : wording.blackLeadCom),
    hint: wording.typeABoxADeviceOr,
    lines: () => {
      const { enclosures } = shownInstallation();
      const all =
        within?.device !== undefined
          ? leadPlacesOn(within.device).map((place) => ({ key: JSON.stringify(place), place, name: leadWords(place) }))
          : inOrder(enclosures)
              .filter(({ id }) => within?.enclosure === undefined || within.enclosure.id === id)
              .flatMap((box) => leadPlacesIn(box));
      return [
        ...all.map(({ key, place, name }) => ({ key, title: name, run: () => putLead(lead, place) })),
        {
          key: "earth",
          title: wording.groundOutside,
          note: wording.awayFromTheHouse,
          run: () => putLead(lead, { kind: "earth" }),
        },
      ];
    },
  });
}

/** Puts the plug-in tester into an outlet. */
export function chooseOutlet(outlet: OutletKey | undefined): void {
  energiseStore.merge({ outlet });
  compute();
}

/** Writes what the meter shows into the log; nothing while it shows nothing. */
export function noteMeter(): void {
  const state = energiseStore.get();
  const reading = readMeter(state);
  const { answer, about, leads } = state;
  if (!reading || !answer || !about || !leads.V || !leads.COM) return;
  const { number, unit } = meterWords(reading);
  const title = wording.to(leadWords(leads.V), leadWords(leads.COM));
  const value = reading.kind === "volts" && reading.floating ? wording.floating(number) : number;
  const read = {
    instrument: reading.kind === "volts" ? "meter" : "continuity",
    points: [pointOf(leads.V), pointOf(leads.COM)],
    value,
    ...(unit !== "" && { unit }),
  } as const;
  addLine(evidenceLine(title, [value, unit].filter(Boolean).join(" "), read, answer, about));
}

/** Writes what the plug-in tester shows into the log; nothing while it shows nothing. */
export function noteTester(): void {
  const state = energiseStore.get();
  const tested = readTester(state);
  const { answer, about } = state;
  if (!tested || !answer || !about) return;
  const { outlet, name, hn, tester } = tested;
  const value = tester?.title ?? wording.hotToNeutral(voltWords(hn));
  const instrument = tester === undefined ? "meter" : "plug-in-tester";
  addLine(evidenceLine(wording.plugInTestAt(name), value, { instrument, points: [outlet], value }, answer, about));
}

const addLine = (line: LogLine): void => energiseStore.merge({ log: [line, ...energiseStore.get().log] });

/** Keeps a line of the log in the document, as evidence that was computed. One undo step. */
export function keepAsEvidence({ serial, reading }: LogLine): void {
  if (reading === undefined) return;
  const id = mintId<ReadingId>("m");
  const done = dispatch({ command: "add-reading", args: { id, reading } });
  if (!done.ok) {
    notify("problem", wording.notKept, [done.refusal.message]);
    return;
  }
  const { log } = energiseStore.get();
  energiseStore.merge({ log: log.map((line) => (line.serial === serial ? { ...line, kept: id } : line)) });
}
