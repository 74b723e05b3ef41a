import { catalogue } from "../../lib/catalogue.ts";
import type { AllHelpWords } from "./help-words.ts";

/** Of LINE and LOAD, of who is protected by what, and of what must not go off. */
export const protectionWords: AllHelpWords = {
  "line-load-swapped": catalogue({
    wrong: "The supply C1 is on LOAD: an old device stays live when it has tripped.",
    right: "Supply on LINE, what is to be protected on LOAD.",
    asked: "They press TEST and look whether the receptacle is dead, then the ones behind it.",
  }),
  "line-load-half-swapped": catalogue({
    wrong: "Black right, white wrong: the device sees twice the current and trips at every load.",
    right: "Both conductors of the supply on LINE.",
    asked: "A device that trips at every load is opened: black and white of the supply are looked for on one side.",
  }),
  "hot-both-sides": catalogue({
    wrong: "A wire leads the hot round the device: tripped, it cuts nothing.",
    right: "LINE and LOAD meet only inside the device.",
    asked: "After TEST they look with a tester at what should be dead.",
  }),
  "neutral-both-sides": catalogue({
    wrong: "A wire leads the neutral round the device: the currents never agree, and it trips.",
    right: "The whites of LINE and LOAD are kept apart.",
    asked: "A device that will not hold is where they look for crossed whites.",
  }),
  "downstream-neutral-on-line": catalogue({
    wrong: "The black of C2 is on LOAD and its white on LINE: every load trips the device.",
    right: "Both conductors of C2 on LOAD.",
    asked: "A receptacle behind the device that trips it with the first load tells it.",
  }),
  "downstream-hot-on-line": catalogue({
    wrong: "The white of C2 is on LOAD and its black on LINE: R2 stays live when G1 has tripped.",
    right: "Both conductors of C2 on LOAD.",
    asked: "After TEST each outlet behind the device is tried: all must be dead.",
  }),
  "outlet-not-protected": catalogue({
    wrong: "A plain receptacle in a bathroom, and nothing before it watches.",
    right: "A ground-fault receptacle in its place.",
    asked:
      "A tester with a ground-fault button in each receptacle of baths, kitchen, laundry, garage and outdoors, and at the walls around a sink.",
  }),
  "wish-not-protected": catalogue({
    wrong: "R2 was to be protected, and C2 is on LINE.",
    right: "C2 is on LOAD, as was asked for.",
  }),
  "gfci-behind-gfci": catalogue({
    wrong: "G2 hangs on LOAD of G1: nobody knows which of them to reset.",
    right: "G2 is fed from LINE, each watches its own.",
    asked: "It is not forbidden. They ask which of the two the owner is to reset.",
  }),
  "gfci-no-neutral": catalogue({
    wrong: "No neutral reaches LINE: its electronics sleep, and it never trips.",
    right: "Hot and neutral on LINE.",
    asked: "TEST must trip it. If it does not, they want it out.",
  }),
  "gfci-switched-supply": catalogue({
    wrong: "S1 turns off the supply of G1 and of all behind it.",
    right: "LINE is fed straight from C1, all the time.",
    asked: "Whether something behind it must stay on.",
  }),
  "gfci-load-empty-tape": catalogue({
    wrong: "Nothing is on LOAD: the yellow tape is still on, and C2 was meant to be there.",
    right: "C2 is on LOAD.",
    asked: "Which outlets it is meant to protect, and the sticker on those.",
  }),
  "shared-neutral-upstream-gfci": catalogue({
    wrong: "One leg and the white of both pass the device: what the other leg takes trips it.",
    right: "The device stands after the split, where black and white belong to each other.",
    asked: "Two circuits with one neutral: they ask for a two-pole breaker or for devices after the split.",
  }),
  "gfci-breaker-neutral-on-bar": catalogue({
    wrong: "The white of C1 is on the bar: the breaker sees no way back and trips at once.",
    right: "The white of C1 is on the breaker.",
    asked: "The coiled white of the breaker on the bar, and the white of the circuit on the breaker.",
  }),
  "alarm-behind-gfci": catalogue({
    wrong: "The smoke alarm hangs on LOAD: a trip takes it off unseen.",
    right: "Fed from LINE, the alarm stays on.",
    asked:
      "Which breaker feeds the alarms. Many like them on a lighting circuit, so that somebody notices when it is off.",
  }),
  "freezer-shares-trip": catalogue({
    wrong: "What trips G1 thaws the freezer behind it.",
    right: "The freezer is fed from LINE; where its place asks for protection, it gets a device of its own.",
    asked:
      "The code makes no exception for freezers in most places; they ask for protection, and owners ask for an alarm.",
  }),
  "lighting-behind-gfci-egress": catalogue({
    wrong: "A trip of G1 leaves the stair dark.",
    right: "The stair light is fed from LINE.",
    asked: "Mostly nothing, it is no requirement. Some ask that stairs stay lit.",
  }),
  "standing-leak-budget": catalogue({
    wrong: "2.2 mA leak at rest: little is left before the device trips for nothing.",
    right: "0.8 mA leak at rest.",
  }),
  "half-switched-on-gfci": catalogue({
    wrong: "A ground-fault receptacle has no tabs: the switched half is lost.",
    right: "It replaced one that was never split.",
  }),
  "test-record-missing": catalogue({
    wrong: "G1 is new, the work is done, and nobody has recorded its TEST.",
    right: "TEST and RESET of G1 are recorded, with what went dark and came on.",
    asked: "They press TEST themselves. A record that lists what went dark spares them going round the house.",
  }),
  "replace-needs-gfci": catalogue({
    wrong: "A plain receptacle was replaced by a plain one, where today protection is asked for.",
    right: "The new one protects itself.",
    asked: "“Like for like” is no answer here: what is replaced is brought up to what today asks for at that place.",
  }),
  "replace-needs-afci": catalogue({
    wrong: "A plain receptacle is replaced by a plain one in a bedroom.",
    right: "The new one detects arcs.",
    asked: "Whether the jurisdiction enforces it for replacements; some have taken it out. Ask before you price it.",
  }),
  "extension-needs-afci": catalogue({
    wrong: "R2 and C2 come new into a bedroom, and no arc-fault device stands before them.",
    right: "An arc-fault breaker takes the whole circuit.",
    asked:
      "How far the circuit was extended and whether outlets came with it; small moves of a panel or a box are mostly let pass.",
  }),
  "tamper-resistant": catalogue({
    wrong: "A new receptacle without shutters.",
    right: "A tamper-resistant one: a child's key does not go in.",
    asked: "The letters TR on the face. Spare old receptacles from the truck are what they look for.",
  }),
  "weather-resistant": catalogue({
    wrong: "An indoor receptacle outdoors: sun and damp eat it.",
    right: "One that is marked weather-resistant.",
    asked: "The letters WR on the face; TR alone is not enough outdoors.",
  }),
};
