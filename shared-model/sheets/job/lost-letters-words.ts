import { catalogue, type Part } from "../../lib/catalogue.ts";

/** A thing in a document: as it is called with a name after it, and without one. */
export interface Thing {
  readonly named: string;
  readonly one: string;
}

const NAMED = catalogue({
  drawing: "drawing",
  enclosures: "box",
  panel: "panel",
  devices: "device",
  cables: "cable",
  splices: "joint",
  jumpers: "jumper",
  loads: "load",
  labels: "label",
  directory: "panel directory",
  rooms: "room",
  readings: "reading",
  attachments: "photo",
  acknowledgements: "acknowledged finding",
  amendments: "local amendment",
  outlets: "decision on an outlet",
});

const ONE = catalogue({
  drawing: "the drawing",
  enclosures: "a box",
  panel: "a panel",
  devices: "a device",
  cables: "a cable",
  splices: "a joint",
  jumpers: "a jumper",
  loads: "a load",
  labels: "a label",
  directory: "the panel directory",
  rooms: "a room",
  readings: "a reading",
  attachments: "a photo",
  acknowledgements: "an acknowledged finding",
  amendments: "a local amendment",
  outlets: "a decision on an outlet",
});

const thing = (key: keyof typeof NAMED): Thing => ({ named: NAMED[key], one: ONE[key] });

/** What no thing of it has said. */
export const DRAWING = thing("drawing");
export const PANEL = thing("panel");

/** What stands in the tables of a document. */
export const TABLE_WORDS: Readonly<Record<string, Thing>> = {
  enclosures: thing("enclosures"),
  devices: thing("devices"),
  cables: thing("cables"),
  splices: thing("splices"),
  jumpers: thing("jumpers"),
  loads: thing("loads"),
  labels: thing("labels"),
  directory: thing("directory"),
  rooms: thing("rooms"),
  readings: thing("readings"),
  attachments: thing("attachments"),
  acknowledgements: thing("acknowledgements"),
  amendments: thing("amendments"),
  outlets: thing("outlets"),
};

export const FIELD_WORDS: Readonly<Record<string, string>> = catalogue({
  title: "title",
  notes: "notes",
  name: "name",
  note: "note",
  wording: "wording",
  caption: "caption",
  reason: "reason",
  remark: "remark",
  by: "signature",
  tag: "tag",
  directory: "line",
  outside: "far end",
  instrumentId: "instrument",
});

export const LOST = catalogue({
  fileName: "name of the file",
  /** Of a field that has no words here. */
  someWords: "words",
  fieldOf: (field: Part, thing: Part) => `${field} of ${thing}`,
  called: (thing: Part, name: Part) => `${thing} ${name}`,
  inside: (what: Part, place: Part) => `${what} in ${place}`,
});
