import { GROUND_CLAMPED_TO } from "../model/cable.ts";
import { EVIDENCE_MARKS } from "../model/evidence.ts";
import { parseEnd } from "../model/ids.ts";
import { ROOM_KINDS } from "../model/room.ts";
import { entryMeans } from "./args-of-model.ts";
import {
  type Form,
  idTable,
  isRecord,
  isSavedKey,
  kindOf,
  list,
  notNegative,
  open,
  openByKind,
  quantity,
  table,
  words,
} from "./args-open.ts";
import {
  type Check,
  colourName,
  flag,
  idText,
  nameText,
  oneOf,
  outletText,
  sheetPoint,
  wholeFrom,
  wireSize,
} from "./args-shape.ts";
import { argsWording } from "./args-words.ts";

/**
 * Form of whole pieces of wiring as arguments, no stricter and no looser than a file: what a command takes in this way
 * can be saved and opened again. Fields that we do not know are kept as long as they are plain data.
 */

const marks = table(isSavedKey, oneOf(EVIDENCE_MARKS));
const known = { evidence: marks };
const order = quantity;
/** Looked up later, as in a file. */
const catalogId = nameText;
const material = oneOf(["copper", "aluminium", "copper-clad-aluminium"]);
const priority = oneOf(["none", "freezer", "medical", "alarm", "fire-alarm-system", "sump-pump"]);

const at = openByKind({
  terminal: open({ ...kindOf("terminal"), device: idText, terminal: idText, hole: wholeFrom(1, 1_000) }),
  splice: open({ ...kindOf("splice"), splice: idText }),
  bond: open(kindOf("bond")),
  capped: open(kindOf("capped")),
  loose: open(kindOf("loose")),
});

const place = open(
  { at },
  {
    freeLengthIn: notNegative,
    outsideOpeningIn: notNegative,
    condition: oneOf(["good", "nicked", "brittle", "burnt"]),
    spare: flag,
    markedAs: colourName,
    jointOhm: notNegative,
    tag: words,
    ...known,
  },
);

const entry = open(
  { id: idText, means: entryMeans, order },
  { sheathInsideIn: notNegative, securedWithinIn: notNegative, markedForCables: wholeFrom(0, 1_000), ...known },
);

const device = open(
  { id: idText, name: nameText, type: catalogId, order },
  {
    replaces: idText,
    zones: list(oneOf(ROOM_KINDS)),
    hotTab: oneOf(["intact", "removed"]),
    neutralTab: oneOf(["intact", "removed"]),
    entryKind: oneOf(["side-screw", "clamp-plate", "push-in"]),
    ratingA: notNegative,
    tamperResistant: flag,
    weatherResistant: flag,
    markedForAluminium: flag,
    acceptsStranded: flag,
    selfGrounding: flag,
    bodyDepthIn: notNegative,
    reachHeightIn: quantity,
    behindAppliance: flag,
    metalPlate: flag,
    fastenedTo: oneOf(["box", "ring", "cover", "nothing"]),
    wasSplit: flag,
    ratingW: notNegative,
    ledRatingW: notNegative,
    sideSectionsRemoved: wholeFrom(0, 10),
    reversal: oneOf(["deny", "deny-first", "trips", "legacy"]),
    faceContact: oneOf(["separate", "tied-to-load"]),
    slot: wholeFrom(0, 1_000),
    breakerRatingA: notNegative,
    legs: list(oneOf(["A", "B", "C"])),
    function: oneOf(["none", "gfci", "afci", "dual", "equipment-ground-fault"]),
    tiedTo: idText,
    listedForPanel: flag,
    groupedInPanel: flag,
    loadW: notNegative,
    loadOhm: notNegative,
    leakMa: notNegative,
    continuous: flag,
    priority,
    weightLb: notNegative,
    heldByBuilding: flag,
    supplyC: quantity,
    notes: words,
    ...known,
  },
);

const splice = open({ id: idText, name: nameText, connector: catalogId, order }, known);

const jumper = open(
  { id: idText, name: nameText, awg: wireSize, colour: colourName, material, stranded: flag, order },
  { lengthIn: notNegative, ...known },
);

const passThrough = open(
  { id: idText, cable: idText, conductors: list(idText), entryIn: idText, entryOut: idText },
  { loopLengthIn: notNegative, ...known },
);

const volume = openByKind({
  marked: open({ ...kindOf("marked"), volumeIn3: wholeFrom(0, 1_000_000 * 10_000) }),
  table: open({ ...kindOf("table"), size: catalogId }),
  unknown: open(kindOf("unknown")),
});

const ring = open(
  { id: idText, kind: oneOf(["plaster-ring", "raised-cover", "extension"]), volume, order },
  { depthIn: notNegative, ...known },
);

