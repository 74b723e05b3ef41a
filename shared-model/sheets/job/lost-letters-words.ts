/** A thing in a document: as it is called with a name after it, and without one. */
export interface Thing {
  readonly named: string;
  readonly one: string;
}

const thing = (named: string, one = `a ${named}`): Thing => ({ named, one });

/** What no thing of it has said. */
export const DRAWING = thing("drawing", "the drawing");
export const BOX = thing("box");
export const PANEL = thing("panel");
export const FILE_NAME = "name of the file";
/** Of a field that has no words here. */
export const SOME_WORDS = "words";

/** What stands in the tables of a document. */
export const TABLE_WORDS: Readonly<Record<string, Thing>> = {
  enclosures: BOX,
  devices: thing("device"),
  cables: thing("cable"),
  splices: thing("joint"),
  jumpers: thing("jumper"),
  loads: thing("load"),
  labels: thing("label"),
  directory: thing("panel directory", "the panel directory"),
  rooms: thing("room"),
  readings: thing("reading"),
  attachments: thing("photo"),
  acknowledgements: thing("acknowledged finding", "an acknowledged finding"),
  amendments: thing("local amendment"),
  outlets: thing("decision on an outlet"),
};

export const FIELD_WORDS: Readonly<Record<string, string>> = {
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
};
