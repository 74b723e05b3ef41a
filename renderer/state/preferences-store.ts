import { PAPERS, type PaperName } from "../../shared-model/answers/sheet-input.ts";
import { type ChosenKeys, soundKeys } from "../../shared-model/commands/catalog/keys.ts";
import type { LengthSystem } from "../../shared-model/units/length-words.ts";
import { createStore, type Store } from "./store.ts";

export type ThemeChoice = "system" | "light" | "dark";

/** What this window remembers between runs; the document holds none of it. */
export interface Preferences {
  readonly theme: ThemeChoice;
  /** How lengths are shown and entered. */
  readonly lengths: LengthSystem;
  /** The general cautions were read and closed. */
  readonly cautionsRead: boolean;
  /** Name under which the person acknowledges findings; empty before the first time. */
  readonly name: string;
  /** Who required the local amendment that was made last; empty before the first. */
  readonly authority: string;
  /** Keys that were chosen in the place of those of the catalogue. */
  readonly keys: ChosenKeys;
  /** Whether single keys of the sheet do something. */
  readonly singleKeys: boolean;
  /** Paper that sheets are laid out on. */
  readonly paper: PaperName;
  /** The tour was taken, left or refused: it is not offered again. */
  readonly tourSeen: boolean;
  /** Whether the legend of the drawing stands on the sheet. */
  readonly legend: boolean;
  /** The corner that it was put into; until then it stands where it covers least. */
  readonly legendCorner?: LegendCorner;
  /** Whether the overview of the drawing stands on the sheet. */
  readonly overview: boolean;
  /** Whether the panes beside the sheet are folded to rails. */
  readonly leftFolded: boolean;
  readonly rightFolded: boolean;
}

/** Clockwise. */
export const LEGEND_CORNERS = ["bottom-right", "bottom-left", "top-left", "top-right"] as const;
export type LegendCorner = (typeof LEGEND_CORNERS)[number];

const KEY = "loadside.preferences";
const FIRST: Preferences = {
  theme: "system",
  lengths: "feet-inches",
  cautionsRead: false,
  name: "",
  authority: "",
  keys: {},
  singleKeys: true,
  paper: "letter",
  tourSeen: false,
  legend: false,
  overview: false,
  leftFolded: false,
  rightFolded: false,
};

export const preferencesStore: Store<Preferences> = createStore(recall());

preferencesStore.subscribe(() => {
  try {
    localStorage.setItem(KEY, JSON.stringify(preferencesStore.get()));
  } catch {
    // A browser that keeps nothing asks again next time; that is all that is lost.
  }
});

function recall(): Preferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    if (typeof kept !== "object" || kept === null) return FIRST;
    const theme: unknown = Reflect.get(kept, "theme");
    const name: unknown = Reflect.get(kept, "name");
    const authority: unknown = Reflect.get(kept, "authority");
    const legendCorner = LEGEND_CORNERS.find((corner) => corner === Reflect.get(kept, "legendCorner"));
    return {
      theme: theme === "light" || theme === "dark" ? theme : "system",
      lengths: Reflect.get(kept, "lengths") === "metres" ? "metres" : "feet-inches",
      cautionsRead: Reflect.get(kept, "cautionsRead") === true,
      name: typeof name === "string" ? name : "",
      authority: typeof authority === "string" ? authority : "",
      keys: soundKeys(Reflect.get(kept, "keys")),
      singleKeys: Reflect.get(kept, "singleKeys") !== false,
      paper: PAPERS.find((paper) => paper === Reflect.get(kept, "paper")) ?? FIRST.paper,
      tourSeen: Reflect.get(kept, "tourSeen") === true,
      legend: Reflect.get(kept, "legend") === true,
      overview: Reflect.get(kept, "overview") === true,
      leftFolded: Reflect.get(kept, "leftFolded") === true,
      rightFolded: Reflect.get(kept, "rightFolded") === true,
      ...(legendCorner !== undefined && { legendCorner }),
    };
  } catch {
    return FIRST;
  }
}
