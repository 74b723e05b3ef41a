import * as v from "valibot";
import { GROUND_CLAMPED_TO } from "../../model/cable.ts";
import type {
  CableId,
  ConductorKey,
  DeviceId,
  EnclosureId,
  EntryId,
  JumperId,
  LabelId,
  LoadId,
  PassThroughId,
  RingId,
  RoomId,
  SpliceId,
  TerminalName,
} from "../../model/ids.ts";
import { ROOM_KINDS } from "../../model/room.ts";
import type { Amps, Celsius, Feet, Inches, Milliamps, Ohms, Watts } from "../../units/quantity.ts";
import {
  catalogId,
  colour,
  count,
  endKey,
  idOf,
  material,
  name,
  notNegative,
  order,
  outletKey,
  quantity,
  tableOf,
  text,
  volumeIn3,
  wireSize,
  withEvidence,
} from "./basics.ts";

const may = v.exactOptional;
const truth = may(v.boolean());

const at = v.variant("kind", [
  v.looseObject({
    kind: v.literal("terminal"),
    device: idOf<DeviceId>(),
    terminal: idOf<TerminalName & string>(),
    hole: count(1, 1000),
  }),
  v.looseObject({ kind: v.literal("splice"), splice: idOf<SpliceId>() }),
  v.looseObject({ kind: v.literal("bond") }),
  v.looseObject({ kind: v.literal("capped") }),
  v.looseObject({ kind: v.literal("loose") }),
]);

const place = v.looseObject({
  at,
  freeLengthIn: may(notNegative<Inches>()),
  outsideOpeningIn: may(notNegative<Inches>()),
  condition: may(v.picklist(["good", "nicked", "brittle", "burnt"])),
  spare: truth,
  markedAs: may(colour),
  jointOhm: may(notNegative<Ohms>()),
  tag: may(text),
  ...withEvidence,
});

const entry = v.looseObject({
  id: idOf<EntryId>(),
  means: v.picklist(["internal-clamp", "external-connector", "integral-clamp", "none"]),
  sheathInsideIn: may(notNegative<Inches>()),
  securedWithinIn: may(notNegative<Inches>()),
  markedForCables: may(count(0, 1000)),
  order,
  ...withEvidence,
});

const loadPriority = v.picklist(["none", "freezer", "medical", "alarm", "fire-alarm-system", "sump-pump"]);

const device = v.looseObject({
  id: idOf<DeviceId>(),
  name,
  type: catalogId,
  order,
  replaces: may(idOf<DeviceId>()),
  zones: may(v.array(v.picklist(ROOM_KINDS))),
  hotTab: may(v.picklist(["intact", "removed"])),
  neutralTab: may(v.picklist(["intact", "removed"])),
  entryKind: may(v.picklist(["side-screw", "clamp-plate", "push-in"])),
  ratingA: may(notNegative<Amps>()),
  tamperResistant: truth,
  weatherResistant: truth,
  markedForAluminium: truth,
  acceptsStranded: truth,
  selfGrounding: truth,
  bodyDepthIn: may(notNegative<Inches>()),
  reachHeightIn: may(quantity<Inches>()),
  behindAppliance: truth,
  metalPlate: truth,
  fastenedTo: may(v.picklist(["box", "ring", "cover", "nothing"])),
  wasSplit: truth,
  ratingW: may(notNegative<Watts>()),
  ledRatingW: may(notNegative<Watts>()),
  sideSectionsRemoved: may(count(0, 10)),
  reversal: may(v.picklist(["deny", "deny-first", "trips", "legacy"])),
  faceContact: may(v.picklist(["separate", "tied-to-load"])),
  slot: may(count(0, 1000)),
  breakerRatingA: may(notNegative<Amps>()),
  legs: may(v.array(v.picklist(["A", "B", "C"]))),
  function: may(v.picklist(["none", "gfci", "afci", "dual", "equipment-ground-fault"])),
  tiedTo: may(idOf<DeviceId>()),
  listedForPanel: truth,
  groupedInPanel: truth,
  loadW: may(notNegative<Watts>()),
  loadOhm: may(notNegative<Ohms>()),
  leakMa: may(notNegative<Milliamps>()),
  continuous: truth,
  priority: may(loadPriority),
  weightLb: may(notNegative()),
  heldByBuilding: truth,
  supplyC: may(quantity()),
  notes: may(text),
  ...withEvidence,
});

const splice = v.looseObject({
  id: idOf<SpliceId>(),
  name,
  connector: catalogId,
  order,
  ...withEvidence,
});

const jumper = v.looseObject({
  id: idOf<JumperId>(),
  name,
  awg: wireSize,
  colour,
  material,
  stranded: v.boolean(),
  lengthIn: may(notNegative<Inches>()),
  order,
  ...withEvidence,
});

const passThrough = v.looseObject({
  id: idOf<PassThroughId>(),
  cable: idOf<CableId>(),
  conductors: v.array(idOf<ConductorKey>()),
  entryIn: idOf<EntryId>(),
  entryOut: idOf<EntryId>(),
  loopLengthIn: may(notNegative<Inches>()),
  ...withEvidence,
});

const volume = v.variant("kind", [
  v.looseObject({ kind: v.literal("marked"), volumeIn3 }),
  v.looseObject({ kind: v.literal("table"), size: catalogId }),
  v.looseObject({ kind: v.literal("unknown") }),
]);

const ring = v.looseObject({
  id: idOf<RingId>(),
  kind: v.picklist(["plaster-ring", "raised-cover", "extension"]),
  volume,
  depthIn: may(notNegative<Inches>()),
  order,
  ...withEvidence,
});

