import * as v from "valibot";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type {
  AttachmentId,
  CableId,
  DeviceId,
  EnclosureId,
  LoadId,
  ReadingId,
  RoomId,
  SpliceId,
} from "../../model/ids.ts";
import { EDITIONS, FORMAT, READING_INSTRUMENTS } from "../../model/project.ts";
import { ROOM_KINDS } from "../../model/room.ts";
import { SEVERITIES } from "../../model/severity.ts";
import { SYMBOL_SETS } from "../../model/symbol-set.ts";
import { RECORD_STAGES, RECORD_TESTS } from "../../model/test-record.ts";
import { LIMITS } from "../limits.ts";
import {
  count,
  endKey,
  freeKey,
  idOf,
  name,
  notNegative,
  order,
  outletKey,
  quantity,
  tableOf,
  text,
  withEvidence,
} from "./basics.ts";
import { surveyedReading } from "./survey.ts";
import { installation } from "./wiring.ts";

const wording = catalogue({
  base64: "a picture in base64",
  picture: (most: Part) => `a picture of at most ${most} characters`,
});

const may = v.exactOptional;
const state = v.picklist(["as-found", "proposed"]);
const point = v.looseObject({ x: quantity(), y: quantity() });

const amendment = v.looseObject({
  rule: text,
  change: v.variant("kind", [
    v.looseObject({ kind: v.literal("off") }),
    v.looseObject({ kind: v.literal("value"), name: text, value: quantity() }),
  ]),
  reason: text,
  by: may(text),
});

const room = v.looseObject({
  id: idOf<RoomId>(),
  name,
  kinds: v.array(v.picklist(ROOM_KINDS)),
  grade: may(v.picklist(["above", "at", "below"])),
  insulatedCavity: may(v.boolean()),
  order,
});

const expectedTest = v.variant("kind", [
  v.looseObject({
    kind: v.literal("figure"),
    value: quantity(),
    within: notNegative(),
    unit: v.picklist(["V", "ohm"]),
  }),
  v.looseObject({ kind: v.literal("word"), word: text }),
  v.looseObject({ kind: v.literal("outlets"), outlets: v.array(outletKey), names: v.array(text) }),
]);

const recordedTest = v.looseObject({
  test: v.picklist(RECORD_TESTS),
  stage: v.picklist(RECORD_STAGES),
  item: text,
  box: may(text),
  expected: may(expectedTest),
  outlets: may(v.array(outletKey)),
});

const reading = v.looseObject({
  id: idOf<ReadingId>(),
  instrument: v.picklist(READING_INSTRUMENTS),
  points: v.array(text),
  value: text,
  unit: may(text),
  state: may(state),
  arrangement: may(
    v.looseObject({
      switches: may(tableOf(idOf<DeviceId>(), text)),
      off: may(v.array(idOf<DeviceId>())),
      capped: may(v.array(endKey)),
      idle: may(v.array(idOf<LoadId | DeviceId>())),
    }),
  ),
  computed: may(v.boolean()),
  takenAt: may(text),
  by: may(text),
  instrumentId: may(text),
  remark: may(text),
  record: may(recordedTest),
  survey: may(surveyedReading),
  order,
  ...withEvidence,
});

const layout = v.looseObject({
  enclosures: tableOf(idOf<EnclosureId>(), point),
  splices: tableOf(idOf<SpliceId>(), point),
  cables: tableOf(idOf<CableId>(), v.array(point)),
  rooms: tableOf(
    idOf<RoomId>(),
    v.looseObject({ x: quantity(), y: quantity(), width: notNegative(), height: notNegative() }),
  ),
  pinned: may(tableOf(idOf<EnclosureId>(), v.literal(true))),
});

const acknowledgement = v.looseObject({
  finding: text,
  state,
  by: text,
  reason: text,
  at: text,
  said: may(text),
  severity: may(v.picklist(SEVERITIES)),
});

const heldBack = v.looseObject({
  id: idOf<string>(),
  title: text,
  items: v.array(v.looseObject({ kind: v.picklist(["enclosure", "cable", "device"]), id: idOf<string>(), name: text })),
  because: text,
});

const attachment = v.looseObject({
  id: idOf<AttachmentId>(),
  name,
  mediaType: v.picklist(["image/png", "image/jpeg"]),
  base64: v.pipe(
    v.string(),
    v.maxLength(LIMITS.pictureLength, wording.picture(LIMITS.pictureLength)),
    v.regex(/^[A-Za-z0-9+/]*={0,2}$/, wording.base64),
  ),
  enclosure: may(idOf<EnclosureId>()),
  caption: may(text),
  takenAt: may(text),
  by: may(text),
  order,
});

/** A document as its file has it: volumes are decimal cubic inches, and unknown fields may stand anywhere. */
export const documentSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: count(1, 1_000_000),
  minReader: count(1, 1_000_000),
  title: text,
  edition: v.picklist(EDITIONS),
  amendments: v.array(amendment),
  supply: v.looseObject({ system: v.picklist(["120/240", "208Y/120"]), nominalV: may(notNegative()) }),
  rooms: tableOf(idOf<RoomId>(), room),
  asFound: installation,
  proposed: may(installation),
  layout,
  readings: tableOf(idOf<ReadingId>(), reading),
  acknowledgements: v.array(acknowledgement),
  heldBack: may(v.array(heldBack)),
  attachments: tableOf(idOf<AttachmentId>(), attachment),
  statedLoadPercent: may(notNegative()),
  branchDropPercent: may(notNegative()),
  totalDropPercent: may(notNegative()),
  symbols: may(v.picklist(SYMBOL_SETS)),
  workDone: may(v.boolean()),
  tariff: may(v.record(freeKey, quantity())),
  notes: text,
  ...withEvidence,
});

export type DocumentInFile = v.InferOutput<typeof documentSchema>;
