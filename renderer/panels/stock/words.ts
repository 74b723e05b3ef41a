import { catalogue, type Part } from "../../../shared-model/lib/catalogue.ts";

/** What is said in this folder. */
export const wording = catalogue({
  aPigtailOrJumperIsNot:
    "A pigtail or jumper is not in stock: it is made in the box. Select a splice or a device and press “Pigtail from here…” in its details.",
  cableWire: "cable wire",
  cables: "Cables",
  chooseWhere: "Choose where…",
  connectorsAreNotInStockThey:
    "Connectors are not in stock: they come with the splice. Land one conductor end on another; the details of the splice have the connector.",
  devices: "Devices",
  enclosures: "Enclosures",
  escapePutsItBack: (hint: Part) => `${hint} Escape puts it back.`,
  fewer: "Fewer",
  findInStock: "Find in stock",
  found: (count: Part) => `${count} found`,
  gang: (gangs: Part) => `${gangs} gang`,
  handyUtility: "handy utility",
  in3: (figure: Part) => `${figure} in³`,
  labelsAreNotInStockThey: "Labels are not in stock: they are written in the details of the box, device or cable.",
  loads: "Loads",
  more: (rest: Part) => `${rest} more`,
  nothingInStockIsCalledThat: "Nothing in stock is called that. Try a size or a kind: 12/2, GFCI, octagon.",
  ofWord: (toLowerCase: Part) => ` of ${toLowerCase}`,
  panelParts: "Panel parts",
  pressOneBoxThenTheOther: "Press one box, then the other.",
  pressTheBoxItGoesInto: "Press the box it goes into.",
  pressTheOutletItIsPlugged: "Press the outlet it is plugged into.",
  pressThePanelItGoesInto: "Press the panel it goes into.",
  pressTheSheetWhereItGoes: "Press the sheet where it goes.",
  putItOnAFreePlace: "Put it on a free place",
  ringsRaisedCoversAndExtensionsAre:
    "Rings, raised covers and extensions are not in stock: they are added in the details of the box.",
});
