import { catalogue } from "../lib/catalogue.ts";
import { INCHES } from "../units/inch-words.ts";
import { FEET } from "../units/length-words.ts";

const wording = catalogue({
  millilitresPerCentimetre: "mL for each cm",
  pounds: "lb",
});

/** Names of the values of an edition, without their units. */
const NAMES: Readonly<Record<string, string>> = catalogue({
  arcFaultPlaces: "Places with arc-fault protection",
  arcFaultToA: "Arc-fault protection up to",
  behindDeviceIn: "Room behind a deep device",
  branchDropPercent: "Drop of a branch circuit",
  canopyWiresLeftOut: "Canopy wires left out",
  clampAllowances: "Clamp allowances",
  conductorAllowance: "Volume of a conductor",
  conductorMl: "Volume of a conductor in mL",
  connectorsPerAllowance: "Connectors per allowance",
  continuousPercent: "Continuous load",
  deepDeviceFromIn: "Depth of a device that takes more room",
  deepDeviceIn: "Depth of a deep device",
  deepDeviceMlPerCm: "Room that a deep device takes",
  deepDeviceOnThickIn: "Depth of a deep device on 12 or 10 AWG",
  deviceAllowancesPerGang: "Device allowances per gang",
  equipmentGrounds: "Equipment grounds",
  extensionFreeFt: "Extension without arc-fault protection",
  fanOnBoxLb: "Fan on any listed box",
  fanPlaces: "Places where a fan is expected",
  fanUnmarkedLb: "Fan on a box without a marked weight",
  fastenedSharePercent: "Share of what is fastened in place",
  freeLengthIn: "Free length",
  greenByMakeToAwg: "Green by make up to size",
  groundAllowances: "Ground allowances",
  groundsInFirstAllowance: "Grounds in first allowance",
  inUseCoverUpToA: "In-use cover up to",
  isolatedSetAllowances: "Isolated set allowances",
  loopAllowances: "Loop allowances",
  loopLengthIn: "Loop length",
  luminaireOnAnyBoxLb: "Luminaire on any box in a wall",
  luminaireOnBoxLb: "Luminaire on an outlet box",
  motorLoadPercent: "Motor load of a switch",
  neutralAtSwitchPlaces: "Places with a neutral at the switch",
  outsideOpeningIn: "Length outside the opening",
  parallelFromAwg: "Parallel from size",
  pipeFromEntryFt: "Pipe from its entry",
  placesAtOrBelowGrade: "Places only at or below grade",
  protectedHardWiredPlaces: "Places with protected hard-wired outlets",
  protectedLightingPlaces: "Places with protected lighting",
  protectedPlaces: "Places with ground-fault protection",
  protectedUpToA: "Ground-fault protection up to",
  quartersPerFurtherGround: "Quarters per further ground",
  readilyReachedToIn: "Readily reached up to",
  receptacleAmps: "Receptacle ratings by circuit",
  setbackCombustibleIn: "Setback in a combustible wall",
  setbackIn: "Setback",
  sheathInsideIn: "Sheath inside",
  smallConductorAmps: "Breaker of a small conductor",
  smallOpeningIn: "Small opening",
  spareConductorsForFanBox: "Spare conductors for fan box",
  statedLoadPercent: "Stated load",
  supportAllowances: "Support allowances",
  tableBoxes: "Boxes of the table",
  tamperResistantToIn: "Tamper-resistant up to",
  terminalBlockAllowances: "Terminal block allowances",
  totalDropPercent: "Drop with the feeder",
  unclampedFastenedWithinIn: "Unclamped cable fastened within",
  unclampedSheathInsideIn: "Sheath of an unclamped cable inside",
  weatherResistantPlaces: "Places with weather-resistant receptacles",
  whiteByMakeToAwg: "White by make up to size",
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
