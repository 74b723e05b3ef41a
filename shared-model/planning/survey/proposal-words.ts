import { catalogue, type Part } from "../../lib/catalogue.ts";

/** Why a test may not be done. */
export const REFUSAL_WORDS = catalogue({
  backFeed: "one supply would feed back into the other",
  doubleVoltage: (volts: Part, nominal: Part) => `it would put ${volts} V on what is made for ${nominal} V`,
  left: (guess: Part) => `${guess} is not ruled out`,
  leftTogether: (guesses: Part) => `${guesses} are not ruled out together`,
  noReference: (why: Part) =>
    `Not this: ${why}. Take a long lead to a known earth, as a metal water pipe, and prove it by reading 120 V to a known hot first.`,
  notThis: (still: Part, what: Part) => `Not this: ${still}, and then ${what}.`,
  quoted: (guess: Part) => `“${guess}”`,
  short: (amps: Part) => `it would close a short of some ${amps} A`,
  voltsToGround: "Read volts to ground",
});

/** Tests with cables joined to the supply. */
export const JOIN_WORDS = catalogue({
  doubt: (supply: Part) => ` Which wire of ${supply} is the hot is not proved.`,
  join: (cable: Part, supply: Part) => `Join ${cable} to the supply ${supply}`,
  joinAndList: (cables: Part, supply: Part) => `Join ${cables} to the supply ${supply} and list what works`,
  joint: (cables: Part, supply: Part, red: Part, doubt: Part) =>
    `Join ${cables} to ${supply}: black to black, white to white.${red}${doubt}`,
  jointReversed: (cables: Part, supply: Part, red: Part) =>
    `Join ${cables} to ${supply}, whose white is the hot: its white to their black, its black to their white.${red}`,
  joints: (joint: Part) => `${joint} Grounds as they are. Cap the joints and everything else.`,
  list: "List every outlet and light that works. Look at each: what is not listed counts as not working. Touch nothing in the box.",
  listSwitched:
    "List every outlet and light that works, switches away from the box on. Look at each: what is not listed counts as not working. Touch nothing in the box.",
  ohmsFirst: (cable: Part) => ` First measure ohms from hot to white of ${cable}, dead: not about 0.`,
  redCapped: (supply: Part) => ` The red of ${supply} stays capped.`,
  redToHot: (cables: Part) => ` The red of ${cables} to the hot as well.`,
  redToRed: (cables: Part) => ` Red to red of ${cables}.`,
});

/** Tests of a live cable that may be a trap. */
export const TRAP_WORDS = catalogue({
  brightness:
    "Full brightness and about 120 V: a supply with hot and neutral reversed. Both lamps dim, 40 to 80 V: a loop, fed from the light. An LED lamp beyond may stay dark.",
  connect: (cable: Part) => `Connect the test lamp through a fused lead across the two wires of ${cable}, capped.`,
  groundOhms: (cable: Part) => `Measure ohms from black and from white of ${cable} to ground, dead`,
  groundOhmsStep: (cable: Part) =>
    `Ohms from each wire of ${cable} to ground. About 0 is a neutral from the panel, 10 to 40 a filament lamp; open may be an LED lamp or a breaker that is off.`,
  look: (cable: Part) => `Look into the luminaire's box for the feed of ${cable}, power off`,
  open: "Open the luminaire's box. Is the feed there, with the white of this cable spliced to a black?",
  switch: (cable: Part) => `Put a switch between the wires of ${cable}`,
  testLamp: (cable: Part) => `Put a 60 W test lamp across ${cable} while dead, then energise`,
});

/** Tests by meter. */
export const TEST_WORDS = catalogue({
  again: (cable: Part) => `Turn the switches elsewhere over and measure ohms from hot to white of ${cable} again, dead`,
  againStep: (cable: Part) =>
    `Ohms from hot to white of ${cable}. About 0 one way and open the other is the loop of that switch; about 0 both ways is a short: find it before the power is on.`,
  breaker: (cables: Part) => `Switch off one breaker at a time and read ${cables} again`,
  breakerOff: "One breaker off at a time, the others on. Stop if something unexpected goes dead.",
  breakerRead: (cables: Part) => `Read ${cables} by low-impedance meter, one pair at a time.`,
  ohms: (cables: Part) => `Measure ohms from hot to white of ${cables}, dead`,
  ohmsStep: (cables: Part) =>
    `Ohms from hot to white of ${cables}. Open proves nothing; about 0 is the loop of a switch that is on, or a short.`,
  turnOver: "Turn every switch over that this cable may go to, and note how it stood.",
  volts: (cables: Part) => `Energise once and read volts at ${cables} by low-impedance meter`,
  voltsStep: (cables: Part) =>
    `Qualified person, meter only, caps on but for the pair that is read, one pair at a time, no touching: ${cables}.`,
});
