import { catalogue, type Part } from "../lib/catalogue.ts";

/** Why what a box is to do cannot be made up, and what to do. */
export const INTENT_WORDS = catalogue({
  bothLegs: (cable: Part) =>
    `${cable} carries both legs on one neutral: a one-pole ground-fault device cannot protect it. Leave it on LINE with "protect": false, or protect the circuit by a two-pole ground-fault breaker.`,
  byHand: (device: Part) =>
    `${device} does not hang on one hot and one neutral, as what is made up here does. Feed it by a cable of its own from a double-pole switch or a breaker, or land it by hand.`,
  cableNotHere: (cable: Part, box: Part) => `No cable "${cable}" enters ${box}. Name one that does.`,
  cableUnused: (cable: Part, box: Part) =>
    `${cable} enters ${box} and the intent does not say what for. Add it to "downstream", "switched", "loops" or "travellers".`,
  cableUsed: (cable: Part, at: Part) => `${cable} has a use already, at ${at}. Give each cable one use.`,
  deviceUnused: (device: Part, box: Part) =>
    `${device} is in ${box} and the intent does not say what it does. Name it under "switched" or "devices".`,
  deviceUsed: (device: Part) => `${device} has a use already. Give each device one use.`,
  gfciNotFed: (device: Part, cable: Part) =>
    `${device} needs an unswitched hot and a neutral, and ${cable} does not bring both. Put it where the supply comes in.`,
  guardsItself: (device: Part) =>
    `${device} is the ground-fault device itself: its face is protected anyway. Leave it out.`,
  halfUnused: (half: Part, box: Part) =>
    `The intent does not say what feeds ${half} in ${box}. Name it under "devices" or a loop.`,
  halfUsed: (half: Part) => `${half} has a use already. Give each half one use.`,
  halvesShareHot: (device: Part) =>
    `The halves of ${device} share their hot: the tab is whole. Give both the same feed, or take the tab off.`,
  halvesShareNeutral: (device: Part) =>
    `The halves of ${device} share their neutral, so that both go to the same side of the ground-fault device. Give both the same side, or put two devices in its place.`,
  isWhole: (device: Part) => `${device} is a whole: leave the half out, or take its tab off first.`,
  misplaced: (device: Part, cable: Part) => `${device} cannot pass travellers on to ${cable} as well.`,
  needsNeutral: (device: Part) =>
    `${device} needs a neutral, and a loop of two wires has none. Run a cable with a neutral.`,
  noCables: (box: Part) =>
    `No cable enters ${box}: there is nothing to make up. Bring the cable that feeds it in first.`,
  noConductor: (cable: Part, conductor: Part, all: Part) =>
    `${cable} has no hot conductor "${conductor}". It has ${all}.`,
  noDevice: (box: Part, device: Part) => `${box} has no device "${device}". Name one that is in it.`,
  noGuard: (box: Part) =>
    `${box} has no ground-fault device to protect it. Name one under "replace", or leave it with "protect": false.`,
  noHot: (cable: Part, box: Part) => `${cable} brings no hot. Name the cable that feeds ${box}.`,
  noHotHere: (box: Part, cable: Part) => `No unswitched hot comes to ${box} by ${cable}. Feed it from elsewhere.`,
  noLeg: (cable: Part, conductor: Part, supply: Part) =>
    `${cable} ${conductor} matches no leg of ${supply}. Name its leg.`,
  noNeutral: (cable: Part, box: Part) => `${cable} brings no neutral. Name the cable that feeds ${box}.`,
  noReturn: (cable: Part) => `${cable} has no neutral to go with its hot. Give it another use, or replace it.`,
  noSwitch: (box: Part, device: Part) => `${box} has no switch "${device}". Name one that is in it.`,
  noTravellers: (cable: Part) =>
    `${cable} needs two conductors for the travellers beside its neutral. Name a three-wire cable.`,
  notASwitch: (device: Part) => `${device} is no switch. Name one, or feed what hangs on it otherwise.`,
  oneHot: (cable: Part) => `${cable} brings one hot. Name a cable that brings two.`,
  oneHotForTwo: (device: Part, cable: Part) =>
    `${device} opens two hots, and ${cable} has one. Name a supply and a cable of two hots, or put a single-pole switch in its place.`,
  oneOfSeveral: (device: Part) =>
    `${device} is one of several switches of a light: name the cable with its travellers, as supply or under "travellers".`,
  otherLeg:
    'It hangs on another leg than the ground-fault device: a one-pole device cannot protect it. Leave it on LINE with "protect": false, or protect the circuit by a two-pole ground-fault breaker.',
  passesOn: (device: Part) => `${device} passes travellers on and switches nothing itself.`,
  switchedOnce: (device: Part) => `${device} switches one cable. Join what else it is to switch beyond it.`,
  switchUsed: (device: Part) => `${device} has a use already.`,
  switchesApart: (device: Part) =>
    `${device} has two switches whose tab is off: which cable is on which cannot be said yet. Join the halves, put two switches in its place, or land it by hand.`,
  twoHots: (cable: Part, device: Part) =>
    `${cable} carries two hots over ${device}: a one-pole ground-fault device cannot protect it. Leave it on LINE with "protect": false, or protect the circuit by a two-pole ground-fault breaker.`,
  twoPoles: (device: Part) =>
    `${device} opens two hots at once. Name under "switched" the cable of what it switches, or put a single-pole switch in its place.`,
});

/** What is wrong with what a box is to do, as it was written. */
export const READ_INTENT_WORDS = catalogue({
  cableSeveral: (box: Part, name: Part) => `Several of the cables of ${box} are named ${name}; give an id`,
  deviceSeveral: (box: Part, name: Part) => `Several of the devices of ${box} are named ${name}; give an id`,
  flag: (found: Part) => `Give true or false; it is ${found}`,
  noCable: (box: Part, name: Part, all: Part) => `${box} has no cable ${name}; it has ${all}`,
  noConductor: (cable: Part, conductor: Part, all: Part) => `${cable} has no conductor ${conductor}; it has ${all}`,
  noConnector: (connector: Part, all: Part) => `The stock has no connector ${connector}; it has ${all}`,
  noDevice: (box: Part, name: Part, all: Part) => `${box} has no device ${name}; it has ${all}`,
  noLeg: (leg: Part) => `No conductor of a cable here is ${leg}; give a key such as "bk", or a colour`,
  noType: (type: Part) => `The stock has no device ${type}; "gfci-receptacle-15" is one`,
  none: "none",
  supply: "Name the cable that feeds the box",
});
