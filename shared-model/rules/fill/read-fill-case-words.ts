import { catalogue, type Part } from "../../lib/catalogue.ts";

export const wording = catalogue({
  giveOneUnit: "Give box and rings in one unit",
  giveEdition: (editions: Part) => `Give the edition as one of ${editions}`,
  giveOneVolume: 'Give one of "volumeIn3", "volumeMl" and "size"',
  giveVolumeIn3: (edition: Part) => `Edition ${edition} counts in in³: give "volumeIn3"`,
  itIs: (wanted: Part, shown: Part) => `${wanted}; it is ${shown}.`,
  giveObject: "Give an object",
  unknownField: (known: Part) => `This field is not known here; known are ${known}.`,
  giveList: "Give a list",
  giveText: "Give a text",
  giveFlag: "Give true or false",
  giveCount: (least: Part, most: Part) => `Give a whole number from ${least} to ${most}`,
  giveDepth: (most: Part) => `Give a depth in cm, from 0 to ${most}`,
  giveOneOf: (choices: Part) => `Give one of ${choices}`,
  aList: "a list",
  anObject: "an object",
  missing: "missing",
  giveIn3: "Give a volume in in³, more than 0, with at most four decimals",
  giveIn3FromNone: "Give a volume in in³, 0 or more, with at most four decimals",
  giveMl: "Give a volume in mL, more than 0, with at most one decimal",
  giveMlFromNone: "Give a volume in mL, 0 or more, with at most one decimal",
  nameBox: (id: Part) => `Name a box of the catalogue, for example "4x2-1/8 square" or "${id}", or give "volumeIn3"`,
  nameBoxOf: (section: Part, id: Part) =>
    `Name a box of the catalogue that ${section} of this rule set has, for example "4x2-1/8 square" or "${id}", or give "volumeIn3"`,
});
