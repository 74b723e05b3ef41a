import {
  byKind,
  type Check,
  catalogText,
  either,
  endText,
  idText,
  numberFrom,
  oneOf,
  record,
  textUpTo,
  wholeFrom,
} from "./args-shape.ts";

/** Least and most volume of one part: 0.1 to 1 000 in³, in 1/10 000 in³. Decimal cubic inches by mistake fall outside. */
export const LEAST_VOLUME = 1_000;
export const MOST_VOLUME = 10_000_000;

export const entryMeans: Check = oneOf(["internal-clamp", "external-connector", "integral-clamp", "none"]);

export const placeAt: Check = byKind({
  terminal: { device: idText, terminal: catalogText, hole: wholeFrom(1, 1_000) },
  splice: { splice: idText },
  bond: {},
  capped: {},
  loose: {},
});

export const entryTarget: Check = either(record({ entry: idText }), record({ newEntry: idText, means: entryMeans }));

export const sideTarget: Check = either(
  record({ outside: textUpTo(200) }),
  record({ enclosure: idText, entry: idText }),
  record({ enclosure: idText, newEntry: idText, means: entryMeans }),
);

export const volumeFact: Check = byKind({
  marked: { volumeIn3: wholeFrom(LEAST_VOLUME, MOST_VOLUME) },
  table: { size: catalogText },
  unknown: {},
});

const byId = { id: idText };

const ITEMS = {
  enclosure: byId,
  cable: byId,
  device: byId,
  splice: byId,
  jumper: byId,
  load: byId,
  label: byId,
  room: byId,
};

export const itemRef: Check = byKind(ITEMS);

export const propertyTarget: Check = byKind({
  ...ITEMS,
  entry: { enclosure: idText, id: idText },
  ring: { enclosure: idText, id: idText },
  "pass-through": { enclosure: idText, id: idText },
  conductor: { cable: idText, id: idText },
  end: { enclosure: idText, id: endText },
  project: {},
});

export const lengthFt: Check = numberFrom(0, 10_000);