const enclosureCommon = {
  id: idOf<EnclosureId>(),
  name,
  note: may(text),
  item: catalogId,
  roomId: may(idOf<RoomId>()),
  entries: tableOf(idOf<EntryId>(), entry),
  devices: tableOf(idOf<DeviceId>(), device),
  splices: tableOf(idOf<SpliceId>(), splice),
  jumpers: tableOf(idOf<JumperId>(), jumper),
  passThroughs: tableOf(idOf<PassThroughId>(), passThrough),
  places: tableOf(endKey, place),
  accessible: truth,
  order,
  ...withEvidence,
};

const box = v.looseObject({
  kind: v.literal("box"),
  ...enclosureCommon,
  material: v.picklist(["metal", "nonmetallic", "unknown"]),
  shape: v.picklist(["device", "square", "octagon", "round", "masonry", "cast"]),
  volume,
  rings: tableOf(idOf<RingId>(), ring),
  internalClamps: v.picklist(["none", "present", "included-in-marked-volume", "unknown"]),
  supports: v.array(v.picklist(["stud", "hickey"])),
  terminalBlocks: may(v.array(wireSize)),
  gangs: count(1, 100),
  depthIn: may(notNegative<Inches>()),
  openingMinIn: may(notNegative<Inches>()),
  listedFor: may(v.array(v.picklist(["device", "luminaire", "fan"]))),
  fanWeightLb: may(notNegative()),
  luminaireWeightLb: may(notNegative()),
  mountedOn: may(v.picklist(["wall", "ceiling", "floor"])),
  framingBehind: truth,
  exposure: may(v.picklist(["dry", "damp", "wet"])),
  cover: may(v.picklist(["none", "blank", "device-plate", "weatherproof-closed", "weatherproof-in-use", "luminaire"])),
  openKnockouts: may(count(0, 1000)),
  setbackIn: may(quantity<Inches>()),
  wallCombustible: truth,
  beingSurveyed: truth,
});

const panel = v.looseObject({
  kind: v.literal("panel"),
  ...enclosureCommon,
  spaces: count(0, 1000),
  supply: v.picklist(["service", "feeder"]),
  mainBond: v.picklist(["here", "elsewhere", "unknown"]),
  busRatingA: may(notNegative<Amps>()),
  listedBreakers: may(v.array(text)),
});

const conductor = v.looseObject({
  colour,
  awg: wireSize,
  material,
  stranded: v.boolean(),
  grounding: v.boolean(),
  order,
});

const insideOrOutside = v.union([
  v.looseObject({ enclosure: idOf<EnclosureId>(), entry: idOf<EntryId>() }),
  v.looseObject({ outside: text }),
]);

const cable = v.looseObject({
  id: idOf<CableId>(),
  name,
  item: catalogId,
  construction: v.picklist([
    "nonmetallic-sheathed",
    "armoured-bonded",
    "armoured-old",
    "knob-and-tube",
    "single-conductor",
    "raceway",
  ]),
  conductors: tableOf(idOf<ConductorKey>(), conductor),
  sides: v.looseObject({ a: insideOrOutside, b: insideOrOutside }),
  lengthFt: may(notNegative<Feet>()),
  insulationC: may(quantity<Celsius>()),
  route: may(text),
  groundClampedTo: may(v.picklist(GROUND_CLAMPED_TO)),
  pipeFromEntryFt: may(notNegative<Feet>()),
  notes: may(text),
  order,
  ...withEvidence,
});

const load = v.looseObject({
  id: idOf<LoadId>(),
  name,
  item: catalogId,
  plug: outletKey,
  loadW: may(notNegative<Watts>()),
  loadOhm: may(notNegative<Ohms>()),
  leakMa: may(notNegative<Milliamps>()),
  continuous: truth,
  priority: may(loadPriority),
  order,
  ...withEvidence,
});

const label = v.looseObject({
  id: idOf<LabelId>(),
  wording: text,
  on: v.union([
    v.looseObject({ device: idOf<DeviceId>() }),
    v.looseObject({ enclosure: idOf<EnclosureId>() }),
    v.looseObject({ cable: idOf<CableId>() }),
  ]),
  requiredBy: may(text),
  order,
  ...withEvidence,
});

const intent = v.looseObject({
  boxes: tableOf(
    idOf<EnclosureId>(),
    v.looseObject({
      supply: may(idOf<CableId>()),
      protect: may(tableOf(idOf<CableId>(), v.boolean())),
    }),
  ),
  outlets: tableOf(
    outletKey,
    v.looseObject({
      wish: v.picklist(["protect", "decided-not"]),
      by: may(text),
      reason: may(text),
    }),
  ),
});

/** One complete account of the wiring, as a file has it. */
export const installation = v.looseObject({
  enclosures: tableOf(idOf<EnclosureId>(), v.variant("kind", [box, panel])),
  cables: tableOf(idOf<CableId>(), cable),
  loads: tableOf(idOf<LoadId>(), load),
  labels: tableOf(idOf<LabelId>(), label),
  intent,
  directory: tableOf(idOf<DeviceId>(), text),
});

/**
 * Tables that hold most of a document and that only a look at one box or cable asks for, in the order in which canonical
 * text has them.
 */
export const DEFERRED = [
  { table: "cables", records: [cable], fields: { conductors: cable.entries.conductors } },
  {
    table: "enclosures",
    records: [box, panel],
    fields: {
      jumpers: enclosureCommon.jumpers,
      places: enclosureCommon.places,
      splices: enclosureCommon.splices,
    },
  },
] as const;
