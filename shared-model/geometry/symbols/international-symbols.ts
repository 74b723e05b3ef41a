import { catalogue } from "../../lib/catalogue.ts";
import { arc, type Drawn, disc, line, ring, solid, word } from "./symbol-parts.ts";

/** A half circle on a stem is a socket; the line across its crown is its protective contact. */
const CUP = [arc(12, 13, 8, 180, 360), line(12, 5, 12, 0.5)];
const EARTHED = [...CUP, line(4, 5, 20, 5)];
const SMALL_CUP = [arc(12, 9, 6, 180, 360), line(12, 3, 12, 0.5), line(6, 3, 18, 3)];
/** A small circle with a slanted stroke is a switch; its feet count its poles and ways. */
const KNOB = ring(7.5, 16.5, 3.4);
const LEVER = [KNOB, line(9.9, 14.1, 19.5, 4.5)];
const FOOT = line(19.5, 4.5, 22.5, 7.5);
const CONTACT = [
  line(8, 0.8, 8, 5.5),
  line(8, 16, 8, 22.5),
  line(8, 16, 2.5, 7),
  line(6.2, 3.7, 9.8, 7.3),
  line(9.8, 3.7, 6.2, 7.3),
];
const marked = (text: string) => [...CONTACT, word(text, 17.6, 12, 6.4)];
const LAMP = [ring(12, 12, 8), line(6.4, 6.4, 17.6, 17.6), line(17.6, 6.4, 6.4, 17.6)];
const BAR = solid(1.5, 4, 22.5, 4, 22.5, 9, 1.5, 9);

/** What the symbols stand for. */
export const INTERNATIONAL_NAMES = catalogue({
  receptacle: "Socket, two-gang, with protective contact",
  "receptacle-single": "Socket with protective contact",
  "receptacle-two-slot": "Socket, two-gang, without protective contact",
  "receptacle-switch": "Socket with a switch",
  gfci: "Socket with residual-current protection",
  "afci-receptacle": "Socket with arc-fault protection",
  "dual-function": "Socket with residual-current and arc-fault protection",
  "gfci-blank": "Residual-current device without a face",
  switch: "Switch, one-way",
  "switch-double-pole": "Switch, two-pole",
  "switch-3way": "Switch, two-way",
  "switch-4way": "Switch, intermediate",
  "switch-pilot": "Switch with pilot lamp",
  "switch-two": "Switch, two circuits",
  dimmer: "Dimmer",
  timer: "Time switch",
  luminaire: "Luminaire",
  fan: "Fan",
  "fan-light": "Fan with luminaire",
  alarm: "Smoke alarm",
  appliance: "Appliance",
  disconnect: "Switch with fuse",
  breaker: "Circuit breaker",
  "breaker-gfci": "Residual-current breaker",
  "breaker-afci": "Arc-fault breaker",
  "breaker-dual": "Residual-current and arc-fault breaker",
  fuse: "Fuse",
  "neutral-bar": "Neutral bar",
  "ground-bar": "Protective bar",
  lugs: "Feeder terminals",
  panel: "Distribution board",
  junction: "Junction box",
});

