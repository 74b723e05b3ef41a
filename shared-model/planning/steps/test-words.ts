import { catalogue, type Part } from "../../lib/catalogue.ts";

/** Tests of ground-fault devices. */
export const GUARD_WORDS = catalogue({
  beforeReset: (devices: Part, outlets: Part) => `Before RESET, ${devices} tripped as shipped: measure ${outlets}.`,
  beside: (device: Part) => `${device} with nothing behind it`,
  button: (outlet: Part) => `button at ${outlet}`,
  buttons: (outlets: Part) => `Button of a plug-in tester at ${outlets}; RESET after each.`,
  buttonsByHandle: (outlets: Part) =>
    `Button of a plug-in tester at ${outlets}; after each, RESET what tripped, a breaker by its handle: off, then on.`,
  crossed: "Live: LINE and LOAD are crossed, or something goes round the device.",
  everythingElse: (device: Part, ohms: Part, outlets: Part) =>
    `RESET ${device}; a heater of ${ohms} ohms at ${outlets} in turn, everything else running.`,
  everythingElseByHandle: (device: Part, ohms: Part, outlets: Part) =>
    `${device} off, then on; a heater of ${ohms} ohms at ${outlets} in turn, everything else running.`,
  heater: (device: Part, outlet: Part) => `${device} with a heater at ${outlet}`,
  holds: "holds",
  line: (device: Part, pair: Part) => `${device} LINE ${pair}`,
  lineApart:
    "The face shows the same once it is RESET (CM4). These screws are reached with the device out of its box and power on: that is for qualified people; anyone else leaves this out.",
  lineTerminals: (device: Part) => `At the LINE terminals of ${device}: measure each pair.`,
  look: (outlets: Part) => `Before RESET, switches on: look at ${outlets}.`,
  nothingTrips: "Nothing trips: the outlet is not protected, or its ground is open.",
  notArriving: "Supply, neutral or ground does not arrive: look at the joints before it.",
  running: (test: Part) => `${test}, lamps on, everything plugged in running.`,
  staysLive: "One that stays live is on LINE or fed round the device; one that goes dark and should not is on LOAD.",
  staysOn: (outlets: Part) => `Stays on: ${outlets}.`,
  test: (device: Part) => `TEST on ${device}`,
  trips: "trips, by this drawing",
  tripsAll: (devices: Part, dark: Part) => `trips ${devices}: ${dark}`,
  tripsBeside: "Trips: a white touches ground behind it, and the return of what runs elsewhere comes through.",
  tripsOnLoad: "Trips on load: a white is on the wrong side, or the neutral of another circuit is borrowed.",
  unplug: (device: Part) => `Unplug everything behind ${device}, let the rest run, RESET it.`,
  unplugByHandle: (device: Part) => `Unplug everything behind ${device}, let the rest run, switch it off, then on.`,
  wrongSide:
    "One that should be on is dark: its pair is on LOAD. A face that should be dead is live: its supply is on LOAD.",
});

/** Pairs of the terminals on LINE. */
export const LINE_PAIRS = catalogue({
  hotGround: "H to G",
  hotNeutral: "H to N",
  neutralGround: "N to G",
});

/** Tests of outlets, switches and breakers. */
export const OUTLET_WORDS = catalogue({
  badJoint:
    "A reading far off is an open or bad joint on the way; more than 1 V from neutral to ground without a load is one in the neutral.",
  breakerOff: (breaker: Part, boxes: Part) =>
    `Breaker ${breaker} off: everything on it is dead, at its outlets and in ${boxes}.`,
  breakerOffAll: (breaker: Part) => `Breaker ${breaker} off: everything on it is dead.`,
  dead: "dead",
  drop: (outlet: Part) => `${outlet} voltage without load less voltage with load, the source's own included`,
  dropAt: (outlet: Part, amps: Part) => `Voltage drop at ${outlet}, the worst of them, with the heater on (${amps} A).`,
  dropOf: (volts: Part, percent: Part, supply: Part) => `${volts}, ${percent} % of ${supply} V`,
  everything: "Lamps on, nothing running at receptacles: measure each outlet.",
  everythingReset: (devices: Part) =>
    `RESET ${devices}; lamps on, nothing running at receptacles: measure each outlet.`,
  farMore: "Far more: a bad joint, or a run longer than drawn.",
  farAbove: "Neutral to ground more than 1 V above: a bad joint on the way.",
  heater: (ohms: Part, outlets: Part) =>
    `A heater of ${ohms} ohms at ${outlets} in turn, nothing else running: measure while it runs.`,
  joined:
    "Neutral to ground 0 V, though that is within the limit: neutral and ground are joined there. More than 1 V above: a bad joint on the way.",
  leaveButton: (outlets: Part) =>
    `No ground comes to ${outlets}: the lamps of a plug-in tester may be read there, its button is not to be pressed.`,
  loaded: (reading: Part) => `${reading}, loaded`,
  notFollowing: "It does not follow: hot and switched conductor are exchanged, or a traveller is.",
  position: (outlet: Part, device: Part, position: Part) => `${outlet}, ${device} ${position}`,
  positions: (device: Part, outlets: Part) => `${device} in both positions: ${outlets}.`,
  secondCircuit: "Live: a second circuit is in the box.",
  staysOn: (outlets: Part) => `Stays on by another breaker: ${outlets}.`,
});

/** Positions of a handle. */
export const POSITION_WORDS = catalogue({
  crossed: "crossed",
  down: "down",
  off: "off",
  on: "on",
  straight: "straight",
  up: "up",
});
