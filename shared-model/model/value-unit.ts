import { catalogue } from "../lib/catalogue.ts";
import { INCHES } from "../units/inch-words.ts";
import { FEET } from "../units/length-words.ts";

const wording = catalogue({
  millilitresPerCentimetre: "mL for each cm",
  pounds: "lb",
});

/** Names of the values of an edition, without their units. */
const NAMES: Readonly<Record<string, string>> = catalogue({
  arcFaultPlaces: "Arc fault places",
  arcFaultToA: "Arc fault to",
  behindDeviceIn: "Behind device",
  branchDropPercent: "Branch drop",
  canopyWiresLeftOut: "Canopy wires left out",
  clampAllowances: "Clamp allowances",
  conductorAllowance: "Conductor allowance",
  conductorMl: "Conductor ml",
  connectorsPerAllowance: "Connectors per allowance",
  continuousPercent: "Continuous",
  deepDeviceFromIn: "Deep device from",
  deepDeviceIn: "Deep device",
  deepDeviceMlPerCm: "Deep device",
  deepDeviceOnThickIn: "Deep device on thick",
  deviceAllowancesPerGang: "Device allowances per gang",
  equipmentGrounds: "Equipment grounds",
  extensionFreeFt: "Extension free",
  fanOnBoxLb: "Fan on box",
  fanPlaces: "Fan places",
  fanUnmarkedLb: "Fan unmarked",
  fastenedSharePercent: "Fastened share",
  freeLengthIn: "Free length",
  greenByMakeToAwg: "Green by make up to",
  groundAllowances: "Ground allowances",
  groundsInFirstAllowance: "Grounds in first allowance",
  inUseCoverUpToA: "In use cover up to",
  isolatedSetAllowances: "Isolated set allowances",
  loopAllowances: "Loop allowances",
  loopLengthIn: "Loop length",
  luminaireOnAnyBoxLb: "Luminaire on any box",
  luminaireOnBoxLb: "Luminaire on box",
  motorLoadPercent: "Motor load",
  neutralAtSwitchPlaces: "Neutral at switch places",
  outsideOpeningIn: "Outside opening",
  parallelFromAwg: "Parallel from awg",
  pipeFromEntryFt: "Pipe from entry",
  placesAtOrBelowGrade: "Places at or below grade",
  protectedHardWiredPlaces: "Protected hard wired places",
  protectedLightingPlaces: "Protected lighting places",
  protectedPlaces: "Protected places",
  protectedUpToA: "Protected up to",
  quartersPerFurtherGround: "Quarters per further ground",
  readilyReachedToIn: "Readily reached to",
  receptacleAmps: "Receptacle amps",
  setbackCombustibleIn: "Setback combustible",
  setbackIn: "Setback",
  sheathInsideIn: "Sheath inside",
  smallConductorAmps: "Small conductor amps",
  smallOpeningIn: "Small opening",
  spareConductorsForFanBox: "Spare conductors for fan box",
  statedLoadPercent: "Stated load",
  supportAllowances: "Support allowances",
  tableBoxes: "Table boxes",
  tamperResistantToIn: "Tamper resistant to",
  terminalBlockAllowances: "Terminal block allowances",
  totalDropPercent: "Total drop",
  unclampedFastenedWithinIn: "Unclamped fastened within",
  unclampedSheathInsideIn: "Unclamped sheath inside",
  weatherResistantPlaces: "Weather resistant places",
  whiteByMakeToAwg: "White by make up to",
  wiresPerHole: "Wires per hole",
  wiresPerScrew: "Wires per screw",
});

/** Units in which the plain numbers of an edition are told, by the end of their name. A name without one is a count. */
const UNITS: readonly (readonly [ending: string, unit: string])[] = [
  ["In", INCHES],
  ["Ft", FEET],
  ["Lb", wording.pounds],
  ["Percent", "%"],
  ["MlPerCm", wording.millilitresPerCentimetre],
  ["A", "A"],
];

/** "in." for `loopLengthIn`; undefined for a count. */
export const unitOfValue = (name: string): string | undefined => UNITS.find(([ending]) => name.endsWith(ending))?.[1];

/** What has a unit is measured and takes fractions; a count is whole. */
export const takesFractions = (name: string): boolean => unitOfValue(name) !== undefined;

/** "Loop length" for `loopLengthIn`: the name in words, without its unit; a name that no edition has is said as it is. */
export const valueWords = (name: string): string => (Object.hasOwn(NAMES, name) ? NAMES[name] : undefined) ?? name;