/** International plan symbols, for every kind. */
export const INTERNATIONAL_SYMBOLS: Drawn = {
  receptacle: [...EARTHED, word("2", 20, 18.5, 7)],
  "receptacle-single": EARTHED,
  "receptacle-two-slot": [...CUP, word("2", 20, 18.5, 7)],
  "receptacle-switch": [...EARTHED, ring(6, 20, 2.2), line(7.6, 18.4, 14.5, 11.5), line(14.5, 11.5, 16.5, 13.5)],
  gfci: [...SMALL_CUP, word("GFCI", 12, 18.8, 6.8)],
  "afci-receptacle": [...SMALL_CUP, word("AFCI", 12, 18.8, 6.8)],
  "dual-function": [...SMALL_CUP, word("DF", 12, 18.8, 6.8)],
  "gfci-blank": [line(4, 1.5, 20, 1.5, 20, 13.5, 4, 13.5, 4, 1.5), line(8, 11, 16, 4), word("GFCI", 12, 19.6, 6.8)],
  switch: [...LEVER, FOOT],
  "switch-double-pole": [...LEVER, FOOT, line(16.2, 7.8, 19.2, 10.8), word("2", 18.5, 18.5, 8)],
  "switch-3way": [ring(12, 12, 3.4), line(14.4, 9.6, 21, 3, 23, 5), line(9.6, 14.4, 3, 21, 1, 19)],
  "switch-4way": [
    ring(12, 12, 3.4),
    line(14.4, 9.6, 21, 3, 23, 5),
    line(9.6, 14.4, 3, 21, 1, 19),
    line(14.4, 14.4, 21, 21, 23, 19),
    line(9.6, 9.6, 3, 3, 1, 5),
  ],
  "switch-pilot": [...LEVER, FOOT, line(5.1, 14.1, 9.9, 18.9), line(9.9, 14.1, 5.1, 18.9)],
  "switch-two": [ring(12, 17.5, 3.4), line(14.4, 15.1, 21, 6.5, 23.4, 8.6), line(9.6, 15.1, 3, 6.5, 0.6, 8.6)],
  dimmer: [...LEVER, FOOT, solid(13, 21.5, 22.5, 21.5, 22.5, 15.5)],
  timer: [...LEVER, FOOT, word("T", 18.5, 18, 8)],
  luminaire: LAMP,
  fan: [ring(12, 12, 9.5), ring(8, 12, 3), ring(16, 12, 3)],
  "fan-light": [
    ring(12, 8, 6.5),
    line(7.4, 3.4, 16.6, 12.6),
    line(16.6, 3.4, 7.4, 12.6),
    ring(9.2, 19, 3.2),
    ring(14.8, 19, 3.2),
  ],
  alarm: [
    line(2.5, 2.5, 21.5, 2.5, 21.5, 21.5, 2.5, 21.5, 2.5, 2.5),
    arc(12, 17.5, 3.6, 180, 360),
    arc(12, 17.5, 7.2, 180, 360),
    disc(12, 17.5, 1),
  ],
  appliance: [line(3, 5, 21, 5, 21, 21, 3, 21, 3, 5), line(12, 0.5, 12, 5), disc(12, 13, 2.6)],
  disconnect: [
    line(12, 0.8, 12, 3),
    line(12, 11.5, 5.5, 3),
    line(12, 11.5, 12, 23),
    line(8, 13, 16, 13, 16, 20.5, 8, 20.5, 8, 13),
  ],
  breaker: CONTACT,
  "breaker-gfci": marked("GF"),
  "breaker-afci": marked("AF"),
  "breaker-dual": [...CONTACT, word("DF", 17.6, 18.5, 6.4)],
  fuse: [line(12, 0.5, 12, 23.5), line(8, 5, 16, 5, 16, 19, 8, 19, 8, 5)],
  "neutral-bar": [BAR, word("N", 12, 17, 10)],
  "ground-bar": [BAR, line(12, 9, 12, 14), line(4, 14, 20, 14), line(7.5, 17.5, 16.5, 17.5), line(10.5, 21, 13.5, 21)],
  lugs: [
    ring(5, 5, 2.6),
    ring(12, 5, 2.6),
    ring(19, 5, 2.6),
    line(5, 7.6, 5, 22),
    line(12, 7.6, 12, 22),
    line(19, 7.6, 19, 22),
  ],
  panel: [line(1.5, 6, 22.5, 6, 22.5, 18, 1.5, 18, 1.5, 6), solid(1.5, 6, 22.5, 6, 22.5, 12, 1.5, 12)],
  junction: [ring(12, 12, 7), disc(12, 12, 2.4)],
};
