import { catalogue } from "../../lib/catalogue.ts";
import type { AllHelpWords } from "./help-words.ts";

/** Of circuits as a whole: which breaker, which leg, which neutral, and what is fed. */
export const circuitWords: AllHelpWords = {
  "polarity-swapped": catalogue({
    wrong: "Black and white are exchanged at R2: the wide slot is live.",
    right: "Black on the brass screw, white on the silver one.",
    asked: "A three-lamp tester in receptacles at random. One that reads reversed and they test them all.",
  }),
  "shell-hot": catalogue({
    wrong: "The leads of L1 are exchanged: the screw shell is live when it is on.",
    right: "The shell is on the white.",
    asked: "A meter from the shell to ground with the lamp out.",
  }),
  "open-hot": catalogue({
    wrong: "The black of C2 is left out of its joint: R2 is dead.",
    right: "All blacks in one joint.",
    asked: "Which breaker feeds it; a dead outlet at the final is a correction even where nothing is dangerous.",
  }),
  "open-neutral": catalogue({
    wrong: "The white came off R2: it looks dead, and it is not.",
    right: "Both conductors are on their screws.",
    asked: "They find it with a tester, not with the eye: two lamps lit or none. Check each outlet before they do.",
  }),
  "neutral-from-other-circuit": catalogue({
    wrong: "R1 takes its hot from Q1 and borrows the neutral of Q2.",
    right: "Hot and neutral of R1 come by the same cable.",
    asked: "With one breaker off they measure between neutral and ground; a lamp that stays lit tells it at once.",
  }),
  "neutrals-joined": catalogue({
    wrong: "The white of X ties the neutrals of Q1 and Q2 together.",
    right: "Each circuit keeps its own neutral; X is capped.",
    asked: "They look for it where arc-fault or ground-fault breakers trip at first use.",
  }),
  "hot-hot-joined": catalogue({
    wrong: "A wire joins the two legs: 240 V into a short circuit.",
    right: "Black and red keep apart.",
  }),
  "hot-neutral-joined": catalogue({
    wrong: "A wire from the hot to the neutral screw: a short circuit.",
    right: "Nothing joins the two.",
  }),
  "neutral-ground-joined": catalogue({
    wrong: "The neutral is joined to the grounds: every metal part carries current.",
    right: "Neutral and ground meet at the service and nowhere else.",
    asked: "In a subpanel: neutrals and grounds apart, and no bonding screw. That is looked at nearly always.",
  }),
  "hot-ground-joined": catalogue({
    wrong: "The black is on the green screw: yoke and box are live.",
    right: "The black is on brass, the bare on green.",
    asked: "With a meter from the box to the nearest good ground; anything but nothing stops the work.",
  }),
  "traveller-misused": catalogue({
    wrong: "The feed is on a traveller screw: the light works in some positions only.",
    right: "Feed on the common screw, the pair on the travellers.",
    asked: "They work both switches in all their positions.",
  }),
  "mwbc-no-common-opening": catalogue({
    wrong: "Two breakers share a neutral and go off one by one.",
    right: "Their handles are tied: both go off together.",
    asked: "The handle tie. A nail or a bit of wire through two handles is not one.",
  }),
  "mwbc-same-phase": catalogue({
    wrong: "QA and QB stand on one leg: their currents add up in the white.",
    right: "On different legs the white carries only the difference.",
    asked: "They measure between the two hots: 240 V where they stand on two legs, nothing where they stand on one.",
  }),
  "mwbc-neutral-through-device": catalogue({
    wrong: "The shared white runs through the screws of RJ: take it out, and two legs lose their neutral.",
    right: "The whites are joined, and RJ hangs on a pigtail.",
    asked: "They ask to see the pigtail of the white.",
  }),
  "split-yoke-two-circuits": catalogue({
    wrong: "Two breakers on one receptacle: with one off, the other half is live.",
    right: "Their handles are tied: one movement makes R1 dead.",
    asked: "One movement that makes the whole receptacle dead: a tie or a two-pole breaker.",
  }),
  "mwbc-hots-not-grouped": catalogue({
    wrong: "The wires of the shared neutral lie apart among all others.",
    right: "Both hots and their neutral are held together with a tie.",
    asked: "A cable tie round the hots and their neutral in the panel, where they do not come in one cable.",
  }),
  "neutral-bar-doubled": catalogue({
    wrong: "Two neutrals under one screw of the bar.",
    right: "A hole for each neutral.",
    asked: "One neutral to a hole. Grounds may share one where the label of the panel allows it.",
  }),
  "tab-broken-unintended": catalogue({
    wrong: "The hot tab is off and one black is landed: half of R2 is dead.",
    right: "The tab is whole: one black feeds both halves.",
    asked: "Both halves are tested; a dead half is found at once.",
  }),
  "dimmer-feeds-receptacle": catalogue({
    wrong: "A dimmer before a receptacle: what is plugged in can burn.",
    right: "A plain switch may feed a receptacle.",
    asked: "They try whether a wall control dims a receptacle. A switch is accepted.",
  }),
  "switch-rating": catalogue({
    wrong: "16 A through a switch for 15 A.",
    right: "10 A through the same switch.",
    asked: "Heaters and motors behind an ordinary switch.",
  }),
  "dimmer-load": catalogue({
    wrong: "720 W of lamps on a dimmer for 600 W.",
    right: "300 W on the same dimmer.",
    asked: "The sum of the lamps, and how many dimmers stand side by side.",
  }),
  "bath-circuit-mixed": catalogue({
    wrong: "The bathroom circuit goes on to the hall: two dryers and the hall trip it.",
    right: "Bathroom receptacles and nothing else.",
    asked: "Which breaker trips the bath, and what else goes out with it.",
  }),
  "kitchen-circuit-lights": catalogue({
    wrong: "The counter circuit feeds a ceiling light: a tripped kettle leaves the kitchen dark.",
    right: "Counter and dining receptacles, no light.",
    asked: "Two circuits at the counter, and no light goes out with either of them.",
  }),
  "laundry-circuit-mixed": catalogue({
    wrong: "The laundry circuit also feeds the hall.",
    right: "Laundry receptacles and nothing else.",
    asked: "A circuit for the laundry receptacles, and nothing else on it in new work.",
  }),
  "continuous-load": catalogue({
    wrong: "14 A for hours on a 15 A breaker.",
    right: "10 A: below four fifths of 15 A.",
    asked: "Electric heat and chargers: the nameplate times one and a quarter.",
  }),
  "fixed-load-share": catalogue({
    wrong: "9 A wired in on a 15 A circuit that feeds a receptacle too.",
    right: "6 A wired in: half of the circuit stays free for what is plugged in.",
    asked: "A dishwasher or a disposer on a circuit with receptacles: they ask for its nameplate.",
  }),
  "panel-breaker-not-listed": catalogue({
    wrong: "Q1 clips in, and the label of the panel does not list its type.",
    right: "A type that the label of the panel lists.",
    asked: "The label in the door against the breakers. “It fits” is no argument.",
  }),
  "directory-mismatch": catalogue({
    wrong: "The directory says “attic” for Q1, which feeds the utility room.",
    right: "The directory says what is fed: “utility room”.",
    asked: "A directory that can be read and is true; “lights” and “plugs” are sent back.",
  }),
};
