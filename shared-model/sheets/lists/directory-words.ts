import type { Device } from "../../model/device.ts";

export const DIRECTORY = "Panel directory";
export const NO_PANEL = "No panel is drawn.";
export const FROM_WIRING = "from the wiring";
export const NO_CONDUCTOR = "nothing connected in this drawing";
export const MAY_FEED_MORE = "leaves the drawing: may feed more";
export const ROOMS = "rooms: ";
export const WITHOUT_NUMBER = "Without a number";
/** @param section As a list of findings names it; absent where the edition at hand has none. */
export const howWords = (section: string | undefined): string =>
  `Each circuit is named by its clear, evident and specific purpose and place, never by who lives there now${section === undefined ? "" : ` (${section})`}. Correct it whenever a circuit is changed. A line without words is not in this drawing: write in what stands there, or that it is a free space.`;
export const CORRECTED = ["corrected", "date", "by"] as const;

export const FUNCTIONS: Readonly<Record<NonNullable<Device["function"]>, string>> = {
  none: "",
  gfci: "GFCI",
  afci: "AFCI",
  dual: "GFCI and AFCI",
  "equipment-ground-fault": "equipment ground-fault",
};
