import { catalogue, type Part } from "../lib/catalogue.ts";

/** What is said of items that have no name, or are not there to be asked for it. */
export const unnamed = catalogue({
  box: "a box",
  boxes: (count: Part) => `${count} boxes`,
  cable: "a cable",
  conductor: "a conductor",
  device: "a device",
  edit: "an edit",
  end: "an end",
  item: "an item",
  label: "a label",
  outlet: "an outlet",
  room: "a room",
  splice: "a splice",
});

/** Refusals: what was asked about is not there any more. Items by their kind, for whoever has only that. */
export const gone = catalogue({
  boxes: "One of the boxes is no longer there. Pick boxes that are on the sheet and try again.",
  cable: "That cable is no longer there. Pick one that is on the sheet and try again.",
  conductor: "That conductor is no longer there. Pick one that is on the sheet and try again.",
  device: "That device is no longer there. Pick one that is on the sheet and try again.",
  enclosure: "That box or panel is no longer there. Pick one that is on the sheet and try again.",
  jumper: "That jumper is no longer there. Pick one that is on the sheet and try again.",
  label: "That label is no longer there. Pick one that is on the sheet and try again.",
  load: "That load is no longer there. Pick one that is on the sheet and try again.",
  room: "That room is no longer there. Pick one that is on the sheet and try again.",
  roomChosen: "That room is no longer there. Pick another room, or none.",
  splice: "That splice is no longer there. Pick one that is on the sheet and try again.",
});

/** Refusals: the catalogue has no such thing. */
export const notInStock = catalogue({
  box: (item: Part) => `The stock has no box or panel "${item}". Pick one from the stock.`,
  cable: (item: Part) => `The stock has no cable "${item}". Pick one from the stock.`,
  connector: (item: Part) => `The stock has no connector "${item}". Pick one from the stock, or "unknown".`,
  device: (item: Part) => `The stock has no device "${item}". Pick one from the stock.`,
  load: (item: Part) => `The stock has no load "${item}". Pick one from the stock.`,
});

/** What every sentence needs. */
export const grammar = catalogue({
  and: (one: Part, other: Part) => `${one} and ${other}`,
});
