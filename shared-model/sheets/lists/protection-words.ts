import type { ProofVerdict } from "../../answers/sheet-input.ts";

export const PROTECTION = "Protection schedule";
export const NO_OUTLETS = "No outlet is drawn, so there is nothing to protect.";
export const NO_LIST =
  "This edition holds no list of places in which protection is asked for. Only wishes of people are known here.";

/** What each test of the proof asks, as a person reads it. Modelled on the drawing: a device's own TEST proves the device. */
export const TESTS: Readonly<Record<"P1" | "P2" | "P3" | "P4" | "P5" | "P6", string>> = {
  P1: "isolation: with its contacts open no source reaches the outlet, however switches stand",
  P2: "balance: what a load at the outlet takes passes the device out and back",
  P3: "detection: a leak from the hot of the outlet to ground is seen in full; none of it goes round the device",
  P4: "power: the device has hot and neutral to work with",
  P5: "class and direction: it protects people, and is fed on its LINE side",
  P6: "quiet: no load of the circuit makes it trip in use",
};

export const TESTS_ARE =
  "Proved on the drawing, outlet by outlet. P1 to P5 together mean protected; P6 tells whether it will hold.";

export const VERDICTS: Readonly<Record<ProofVerdict, string>> = { pass: "pass", fail: "FAIL", "cannot-tell": "?" };

export const NOBODY_ASKS = "not asked for";
export const NOT_PROTECTED = "by nothing";
export const BY_SETTING = "by one or the other, as switches stand";
export const decidedNot = (by: string | undefined, reason: string | undefined): string =>
  `Decided not to be protected${by ? `, ${by}` : ""}${reason ? `: ${reason}` : ""}`;
export const toldOf = (device: string): string => `P1 to P6 of ${device}`;

export const ASKED = "asked for";
export const ASKED_AND_PROVED = "of these proved";
export const OTHERS = "protected without being asked";
export const OPEN = "asked for, not proved";
