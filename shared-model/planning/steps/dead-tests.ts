import type { ScopeBox, StepReading } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { listed } from "../../rules/rule-parts.ts";
import { type Circuit, EVERYTHING_ON } from "../../solver/circuit/circuit.ts";
import { type OhmReading, readOhms } from "../../solver/circuit/instruments.ts";
import { loadsOn } from "../../solver/circuit/loads-on.ts";
import { circuitOfSection } from "../../solver/circuit/section-circuit.ts";
import type { Section } from "../../solver/section.ts";
import { sectionOf } from "../../solver/sections.ts";
import { PAIR_WORDS } from "./commissioning-words.ts";
import type { StepDraft } from "./step-draft.ts";

const wording = catalogue({
  and: " and ",
  at: (device: Part, pair: Part) => `${device} ${pair}`,
  crossed:
    "LOAD neutral to LINE neutral near 0 ohms: neutrals are crossed. Continuity where open is expected: find it before anything is energised.",
  electronics: (kilohms: Part) => `no short: ${kilohms} kilohms through electronics is normal`,
  lineToGround: "LINE H to G",
  lineToNeutral: "LINE H to LINE N",
  loadToGround: "LOAD N to G",
  loadToLine: "LOAD H to LINE H",
  lowVoltage:
    "Low-voltage ohmmeter only: an insulation tester of 250 or 500 V damages the electronics of a device that is connected.",
  neutralToNeutral: "LOAD N to LINE N",
  ohms: (value: Part) => `${value} ohm, within 1 ohm`,
  open: "open",
  shipped: "A new device is tripped as it is shipped.",
  tests: (box: Part) => `${box}: dead tests, breakers open, loads unplugged.`,
  wiredIn: (loads: Part) =>
    `Wired in, and read through by the meter: ${loads}. Switch them off or take the lamps out for these tests.`,
  testsTripped: (box: Part, devices: Part) => `${box}: dead tests, breakers open, loads unplugged, ${devices} tripped.`,
});

/** A meter that finds more than this finds an open circuit, as far as an electrician is concerned: a modelling choice. */
const OPEN_FROM_OHM = 1_000_000;
/** Through electronics kilohms are normal. */
const ELECTRONICS_FROM_OHM = 1000;

/**
 * HP5 for one box: resistances with the power off, loads unplugged and ground-fault devices tripped, by the drawing. They
 * find crossed neutrals before anything is energised.
 */
export function deadTests(
  proposed: Installation,
  supply: Supply,
  box: ScopeBox,
  isNew: (device: DeviceId) => boolean,
): readonly StepDraft[] {
  const after = proposed.enclosures[box.enclosure];
  const section = sectionOf(proposed, box.enclosure);
  if (after === undefined || section === undefined || box.counts.attach === 0) return [];
  const bare = circuitOfSection(section, supply);
  const guards = section.sensingDevices().filter(({ enclosure }) => enclosure.kind === "box");
  const circuit = bare.inSetting({
    ...EVERYTHING_ON,
    off: new Set(section.breakers().map(({ device }) => device.id)),
    tripped: new Set(guards.map(({ device }) => device.id)),
    idle: new Set([
      ...section.outlets().flatMap(({ outlet }) => (outlet.receptacle ? [] : [outlet.device.id])),
      ...section
        .outlets()
        .flatMap(({ outlet }) => (loadsOn(proposed.loads).get(outlet.device.id) ?? []).map(({ id }) => id)),
    ]),
  });
  const own = inOrder<Device>(after.devices);
  const readings = own.flatMap((device) => guardReadings(circuit, device));
  const faces = own.flatMap((device) => faceReadings(circuit, device));
  const all = [...readings, ...faces];
  if (all.length === 0) return [];
  const tripped = own.filter(({ id }) => guards.some(({ device }) => device.id === id));
  return [
    {
      id: `HP5:${box.enclosure}`,
      stage: 12,
      kind: "hold",
      hold: "HP5",
      box: { id: box.enclosure, name: box.name },
      items: own.map(({ id, name }) => ({ kind: "device", id, name })),
      text:
        tripped.length === 0
          ? wording.tests(box.name)
          : wording.testsTripped(box.name, tripped.map(({ name }) => name).join(wording.and)),
      details: [
        wording.lowVoltage,
        ...wiredIn(section, box),
        ...(tripped.some(({ id }) => isNew(id)) ? [wording.shipped] : []),
      ],
      readings: all,
      ifNot: wording.crossed,
    },
  ];
}

