import { catalogue, type Part } from "../../lib/catalogue.ts";

/** What the work takes, and what comes out. */
export const LIST_WORDS = catalogue({
  and: " and ",
  asDrawn: "as drawn, nothing for waste",
  cableConnector: "cable connector",
  cableConnectorFor: (sizes: Part) => `cable connector for ${sizes}`,
  cap: (awg: Part) => `cap for one ${awg} AWG conductor`,
  conductor: (awg: Part, material: Part, make: Part, colour: Part, length: Part) =>
    `conductor, ${awg} AWG ${material}, ${make}, ${colour}, ${length}`,
  connector: (name: Part) => `${name} connector`,
  groundScrew: "grounding screw, green",
  ifNotFitting: "if the old one does not fit",
  jumper: "jumper",
  label: (text: Part) => `label “${text}”`,
  measureRun: "its length is not recorded: measure the run",
  opened: "the joint is opened: where the old one may not be used again",
  plate: (device: Part) => `plate for ${device}`,
  rated: (title: Part, amps: Part) => `${title}, ${amps} A`,
  slip: (text: Part) => `slip “${text}”`,
  solid: "solid",
  stranded: "stranded",
  tape: (colour: Part) => `marking tape, ${colour}`,
  verify: "verify listing",
  whereNone: "where the box has none",
});

/** Connectors of the stock as pieces to buy. */
export const CONNECTOR_PIECES = catalogue({
  "twist-small": "twist-on connector, small",
  "twist-medium": "twist-on connector, medium",
  "twist-large": "twist-on connector, large",
  "twist-grounding": "twist-on connector, grounding, through hole",
  "lever-2": "lever connector, 2 ports",
  "lever-3": "lever connector, 3 ports",
  "lever-5": "lever connector, 5 ports",
  "push-in-2": "push-in splicing connector, 2 ports",
  "push-in-3": "push-in splicing connector, 3 ports",
  "push-in-4": "push-in splicing connector, 4 ports",
  "push-in-6": "push-in splicing connector, 6 ports",
  "push-in-8": "push-in splicing connector, 8 ports",
  "al-cu-listed": "listed aluminium-copper connector",
  "crimp-ground": "crimp sleeve for grounds connector",
});
