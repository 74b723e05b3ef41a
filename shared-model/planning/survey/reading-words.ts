import { catalogue, type Part } from "../../lib/catalogue.ts";

/** Why a reading does not count. */
export const ASIDE_WORDS = catalogue({
  asFound: "As found all cables are joined: it does not tell them apart. It stays on the record.",
  betweenCables: "Between two cables only volts by low-impedance meter are compared.",
  breakerOff: "It was read with a breaker off: that it shows nothing does not tell. It stays on the record.",
  grounds: "Both leads were on grounds.",
  joined: "With cables joined a pair tells of all of them. Part them first (A1), then read (A2).",
  noFigure: "The figure is missing.",
  noReference: (why: Part) =>
    `${why}: a reading to ground counts only once its reference is proved, as by 120 V to a known hot.`,
  noVolts: "The volts across the test lamp are missing.",
  noncontact: "A noncontact indicator is a hint only: it proves neither live nor dead.",
  notHere: "It names a cable or a wire that this box no longer has.",
  ohmsOff: "With the power off (A1) only ohms tell something.",
  powerOn: "With the power on, the white of any feed carries current. Clamp it with the breaker off (A1).",
  voltsByMeter: "Volts between two wires count by a meter only: read it by a low-impedance meter.",
  voltsOn: "Ohms are measured with the power off (A1), volts with it on (A2).",
  whichJoined: "It does not say which cables were joined.",
  whiteOnly: "Only a current in a white wire tells something here.",
  works: "What works tells cables apart only with some of them joined to the supply (A3). It stays on the record.",
});

/** A reading as a phrase. */
export const READING_WORDS = catalogue({
  cableGone: "a cable that is gone",
  current: (amps: Part, colour: Part, cable: Part, by: Part) => `${amps} A in the ${colour} wire of ${cable} ${by}`,
  fromPanel: "it comes from the panel",
  ground: "ground",
  leadsTo: (items: Part) => `it leads to ${items}`,
  loop: (cable: Part) => `the feed of ${cable} is in the luminaire's box, seen with the power off`,
  noLoop: (cable: Part) => `the feed of ${cable} is not in the luminaire's box, seen with the power off`,
  ohms: (ohms: Part) => `${ohms} Ω`,
  open: "open",
  pair: (read: Part, from: Part, to: Part, by: Part, arrangement: Part) =>
    `${read} ${from} to ${to} ${by} in ${arrangement}`,
  pairBetween: (read: Part, from: Part, to: Part, cables: Part, by: Part, arrangement: Part) =>
    `${read} ${from} to ${to} between ${cables} ${by} in ${arrangement}`,
  stayedLive: (cable: Part) => `${cable} stayed live with a breaker off`,
  testLampDark: (volts: Part, cable: Part) => `${volts} V across a test lamp on ${cable}, the light beyond stayed dark`,
  testLampGlowed: (volts: Part, cable: Part) => `${volts} V across a test lamp on ${cable}, the light beyond glowed`,
  told: (where: Part, how: Part) => `told, not measured: ${where} (${how})`,
  volts: (volts: Part) => `${volts} V`,
  wentDead: (cable: Part) => `${cable} went dead with a breaker off`,
  wireGone: "a wire that is gone",
  worked: (cables: Part, arrangement: Part, items: Part) => `with ${cables} joined (${arrangement}), ${items} worked`,
  workedNothing: (cables: Part, arrangement: Part) => `with ${cables} joined (${arrangement}), nothing worked`,
});
