import { type CableItem, cableItems } from "../../shared-model/catalog/cable-items.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { shownInstallation } from "./document-store.ts";
import { openPick, type PickLine } from "./pick-store.ts";
import { sessionStore } from "./session-store.ts";
import { createStore, type Store } from "./store.ts";
import { saysInTradeWords } from "./trade-words.ts";
import { wording } from "./words.ts";

/** Stands in a tool for a cable whose kind is said while it is drawn. */
export const ANY_CABLE = "any";

export interface CableKind {
  /** What was drawn last in this session. */
  readonly last: string | undefined;
  /** What was typed while a cable of no kind yet is in the hand. */
  readonly typed: string;
}

export const cableKindStore: Store<CableKind> = createStore<CableKind>({ last: undefined, typed: "" });

export const rememberCableKind = (last: string): void => cableKindStore.set({ last, typed: "" });

/**
 * Cables of the stock that what was typed may mean, in the trade's words for it: "12/2", "14-3", "12/3 mc". The one that
 * was drawn last comes first, then those whose size is just what was typed, then as the stock has them.
 */
export function kindsFor(typed: string, last: string | undefined): readonly CableItem[] {
  const size = sizeIn(typed);
  const rank = (item: CableItem): number => (item.sizeText === size ? 0 : 2) + (item.id === last ? 0 : 1);
  return cableItems
    .filter(({ title, sizeText }) => saysInTradeWords(`${title} ${sizeText}`, typed))
    .map((item, place) => ({ item, place }))
    .sort((a, b) => rank(a.item) - rank(b.item) || a.place - b.place)
    .map(({ item }) => item);
}

/** The size of a cable as it is printed: "12/2". A gauge alone is none, for it says nothing of the conductors. */
function sizeIn(typed: string): string | undefined {
  const [first = ""] = typed.trim().split(/\s/);
  const size = first.replaceAll("-", "/");
  return size.includes("/") ? size : undefined;
}

/**
 * Kind that the typed words settle: the one of that size, the only one that they mean, or the one drawn last among them.
 * Undefined while nothing is typed, nothing is called that, or several are meant.
 */
export function settledKind({ typed, last }: CableKind): CableItem | undefined {
  if (typed.trim() === "") return undefined;
  const found = kindsFor(typed, last);
  const [first] = found;
  return first !== undefined && (found.length === 1 || first.id === last || first.sizeText === sizeIn(typed))
    ? first
    : undefined;
}

const WORDS = {
  outside: wording.outOfThisDrawing,
  hint: wording.whichCableTypeItsSizeFor,
  field: wording.kindOfCable,
  last: wording.drawnLast,
} as const;

/** Asks which cable it is that was just drawn; the one that was drawn last is the first choice. */
export function askCableKind(from: EnclosureId, to: EnclosureId | undefined, draw: (item: string) => void): void {
  const { enclosures } = shownInstallation();
  const { last } = cableKindStore.get();
  const far = to === undefined ? WORDS.outside : wording.to(enclosures[to]?.name ?? "");
  const line = ({ id, title }: CableItem): PickLine => ({
    key: id,
    title,
    ...(id === last && { note: WORDS.last }),
    run: () => draw(id),
  });
  openPick({
    title: wording.cableFrom(enclosures[from]?.name ?? "", far),
    hint: WORDS.hint,
    lines: () => kindsFor("", last).map(line),
    typed: {
      label: WORDS.field,
      line: (text) => {
        const [first] = text === "" ? [] : kindsFor(text, last);
        return first && line(first);
      },
    },
    cancelled: () => sessionStore.merge({ routeFrom: undefined, tool: undefined }),
  });
}
