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

/** International plan symbols, for every kind. */
export const INTERNATIONAL_SYMBOLS: Drawn = {
  receptacle: ["Socket, two-gang, with protective contact", [...EARTHED, word("2", 20, 18.5, 7)]],
  "receptacle-single": ["Socket with protective contact", EARTHED],
  "receptacle-two-slot": ["Socket, two-gang, without protective contact", [...CUP, word("2", 20, 18.5, 7)]],
  "receptacle-switch": [
    "Socket with a switch",
    [...EARTHED, ring(6, 20, 2.2), line(7.6, 18.4, 14.5, 11.5), line(14.5, 11.5, 16.5, 13.5)],
  ],
  gfci: ["Socket with residual-current protection", [...SMALL_CUP, word("GFCI", 12, 18.8, 6.8)]],
  "afci-receptacle": ["Socket with arc-fault protection", [...SMALL_CUP, word("AFCI", 12, 18.8, 6.8)]],
  "dual-function": ["Socket with residual-current and arc-fault protection", [...SMALL_CUP, word("DF", 12, 18.8, 6.8)]],
  "gfci-blank": [
    "Residual-current device without a face",
    [line(4, 1.5, 20, 1.5, 20, 13.5, 4, 13.5, 4, 1.5), line(8, 11, 16, 4), word("GFCI", 12, 19.6, 6.8)],
  ],
  switch: ["Switch, one-way", [...LEVER, FOOT]],
  "switch-double-pole": ["Switch, two-pole", [...LEVER, FOOT, line(16.2, 7.8, 19.2, 10.8), word("2", 18.5, 18.5, 8)]],
  "switch-3way": ["Switch, two-way", [ring(12, 12, 3.4), line(14.4, 9.6, 21, 3, 23, 5), line(9.6, 14.4, 3, 21, 1, 19)]],
  "switch-4way": [
    "Switch, intermediate",
    [
      ring(12, 12, 3.4),
      line(14.4, 9.6, 21, 3, 23, 5),
      line(9.6, 14.4, 3, 21, 1, 19),
      line(14.4, 14.4, 21, 21, 23, 19),
      line(9.6, 9.6, 3, 3, 1, 5),
    ],
  ],
  "switch-pilot": ["Switch with pilot lamp", [...LEVER, FOOT, line(5.1, 14.1, 9.9, 18.9), line(9.9, 14.1, 5.1, 18.9)]],
  "switch-two": [
    "Switch, two circuits",
    [ring(12, 17.5, 3.4), line(14.4, 15.1, 21, 6.5, 23.4, 8.6), line(9.6, 15.1, 3, 6.5, 0.6, 8.6)],
  ],
  dimmer: ["Dimmer", [...LEVER, FOOT, solid(13, 21.5, 22.5, 21.5, 22.5, 15.5)]],
  timer: ["Time switch", [...LEVER, FOOT, word("T", 18.5, 18, 8)]],
  luminaire: ["Luminaire", LAMP],
  fan: ["Fan", [ring(12, 12, 9.5), ring(8, 12, 3), ring(16, 12, 3)]],
  "fan-light": [
    "Fan with luminaire",
    [ring(12, 8, 6.5), line(7.4, 3.4, 16.6, 12.6), line(16.6, 3.4, 7.4, 12.6), ring(9.2, 19, 3.2), ring(14.8, 19, 3.2)],
  ],
  alarm: [
    "Smoke alarm",
    [
      line(2.5, 2.5, 21.5, 2.5, 21.5, 21.5, 2.5, 21.5, 2.5, 2.5),
      arc(12, 17.5, 3.6, 180, 360),
      arc(12, 17.5, 7.2, 180, 360),
      disc(12, 17.5, 1),
    ],
  ],
  appliance: ["Appliance", [line(3, 5, 21, 5, 21, 21, 3, 21, 3, 5), line(12, 0.5, 12, 5), disc(12, 13, 2.6)]],
  disconnect: [
    "Switch with fuse",
    [
      line(12, 0.8, 12, 3),
      line(12, 11.5, 5.5, 3),
      line(12, 11.5, 12, 23),
      line(8, 13, 16, 13, 16, 20.5, 8, 20.5, 8, 13),
    ],
  ],
  breaker: ["Circuit breaker", CONTACT],
  "breaker-gfci": ["Residual-current breaker", marked("GF")],
  "breaker-afci": ["Arc-fault breaker", marked("AF")],
  "breaker-dual": ["Residual-current and arc-fault breaker", [...CONTACT, word("DF", 17.6, 18.5, 6.4)]],
  fuse: ["Fuse", [line(12, 0.5, 12, 23.5), line(8, 5, 16, 5, 16, 19, 8, 19, 8, 5)]],
  "neutral-bar": ["Neutral bar", [BAR, word("N", 12, 17, 10)]],
  "ground-bar": [
    "Protective bar",
    [BAR, line(12, 9, 12, 14), line(4, 14, 20, 14), line(7.5, 17.5, 16.5, 17.5), line(10.5, 21, 13.5, 21)],
  ],
  lugs: [
    "Feeder terminals",
    [
      ring(5, 5, 2.6),
      ring(12, 5, 2.6),
      ring(19, 5, 2.6),
      line(5, 7.6, 5, 22),
      line(12, 7.6, 12, 22),
      line(19, 7.6, 19, 22),
    ],
  ],
  panel: [
    "Distribution board",
    [line(1.5, 6, 22.5, 6, 22.5, 18, 1.5, 18, 1.5, 6), solid(1.5, 6, 22.5, 6, 22.5, 12, 1.5, 12)],
  ],
  junction: ["Junction box", [ring(12, 12, 7), disc(12, 12, 2.4)]],
};
