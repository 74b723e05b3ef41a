import { catalogue } from "../../lib/catalogue.ts";
import type { AllHelpWords } from "./help-words.ts";

/** Of grounds: that they arrive, stay whole and are thick enough, and of what holds where there is none. */
export const groundWords: AllHelpWords = {
  "metal-box-unbonded": catalogue({
    wrong: "Nothing joins the metal of the box to the bare wires.",
    right: "A pigtail from the joint of the grounds to the box.",
    asked: "A screw or a clip for the bare wire in each metal box, and no wood screw in its place.",
  }),
  "insulated-as-ground": catalogue({
    wrong: "The black of C2 is on the green screw of R2, and where C2 comes from is not drawn.",
    right: "The bare wire is on the green screw, and the black on a brass one.",
    asked:
      "Green screws hold bare or green wires. Green tape on a small black one is not accepted; they want the right cable.",
  }),
  "egc-missing": catalogue({
    wrong: "Protected, and without a ground: it may stay, with limits.",
    right: "A cable with a ground.",
    asked:
      "In an old house they ask how three-slot receptacles got there, and look for a ground-fault device and its stickers.",
  }),
  "egc-broken-by-removal": catalogue({
    wrong: "The ground of C2 hangs on the screw of R1: take R1 out, and R2 has none.",
    right: "All bare wires in one joint, with a pigtail to R1.",
    asked:
      "A pigtail for the ground of the device: with the device in the hand, the grounds of the run must still be joined.",
  }),
  "egc-not-spliced-all": catalogue({
    wrong: "The bare wire of C2 is left out of the joint.",
    right: "All bare wires of the box are joined.",
    asked: "All bare wires of a box in one joint. It is looked at in each box at the rough-in.",
  }),
  "device-egc-missing": catalogue({
    wrong: "No pigtail goes to the green screw of R1.",
    right: "The green screw of R1 is on the grounds.",
    asked: "The bare wire on the green screw, at switches too.",
  }),
  "egc-too-small": catalogue({
    wrong: "A ground of 14 AWG behind a 20 A breaker.",
    right: "12 AWG for the ground as well.",
    asked: "Mostly where a breaker was exchanged for a larger one, and in raceways.",
  }),
  "no-ground-label": catalogue({
    wrong: "Three slots and no ground, and nothing on the plates says so.",
    right: "The plates say “No Equipment Ground”, and at T2 “GFCI Protected” as well.",
    asked: "The stickers from the carton of the device, on each plate.",
  }),
  "egc-onward-from-no-ground": catalogue({
    wrong: "The bare wire of V9 joins two receptacles that have no ground: a fault at one makes both live.",
    right: "No bare wire goes on from a receptacle without a ground.",
    asked: "New cable behind an old one: the bare wire must not join receptacles that have no ground.",
  }),
  "grounding-type-unprotected": catalogue({
    wrong: "Three slots promise a ground that is not there, and nothing protects.",
    right: "Two slots promise nothing.",
    asked:
      "A tester that shows no ground in a three-slot receptacle begins the conversation: a ground, protection, or two slots.",
  }),
  "plate-metal-no-ground": catalogue({
    wrong: "A metal plate over a switch in a box without a ground.",
    right: "A plastic plate with plastic screws: no metal to touch.",
    asked: "They change it for a plastic plate, then and there.",
  }),
  "armour-assumed-ground": catalogue({
    wrong: "The armour is taken for a ground, and nobody has looked for its bonding strip.",
    right: "The bonding strip of C1 was seen.",
    asked: "A look for the thin strip folded back under the bushing. Armour without it is no ground.",
  }),
  "metal-pipe-ground": catalogue({
    wrong: "The ground wire G ends on a water pipe 30 ft from where it enters.",
    right: "The ground wire G goes to the ground bar of the panel.",
    asked: "Where the green wire goes. Pipes are replaced with plastic, and then it goes nowhere.",
  }),
};
