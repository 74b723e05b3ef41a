export const TEST_RECORD = "Test record";
export const NO_TESTS = "Nothing is drawn that can be tested.";
export const HOW =
  "Expected values are computed from the drawing: before the work from what was found, after it from what is proposed. Voltages: lamps lit, nothing running at receptacles. TEST, RESET and buttons: everything in use. Write what the meter shows, not what it should show.";
export const OUTCOMES = { agrees: "agrees", differs: "DIFFERS", "not-compared": "" } as const;
export const SIGNATURES = ["tested by", "licence or company", "date", "signature"] as const;
export const HANDED_OVER = ["received by", "date", "signature"] as const;
