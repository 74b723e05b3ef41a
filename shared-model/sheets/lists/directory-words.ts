import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";

export const DIRECTORY = catalogue({
  title: "Panel directory",
  noPanel: "No panel is drawn.",
  fromWiring: "from the wiring",
  noConductor: "nothing connected in this drawing",
  mayFeedMore: "leaves the drawing: may feed more",
  notFound: "not identified: which breaker it is was not read",
  rooms: (names: Part) => `rooms: ${names}`,
  withSpace: (space: Part) => `with ${space}`,
  withoutNumber: "Without a number",
  how: "Each circuit is named by its clear, evident and specific purpose and place, never by who lives there now. Correct it whenever a circuit is changed. A line without words is not in this drawing: write in what stands there, or that it is a free space.",
  howBySection: (section: Part) =>
    `Each circuit is named by its clear, evident and specific purpose and place, never by who lives there now (${section}). Correct it whenever a circuit is changed. A line without words is not in this drawing: write in what stands there, or that it is a free space.`,
  corrected: "corrected",
  date: "date",
  by: "by",
  breaker: "breaker",
  ampere: "A",
  circuit: "circuit",
});

/** @param section As a list of findings names it; absent where the edition at hand has none. */
export const howWords = (section: string | undefined): string =>
  section === undefined ? DIRECTORY.how : DIRECTORY.howBySection(section);

/** Lines to sign on. */
export const CORRECTED = [DIRECTORY.corrected, DIRECTORY.date, DIRECTORY.by] as const;

export const FUNCTIONS: Readonly<Record<NonNullable<Device["function"]>, string>> = {
  ...catalogue({
    gfci: "GFCI",
    afci: "AFCI",
    dual: "GFCI and AFCI",
    "equipment-ground-fault": "equipment ground-fault",
  }),
  none: "",
};

/** Of the list for writers of tables. */
export const DIRECTORY_TABLE = catalogue({
  name: "Directory",
  panel: "Panel",
  space: "Space",
  breaker: "Breaker",
  notFound: (name: Part) => `${name} (not identified)`,
  rating: "Rating, A",
  protection: "Protection",
  written: "Circuit as written",
  fed: "Fed by the wiring",
  rooms: "Rooms",
  outlets: "Outlets",
});
