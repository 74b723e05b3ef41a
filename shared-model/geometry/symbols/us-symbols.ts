import { catalogue } from "../../lib/catalogue.ts";
import { ring as circle, type Drawn, disc, line, ring, solid, word } from "./symbol-parts.ts";

/** A circle with parallel strokes is a receptacle: the strokes run through it, as many as it has faces. */
const PLUG = [ring(12, 12, 6.5), line(9.6, 2, 9.6, 22), line(14.4, 2, 14.4, 22)];
/** Higher up, where letters stand beneath. */
const PLUG_HIGH = [ring(12, 7.4, 5.2), line(9.9, 0.8, 9.9, 14), line(14.1, 0.8, 14.1, 14)];
const TOGGLE = word("S", 8.5, 11, 17);
const index = (text: string) => word(text, 18.6, 18, 8);
const BREAKER = [line(1.5, 12, 6, 12), line(18, 12, 22.5, 12), line(6, 12, 9, 6.5, 15, 6.5, 18, 12)];
const marked = (text: string) => [...BREAKER, word(text, 12, 18.6, 6.8)];
const BAR = line(1.5, 5, 22.5, 5, 22.5, 10, 1.5, 10, 1.5, 5);

/** What the symbols stand for. */
export const US_NAMES = catalogue({
  receptacle: "Duplex receptacle",
  "receptacle-single": "Single receptacle",
  "receptacle-two-slot": "Two-slot receptacle, no ground",
  "receptacle-switch": "Switch and receptacle",
  gfci: "GFCI receptacle",
  "afci-receptacle": "AFCI receptacle",
  "dual-function": "Dual-function receptacle",
  "gfci-blank": "Blank-face GFCI",
  switch: "Switch",
  "switch-double-pole": "Double-pole switch",
  "switch-3way": "3-way switch",
  "switch-4way": "4-way switch",
  "switch-pilot": "Switch with pilot light",
  "switch-two": "Two switches",
  dimmer: "Dimmer",
  timer: "Timer",
  luminaire: "Luminaire",
  fan: "Exhaust fan",
  "fan-light": "Fan with light",
  alarm: "Smoke alarm",
  appliance: "Hard-wired appliance",
  disconnect: "Disconnect, fused",
  breaker: "Breaker",
  "breaker-gfci": "GFCI breaker",
  "breaker-afci": "AFCI breaker",
  "breaker-dual": "Dual-function breaker",
  fuse: "Fuse",
  "neutral-bar": "Neutral bar",
  "ground-bar": "Ground bar",
  lugs: "Feeder lugs",
  panel: "Panel",
  junction: "Junction box",
});

/** US plan symbols, for every kind. */
export const US_SYMBOLS: Drawn = {
  receptacle: PLUG,
  "receptacle-single": [ring(12, 12, 6.5), line(12, 2, 12, 22)],
  "receptacle-two-slot": [...PLUG_HIGH, word("2W", 12, 20, 6)],
  "receptacle-switch": [ring(8, 12, 5.6), line(6, 4, 6, 20), line(10, 4, 10, 20), word("S", 19, 12, 10)],
  gfci: [...PLUG_HIGH, word("GFCI", 12, 20, 6.4)],
  "afci-receptacle": [...PLUG_HIGH, word("AFCI", 12, 20, 6.4)],
  "dual-function": [...PLUG_HIGH, word("DF", 12, 20, 6.4)],
  "gfci-blank": [line(1, 4, 23, 4, 23, 20, 1, 20, 1, 4), word("GFCI", 12, 12, 6)],
  switch: [word("S", 12, 12, 18)],
  "switch-double-pole": [TOGGLE, index("2")],
  "switch-3way": [TOGGLE, index("3")],
  "switch-4way": [TOGGLE, index("4")],
  "switch-pilot": [TOGGLE, index("P")],
  "switch-two": [word("S", 6, 12, 15), word("S", 18, 12, 15)],
  dimmer: [TOGGLE, index("D")],
  timer: [TOGGLE, index("T")],
  luminaire: [
    circle(12, 12, 6),
    line(12, 1.5, 12, 6),
    line(12, 18, 12, 22.5),
    line(1.5, 12, 6, 12),
    line(18, 12, 22.5, 12),
  ],
  fan: [ring(12, 12, 9), word("F", 12, 12, 9)],
  "fan-light": [
    ring(12, 12, 6.5),
    line(12, 1.5, 12, 5.5),
    line(12, 18.5, 12, 22.5),
    line(1.5, 12, 5.5, 12),
    line(18.5, 12, 22.5, 12),
    word("F", 12, 12, 6.5),
  ],
  alarm: [line(12, 1.5, 22.5, 12, 12, 22.5, 1.5, 12, 12, 1.5), word("S", 12, 12, 8.5)],
  appliance: [ring(12, 12, 9), solid(12, 5.5, 17.6, 15.5, 6.4, 15.5)],
  disconnect: [line(3, 3, 21, 3, 21, 21, 3, 21, 3, 3), line(7, 21, 17, 3), word("F", 17, 15.5, 6)],
  breaker: BREAKER,
  "breaker-gfci": marked("GFCI"),
  "breaker-afci": marked("AFCI"),
  "breaker-dual": marked("DF"),
  fuse: [line(1, 12, 23, 12), line(5, 7.5, 19, 7.5, 19, 16.5, 5, 16.5, 5, 7.5)],
  "neutral-bar": [BAR, word("N", 12, 17.5, 9)],
  "ground-bar": [BAR, word("G", 12, 17.5, 9)],
  lugs: [
    ring(6, 6.5, 3.4),
    ring(18, 6.5, 3.4),
    line(6, 10, 6, 22),
    line(18, 10, 18, 22),
    disc(6, 6.5, 1),
    disc(18, 6.5, 1),
  ],
  panel: [line(5, 1.5, 19, 1.5, 19, 22.5, 5, 22.5, 5, 1.5), solid(5, 1.5, 19, 22.5, 5, 22.5)],
  junction: [ring(12, 12, 8.5), word("J", 12, 12, 9)],
};
