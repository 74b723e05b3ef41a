import type { ProofVerdict } from "../../answers/sheet-input.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";

export const PROTECTION = catalogue({
  title: "Protection schedule",
  noOutlets: "No outlet is drawn, so there is nothing to protect.",
  noList:
    "This edition holds no list of places in which protection is asked for. Only wishes of people are known here.",
  testsAre: "Proved on the drawing, outlet by outlet. P1 to P5 together mean protected; P6 tells whether it will hold.",
  nobodyAsks: "not asked for",
  notProtected: "by nothing",
  bySetting: "by one or the other, as switches stand",
  toldOf: (device: Part) => `P1 to P6 of ${device}`,
  in: (box: Part) => `in ${box}`,
  deviceIn: (device: Part, box: Part) => `${device} in ${box}`,
  asked: "asked for",
  askedAndProved: "of these proved",
  others: "protected without being asked",
  open: "asked for, not proved",
  outlet: "outlet",
  room: "room",
  requiredBy: "required by",
  protectedBy: "protected by",
  proof: "proof",
});

/** What each test of the proof asks, as a person reads it. Modelled on the drawing: a device's own TEST proves the device. */
export const TESTS: Readonly<Record<"P1" | "P2" | "P3" | "P4" | "P5" | "P6", string>> = catalogue({
  P1: "isolation: with its contacts open no source reaches the outlet, however switches stand",
  P2: "balance: what a load at the outlet takes passes the device out and back",
  P3: "detection: a leak from the hot of the outlet to ground is seen in full; none of it goes round the device",
  P4: "power: the device has hot and neutral to work with",
  P5: "class and direction: it protects people, and is fed on its LINE side",
  P6: "quiet: no load of the circuit makes it trip in use",
});

/** More ink is more serious: a failure counts where somebody asks. */
export const VERDICTS: Readonly<Record<ProofVerdict, string>> = {
  ...catalogue({ pass: "pass", fail: "FAIL" }),
  "cannot-tell": "?",
};
export const QUIET_VERDICTS: Readonly<Record<ProofVerdict, string>> = {
  ...catalogue({ pass: "pass", fail: "fail" }),
  "cannot-tell": "?",
};

/** Of the list for writers of tables. */
export const PROTECTION_TABLE = catalogue({
  name: "Protection",
  outlet: "Outlet",
  box: "Box",
  room: "Room",
  requiredBy: "Required by",
  asked: "Asked for",
  protected: "Protected",
  protectedBy: "Protected by",
  proof: "Proof",
  decision: "Decision",
});

const wording = catalogue({
  decided: "Decided not to be protected",
  decidedBy: (by: Part) => `Decided not to be protected, ${by}`,
  decidedByFor: (by: Part, reason: Part) => `Decided not to be protected, ${by}: ${reason}`,
  decidedFor: (reason: Part) => `Decided not to be protected: ${reason}`,
});

export function decidedNot(by = "", reason = ""): string {
  if (by === "") return reason === "" ? wording.decided : wording.decidedFor(reason);
  return reason === "" ? wording.decidedBy(by) : wording.decidedByFor(by, reason);
}
