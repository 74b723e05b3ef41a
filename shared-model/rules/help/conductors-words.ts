import { catalogue } from "../../lib/catalogue.ts";
import type { AllHelpWords } from "./help-words.ts";

/** Of what conductors are made of, how thick they are, and what holds them. */
export const conductorWords: AllHelpWords = {
  "splice-no-connector": catalogue({
    wrong: "The blacks are twisted and taped: tape dries out and the joint works loose.",
    right: "A connector holds the same three blacks.",
    asked:
      "Tape on a joint is unwrapped. Soldered joints of old wiring may be sound and still need insulation that lasts.",
  }),
  "splice-over-capacity": catalogue({
    wrong: "Four bare wires for a connector with three ports.",
    right: "A connector with five ports takes the four.",
    asked: "The table on the package of the connector. They count the wires and compare.",
  }),
  "two-wires-one-screw": catalogue({
    wrong: "Both blacks under one screw: one of them is never held.",
    right: "A screw for each.",
    asked:
      "One screw, one wire, unless the device is marked for more. It is among the first things they see when a device is pulled out.",
  }),
  "clamp-hole-doubled": catalogue({
    wrong: "Two blacks share one hole of the clamp plate, and the hole beside it is empty.",
    right: "A hole for each.",
    asked: "How many holes the plate has. A wire in each is accepted, two in one is not.",
  }),
  "push-in-gauge": catalogue({
    wrong: "12 AWG pushed into holes that are made for 14 AWG solid.",
    right: "The same wires under the side screws.",
    asked: "12 AWG goes under screws. Some pull at a pushed wire to see whether it holds.",
  }),
  "push-in-feedthrough": catalogue({
    wrong: "The whole run goes on through the springs of R1: when one tires, everything beyond goes dark.",
    right: "Joined with a pigtail: R1 carries only what is plugged into it.",
    asked:
      "Most accept it. Many electricians put joints before it all the same, because a loose spring opens the whole run.",
  }),
  "terminal-gauge": catalogue({
    wrong: "10 AWG forced under a clamp plate that takes 14 and 12 AWG.",
    right: "12 AWG, as the plate is made for.",
    asked: "What the terminal is marked for. Thick wires are pigtailed down where their breaker allows it.",
  }),
  "conductor-too-small": catalogue({
    wrong: "C2 is 14 AWG behind a 20 A breaker: it cooks before the breaker trips.",
    right: "12 AWG all the way behind 20 A.",
    asked:
      "The print on the jacket against the number on the breaker handle; the colour of newer jackets tells it from afar.",
  }),
  "mixed-gauge": catalogue({
    wrong: "12 AWG comes in, 14 AWG goes on: thick enough for 15 A, a trap for whoever fits 20 A later.",
    right: "One size for the whole circuit.",
    asked:
      "Some ask for a note at the panel that thinner wire is on the circuit, so that nobody fits a larger breaker.",
  }),
  "al-cu-direct": catalogue({
    wrong: "Aluminium and copper in an ordinary twist-on: the joint creeps and burns.",
    right: "The same in connectors that are listed for aluminium with copper.",
    asked:
      "How the aluminium was treated, and which connectors were used: they ask for the package and read what it is listed for.",
  }),
  "al-on-device": catalogue({
    wrong: "Aluminium under the screws of a device that is not marked for it.",
    right: "A device marked CO/ALR.",
    asked: "The letters CO/ALR on the yoke. Without them they ask for listed copper pigtails.",
  }),
  "insulation-damaged": catalogue({
    wrong: "The insulation of the black of C1 breaks when it is bent.",
    right: "Sound insulation up to the joint.",
    asked: "How far it goes. A damaged end is cut back or sleeved; brittle wire all along is replaced.",
  }),
  "stranded-on-side-screw": catalogue({
    wrong: "Pigtail h1 is stranded: its strands spread under the screw and work loose.",
    right: "Solid wire under the screw.",
    asked: "Whether the device is made for strands. A ring terminal or a solid pigtail settles it.",
  }),
  "voltage-drop-advice": catalogue({
    wrong: "150 ft of 14 AWG: lights dim and motors start hard.",
    right: "35 ft of the same cable.",
    asked:
      "It is a recommendation and seldom asked for in a dwelling; long runs to a garage or a well are where it comes up.",
  }),
  "live-loose-end": catalogue({
    wrong: "The black of C2 hangs bare and live in the box.",
    right: "It is landed; an end that is not used would be capped.",
    asked: "They ask for a cap on every end that is not used, live or not, before anybody leaves.",
  }),
  "capped-neutral-forgotten": catalogue({
    wrong: "The white of LP is joined at the light and capped at the switch: forgotten, or meant for later?",
    right: "It is marked as spare: kept for an electronic switch.",
    asked: "“What is that one for?” A tag at the cap answers it.",
  }),
  "isolated-route": catalogue({
    wrong: "The current goes out by C2 and comes home by C3: the steel between them heats.",
    right: "Black and white of one cable.",
    asked: "Whether out and back run together wherever they pass through steel.",
  }),
  "parallel-small": catalogue({
    wrong: "Two whites of 12 AWG side by side between the same joints: one may carry nearly all.",
    right: "One white is enough, and a break in it is seen.",
    asked: "Why two wires go to the same joint. It mostly comes from a run that was closed to a ring by mistake.",
  }),
  "knob-tube-in-insulation": catalogue({
    wrong: "Open wiring K1 and K2 lies in cavities that were filled with insulation: it cannot cool.",
    right: "The cavities are open, as this wiring needs.",
    asked: "Whether insulation was blown in, and by whom. Insurers ask the same, some of them for removal.",
  }),
  "coloured-as-neutral": catalogue({
    wrong: "A black pigtail serves as the neutral: the next person takes it for hot.",
    right: "White for the neutral.",
    asked: "White for the neutral of small wires; tape on a black one is not accepted there.",
  }),
  "green-bare-as-current": catalogue({
    wrong: "Pigtail h1 is green and hot: everybody takes it for a ground.",
    right: "Black for the hot; green and bare for nothing but grounds.",
    asked: "Tape does not turn green or bare into anything else: they want the right wire there.",
  }),
  "white-hot-unmarked": catalogue({
    wrong: "The white of the loop is hot at the switch, and nothing says so.",
    right: "The same white, marked at both ends.",
    asked: "Tape or marker at both ends, and not white tape. It is a common correction.",
  }),
  "white-as-switched-return": catalogue({
    wrong: "The black feeds the switch and the white comes back switched.",
    right: "The marked white feeds the switch; the black comes back to the light.",
    asked: "In a loop: feed on the white, return on the coloured one.",
  }),
  "no-neutral-at-switch": catalogue({
    wrong: "Only feed and return come to the switch: no neutral waits for an electronic one.",
    right: "A cable with three conductors brings the neutral, capped until it is wanted.",
    asked:
      "At the rough-in: three conductors and a ground at each switch of a room, or a raceway through which one can be pulled.",
  }),
  "switch-in-neutral": catalogue({
    wrong: "The switch parts the whites: switched off, the socket of the lamp stays hot.",
    right: "The switch parts the blacks.",
    asked: "In old houses they test whether the light is dead at the fixture with its switch off.",
  }),
  "switch-no-effect": catalogue({
    wrong: "Feed, light and both screws of S1 meet in one joint: S1 switches nothing.",
    right: "Feed on the one screw, light on the other.",
    asked: "Every switch is tried at the final. One that does nothing needs an answer.",
  }),
  "receptacle-rating": catalogue({
    wrong: "A face for 20 A plugs on a 15 A circuit.",
    right: "A 15 A face on 15 A.",
    asked: "A T-slot on a 15 A breaker. On 20 A both kinds are accepted, as long as there are two or more.",
  }),
};
