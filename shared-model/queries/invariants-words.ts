import { catalogue, type Part } from "../lib/catalogue.ts";

export const wording = catalogue({
  filedUnder: (key: Part, id: Part) => `The item is filed under "${key}" but calls itself "${id}".`,
  endsIn: (cable: Part, enclosure: Part) => `Cable ${cable} ends in "${enclosure}", which does not exist.`,
  entersBy: (cable: Part, enclosure: Part, entry: Part) =>
    `Cable ${cable} enters ${enclosure} by "${entry}", which does not exist.`,
  noDeviceType: (type: Part) => `"${type}" is not a device type of the catalogue.`,
  jumperToItself: (name: Part) => `Jumper ${name} has both ends at one place.`,
  standsInRoom: (enclosure: Part, room: Part) => `${enclosure} stands in room "${room}", which does not exist.`,
  noCableOrConductor: "It names a cable or conductor that does not exist.",
  noEntry: "It names an entry that does not exist.",
  endWithoutPlace: (end: Part, enclosure: Part) => `The end ${end} lies in ${enclosure} but has no place there.`,
  placeWithoutEnd: (enclosure: Part, end: Part) => `${enclosure} has a place for ${end}, but no such end lies there.`,
  namesSplice: (splice: Part, enclosure: Part) => `It names splice "${splice}", which is not in ${enclosure}.`,
  namesDevice: (device: Part, enclosure: Part) => `It names device "${device}", which is not in ${enclosure}.`,
  noTerminal: (device: Part, terminal: Part) => `${device} has no terminal ${terminal}.`,
  belongsInBox: (device: Part, type: Part) => `${device} (${type}) belongs in a box.`,
  belongsInPanel: (device: Part, type: Part) => `${device} (${type}) belongs in a panel.`,
  notItsHole: (device: Part, terminal: Part, holes: Part, hole: Part) =>
    `${device} ${terminal} has ${holes} hole; ${hole} is not one of them.`,
  notOneOfHoles: (device: Part, terminal: Part, holes: Part, hole: Part) =>
    `${device} ${terminal} has ${holes} holes; ${hole} is not one of them.`,
});
