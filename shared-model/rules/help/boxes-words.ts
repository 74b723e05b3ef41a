import { catalogue } from "../../lib/catalogue.ts";
import type { AllHelpWords } from "./help-words.ts";

/** Of what a box holds, how cables come in, and what closes it. */
export const boxWords: AllHelpWords = {
  "box-overfull": catalogue({
    wrong: "Two 12/2 cables and a receptacle need 15.75 in³, and this box is marked 14 in³.",
    right: "The same in a box of 30.3 in³: there is room to fold.",
    asked:
      "They count the wires, ask for the marking inside the box, and ask whether the clamps are inside it. Keep the count at hand; a ring that is not marked is not credited.",
  }),
  "box-volume-unknown": catalogue({
    wrong: "Nobody has read the marking, so nobody can say whether this fits.",
    right: "The marking was read: 30.3 in³.",
    asked:
      "“Where does it say so?” They look for the stamp inside the box, and may take the smallest standard size of that shape where there is none.",
  }),
  "fill-nearly-full": catalogue({
    wrong: "15.75 of 16 in³: it fits, and not one more conductor goes in.",
    right: "15.75 of 30.3 in³: the next cable finds room.",
    asked: "Rarely a correction. They ask what else is to come into the box, a larger device above all.",
  }),
  "egc-edition-difference": catalogue({
    wrong: "Five grounds: from 2020 on the fifth adds a quarter of an allowance.",
    right: "Four grounds share one allowance in every edition.",
    asked: "Which edition the permit is under. Work begun under the older one is mostly counted by it.",
  }),
  "device-deeper-than-room": catalogue({
    wrong: "A body of 1.3 in. in a box 1-1/2 in. deep: the wires are crushed behind it.",
    right: "The same body in a box 2-1/8 in. deep.",
    asked:
      "They push on the device: if it springs back before its screws are in, they ask for the box to be made deeper.",
  }),
  "cable-entry-unsecured": catalogue({
    wrong: "C1 comes in by a bare knockout: nothing holds it, and the edge cuts.",
    right: "Both cables are held by a connector where they enter.",
    asked: "They pull at the cable. A connector that turns, or a cable that slides, is written up on the spot.",
  }),
  "too-many-cables-in-clamp": catalogue({
    wrong: "C1 and C2 are squeezed into one connector that is marked for one cable.",
    right: "The same two in a connector that is marked for two.",
    asked: "They ask for the marking or the package of the connector: how many cables, and of which kind.",
  }),
  "sheath-not-inside": catalogue({
    wrong: "The jacket of C1 ends at the wall of the box: bare insulation lies in its clamp.",
    right: "1/2 in. of jacket reaches into the box; 1/4 in. is the least.",
    asked: "They look for the jacket inside the box at the rough-in, before devices hide it.",
  }),
  "free-length-short": catalogue({
    wrong: "The black of C1 has 4 in. free: there is no wire left to make a joint again.",
    right: "7 in. free; 6 in. is the least.",
    asked: "A pull on the wires at the rough-in; a hand's breadth past the wall is what they like to see.",
  }),
  "open-knockout": catalogue({
    wrong: "One knockout is out and nothing closes it.",
    right: "The opening is closed with a knockout seal.",
    asked: "A finger into the hole. Knockout seals cost little: have some with you at the inspection.",
  }),
  "cover-missing": catalogue({
    wrong: "No plate: fingers reach whatever is live inside.",
    right: "The same box with its plate on.",
    asked: "All covers are on at the final inspection, in attics and crawl spaces too.",
  }),
  "ring-missing": catalogue({
    wrong: "A square box without a ring: R1 is screwed to nothing and moves with each plug.",
    right: "A device ring on the box holds R1.",
    asked: "They wiggle the receptacle. One that moves with the plug is not accepted, whatever it is screwed to.",
  }),
  "ring-volume-unmarked": catalogue({
    wrong: "The ring is credited with 4 in³, and nobody has seen a marking on it.",
    right: "4.0 in³ was read off the ring itself.",
    asked: "“Show me the number on the ring.” No number, no credit.",
  }),
  "box-not-accessible": catalogue({
    wrong: "Joints behind finished wall: nobody can come to them without breaking it open.",
    right: "The same box, within reach.",
    asked:
      "Where the joint went that they saw at the rough-in. A blank cover that can be seen is accepted, paint on it too; plaster is not.",
  }),
  "box-setback": catalogue({
    wrong: "The rim lies 1/2 in. behind the gypsum board: sparks find the gap.",
    right: "The rim lies 1/8 in. back; in gypsum board 1/4 in. is the most.",
    asked:
      "Tile and paneling are put up after the rough-in; they look at kitchens and baths again at the final, and ask for extension rings.",
  }),
  "luminaire-box-not-listed": catalogue({
    wrong: "A luminaire in a ceiling on a box that is made for switches.",
    right: "An octagonal box that is listed for luminaires.",
    asked: "The marking inside the box, and the weight on the carton of the luminaire.",
  }),
  "fan-box-required": catalogue({
    wrong: "A fan of 30 lb shakes on a box that is listed for lights only.",
    right: "The same fan on a box that is listed for fans.",
    asked: "The words “for fan support” inside the box. They may ask to see it before the canopy goes up.",
  }),
  "spare-fan-conductor": catalogue({
    wrong: "The red of C2 waits for a fan, and the box is listed for a light only.",
    right: "A box that is listed for a fan, ready for the red.",
    asked: "What the second wire to the ceiling is for. “Maybe a fan” is answered with a fan box.",
  }),
  "canopy-heat-old-cable": catalogue({
    wrong: "L1 is marked for wires of 90 °C, and old C2 is made for 60 °C.",
    right: "C2 is made for 90 °C, as the luminaire asks.",
    asked:
      "In an old house they look for wires from before the mid 1980s over new lights, and at the temperature on the label of the luminaire.",
  }),
  "wet-box-cover": catalogue({
    wrong: "A flap keeps rain out only while nothing is plugged in.",
    right: "An in-use cover keeps rain out with the cord in it.",
    asked: "They plug something in and close the cover. A flap that stays open with the cord in it is not accepted.",
  }),
  "device-not-readily-accessible": catalogue({
    wrong: "G1 is 90 in. above the floor: to reset it takes a ladder.",
    right: "48 in. above the floor: anybody reaches its buttons.",
    asked: "Whether TEST can be pressed without moving anything or climbing.",
  }),
};
