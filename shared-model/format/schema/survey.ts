import * as v from "valibot";
import type { CableId, ConductorKey, DeviceId, EnclosureId } from "../../model/ids.ts";
import { SURVEY_ARRANGEMENTS, SURVEY_ITEM_KINDS, SURVEY_LAMPS } from "../../model/survey.ts";
import { count, idOf, name, outletKey, quantity, text } from "./basics.ts";

const may = v.exactOptional;
const cable = idOf<CableId>();
const conductor = idOf<ConductorKey>();
const device = idOf<DeviceId>();
const outlets = v.array(outletKey);
const point = v.union([v.literal("ground"), v.looseObject({ cable, conductor })]);

const item = v.looseObject({
  id: text,
  name,
  kind: v.picklist(SURVEY_ITEM_KINDS),
  lamp: may(v.picklist(SURVEY_LAMPS)),
  switches: may(v.array(text)),
});

const facts = v.looseObject({
  groups: may(v.array(v.array(item))),
  switchesHere: may(count(0, 100)),
  lamps: may(v.array(v.looseObject({ item: text, lamp: v.picklist(SURVEY_LAMPS) }))),
  referenceProved: may(text),
  known: may(v.array(v.looseObject({ cable, leadsTo: v.union([v.literal("panel"), v.array(text)]), how: text }))),
});

const test = v.variant("kind", [
  v.looseObject({ kind: v.literal("pair"), from: point, to: point }),
  v.looseObject({ kind: v.literal("works"), items: v.array(text) }),
  v.looseObject({ kind: v.literal("current"), cable, conductor }),
  v.looseObject({ kind: v.literal("test-lamp"), cable, lightGlows: v.boolean() }),
  v.looseObject({ kind: v.literal("look"), cable, feedThere: v.boolean() }),
  v.looseObject({ kind: v.literal("breaker"), cable, breaker: device, wentDead: v.boolean() }),
  v.looseObject({ kind: v.literal("facts"), facts }),
  v.looseObject({ kind: v.literal("breaker-off"), breaker: device, dead: outlets, stillLive: may(outlets) }),
  v.looseObject({ kind: v.literal("drop"), loadAt: outletKey, at: outletKey, volts: quantity() }),
  v.looseObject({ kind: v.literal("opened"), at: outletKey, dead: outlets }),
]);

/** What makes a reading part of a survey. What it names may be gone: it is a record of its time. */
export const surveyedReading = v.looseObject({
  box: may(idOf<EnclosureId>()),
  arrangement: may(v.picklist(SURVEY_ARRANGEMENTS)),
  test,
  joined: may(v.array(cable)),
  switches: may(v.array(v.looseObject({ switch: text, on: v.boolean() }))),
  off: may(v.array(device)),
  nothingPlugged: may(v.boolean()),
});