/** The figures are those without loads; what is wired in cannot be unplugged, and a meter reads through it. */
function wiredIn(section: Section, box: ScopeBox): readonly string[] {
  const own = new Set([...box.breakers, ...(box.newBreakers ?? [])].map(({ device }) => device));
  const fed = new Set(
    section.breakers().flatMap(({ device }) => (own.has(device.id) ? section.circuitOf(device.id).outlets : [])),
  );
  const names = section
    .outlets()
    .flatMap(({ outlet }) => (!outlet.receptacle && fed.has(outlet.key) ? [outlet.device.name] : []));
  return names.length === 0 ? [] : [wording.wiredIn(listed([...new Set(names)]))];
}

function guardReadings(circuit: Circuit, device: Device): readonly StepReading[] {
  const type = findDeviceType(device.type);
  const sensing = type?.sensing;
  const [lineHot] = sensing?.line.hot ?? [];
  const [loadHot] = sensing?.load.hot ?? [];
  const [lineNeutral, loadNeutral] = [sensing?.line.neutral, sensing?.load.neutral];
  const ground = type?.terminals.find(({ purpose }) => purpose === "ground")?.name;
  if (type?.where !== "box" || lineHot === undefined || loadHot === undefined) return [];
  const pair = (words: string, from: string | undefined, to: string | undefined): readonly StepReading[] =>
    from === undefined || to === undefined ? [] : ohmReading(circuit, device, words, from, to);
  return [
    ...pair(wording.lineToNeutral, lineHot, lineNeutral),
    ...pair(wording.lineToGround, lineHot, ground),
    ...pair(wording.loadToLine, loadHot, lineHot),
    ...pair(wording.neutralToNeutral, loadNeutral, lineNeutral),
    ...pair(wording.loadToGround, loadNeutral, ground),
  ];
}

/** Of receptacles that sense nothing. */
function faceReadings(circuit: Circuit, device: Device): readonly StepReading[] {
  if (findDeviceType(device.type)?.sensing !== undefined) return [];
  return outletsOf(device).flatMap(({ receptacle, name, hot, neutral, ground }) =>
    receptacle
      ? [
          ...ohmReading(circuit, device, PAIR_WORDS.hn, hot, neutral, name),
          ...(ground === undefined ? [] : ohmReading(circuit, device, PAIR_WORDS.hg, hot, ground, name)),
        ]
      : [],
  );
}

function ohmReading(
  circuit: Circuit,
  device: Device,
  words: string,
  from: string,
  to: string,
  name: string = device.name,
): readonly StepReading[] {
  const at = (node: string) => ({ kind: "device", device: device.id, node }) as const;
  const found = readOhms(circuit, at(from), at(to));
  if (found === undefined) return [];
  return [
    {
      id: `ohm:${device.id}:${from}:${to}`,
      what: wording.at(name, words),
      point: device.id,
      name,
      test: "continuity",
      ...expectedOhms(found),
    },
  ];
}

function expectedOhms({ ohm }: OhmReading): Pick<StepReading, "expected" | "expect"> {
  if (ohm === undefined || ohm >= OPEN_FROM_OHM)
    return { expected: { kind: "word", word: "open" }, expect: wording.open };
  if (ohm >= ELECTRONICS_FROM_OHM) return { expect: wording.electronics(Math.round(ohm / 1000)) };
  const value = Number(ohm.toFixed(2));
  return { expected: { kind: "figure", value, within: 1, unit: "ohm" }, expect: wording.ohms(value) };
}
