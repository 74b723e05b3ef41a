import { catalogue, type Part } from "../lib/catalogue.ts";

/** What is wrong with arguments, at a place such as "args.reading.points". */
export const argsWording = catalogue({
  entries: (at: Part, most: Part) => `${at} has more than ${most} entries`,
  fewer: (at: Part, least: Part) => `${at} has fewer than ${least} items`,
  isNot: (at: Part, what: Part) => `${at} is not ${what}`,
  items: (at: Part, most: Part) => `${at} has more than ${most} items`,
  keyForm: (at: Part) => `${at} has a key of another form`,
  keyNoField: (at: Part) => `${at} has a key that is not a field`,
  keyNoId: (at: Part) => `${at} has a key that is not an id`,
  keyReserved: (at: Part) => `${at} has a key that cannot be saved`,
  many: (at: Part, most: Part) => `${at} has more than ${most} calls`,
  missing: (at: Part) => `${at} is missing`,
  namesNothing: (at: Part) => `${at} names nothing`,
  noCall: (at: Part) => `${at} has no call`,
  pixels: (at: Part, most: Part) => `${at} is a picture of more than ${most} pixels a side`,
  tooDeep: (at: Part) => `${at} is too deep`,
  tooLong: (at: Part) => `${at} is too long`,
  unknown: (at: Part) => `${at} is not known`,
});

/** What an argument should be. */
export const forms = catalogue({
  catalogId: "a catalogue id",
  endKey: "the key of a conductor end",
  findingKey: "the key of a finding",
  flag: "true or false",
  id: "an id",
  jpeg: "a JPEG",
  list: "a list",
  name: "a name of 1 to 80 characters on one line",
  title: (longest: Part) => `a title of 1 to ${longest} characters`,
  number: (least: Part, most: Part) => `a number from ${least} to ${most}`,
  oneOf: (values: Part) => `one of ${values}`,
  outletKey: "the key of an outlet",
  photo: (most: Part) => `a picture in base64 of at most ${most} characters`,
  plain: (longest: Part) => `a plain text of at most ${longest} characters`,
  plainData: "plain data",
  record: "a record",
  table: "a table",
  text: (longest: Part) => `a text of at most ${longest} characters`,
  time: "a time such as 2026-05-04T10:20:30Z",
  whole: (least: Part, most: Part) => `a whole number from ${least} to ${most}`,
});