const common: Form = {
  id: idText,
  name: nameText,
  item: catalogId,
  entries: idTable(entry),
  devices: idTable(device),
  splices: idTable(splice),
  jumpers: idTable(jumper),
  passThroughs: idTable(passThrough),
  places: table((key) => parseEnd(key) !== undefined, place),
  order,
};
const commonMay: Form = { note: words, roomId: idText, accessible: flag, ...known };

const enclosure = openByKind({
  box: open(
    {
      ...common,
      ...kindOf("box"),
      material: oneOf(["metal", "nonmetallic", "unknown"]),
      shape: oneOf(["device", "square", "octagon", "round", "masonry", "cast"]),
      volume,
      rings: idTable(ring),
      internalClamps: oneOf(["none", "present", "included-in-marked-volume", "unknown"]),
      supports: list(oneOf(["stud", "hickey"])),
      gangs: wholeFrom(1, 100),
    },
    {
      ...commonMay,
      terminalBlocks: list(wireSize),
      depthIn: notNegative,
      openingMinIn: notNegative,
      listedFor: list(oneOf(["device", "luminaire", "fan"])),
      fanWeightLb: notNegative,
      luminaireWeightLb: notNegative,
      mountedOn: oneOf(["wall", "ceiling", "floor"]),
      framingBehind: flag,
      exposure: oneOf(["dry", "damp", "wet"]),
      cover: oneOf(["none", "blank", "device-plate", "weatherproof-closed", "weatherproof-in-use", "luminaire"]),
      openKnockouts: wholeFrom(0, 1_000),
      setbackIn: quantity,
      wallCombustible: flag,
      beingSurveyed: flag,
    },
  ),
  panel: open(
    {
      ...common,
      ...kindOf("panel"),
      spaces: wholeFrom(0, 1_000),
      supply: oneOf(["service", "feeder"]),
      mainBond: oneOf(["here", "elsewhere", "unknown"]),
    },
    { ...commonMay, busRatingA: notNegative, listedBreakers: list(words) },
  ),
});

const conductor = open({ colour: colourName, awg: wireSize, material, stranded: flag, grounding: flag, order });

const inside = open({ enclosure: idText, entry: idText });
const outside = open({ outside: words });
const cableSide: Check = (value, where) =>
  (isRecord(value) && Object.hasOwn(value, "outside") ? outside : inside)(value, where);

const cable = open(
  {
    id: idText,
    name: nameText,
    item: catalogId,
    construction: oneOf([
      "nonmetallic-sheathed",
      "armoured-bonded",
      "armoured-old",
      "knob-and-tube",
      "single-conductor",
      "raceway",
    ]),
    conductors: idTable(conductor),
    sides: open({ a: cableSide, b: cableSide }),
    order,
  },
  {
    lengthFt: notNegative,
    insulationC: quantity,
    route: words,
    groundClampedTo: oneOf(GROUND_CLAMPED_TO),
    pipeFromEntryFt: notNegative,
    notes: words,
    ...known,
  },
);

const load = open(
  { id: idText, name: nameText, item: catalogId, plug: outletText, order },
  { loadW: notNegative, loadOhm: notNegative, leakMa: notNegative, continuous: flag, priority, ...known },
);

const labelled: Check = (value, where) => {
  const kind = isRecord(value) ? ["device", "enclosure", "cable"].find((key) => Object.hasOwn(value, key)) : undefined;
  return kind === undefined ? argsWording.namesNothing(where) : open({ [kind]: idText })(value, where);
};
const label = open({ id: idText, wording: words, on: labelled, order }, { requiredBy: words, ...known });

const isOutlet = (key: string): boolean => outletText(key, "") === undefined;

const intent = open({
  boxes: idTable(open({}, { supply: idText, protect: idTable(flag) })),
  outlets: table(isOutlet, open({ wish: oneOf(["protect", "decided-not"]) }, { by: words, reason: words })),
});

/** A complete account of some wiring. */
export const wiring: Check = open({
  enclosures: idTable(enclosure),
  cables: idTable(cable),
  loads: idTable(load),
  labels: idTable(label),
  intent,
  directory: idTable(words),
});

export const roomTable: Check = idTable(
  open(
    { id: idText, name: nameText, kinds: list(oneOf(ROOM_KINDS)), order },
    { grade: oneOf(["above", "at", "below"]), insulatedCavity: flag },
  ),
);

/** Where pieces of wiring stand, relative to each other. */
export const wiringLayout: Check = open({
  enclosures: idTable(sheetPoint),
  splices: idTable(sheetPoint),
  cables: idTable(list(sheetPoint)),
});
