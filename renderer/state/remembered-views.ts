import type { DocumentState } from "./document-store.ts";

/** What of a drawing was in the middle of the sheet, and how large: true for a window of any size. */
export interface RememberedView {
  /** In drawing units of the sheet. */
  readonly x: number;
  readonly y: number;
  readonly zoom: number;
}

type Store = Pick<Storage, "getItem" | "setItem">;

const KEY = "loadside.views";
/** As many documents as a person may go back to. */
const MOST = 50;

/**
 * What tells a document from others of its name; undefined for one that has no file yet: nobody comes back to it.
 * Enclosures have ids of their own, and the first one stays.
 */
export function keyOfView(document: DocumentState): string | undefined {
  const { target, fileName, project } = document;
  const [first] = Object.keys(project.asFound.enclosures).sort();
  return target === undefined || fileName === undefined || first === undefined ? undefined : `${fileName} ${first}`;
}

/** Keeps where a document is looked at; without a view, forgets it. The one that was kept longest ago goes first. */
export function rememberView(store: Store, key: string, view: RememberedView | undefined): void {
  const others = read(store).filter(([other]) => other !== key);
  const all = view === undefined ? others : [...others, [key, view] as const];
  try {
    store.setItem(KEY, JSON.stringify(all.slice(-MOST)));
  } catch {
    // A browser that keeps nothing shows the whole drawing next time.
  }
}

/** Where a document was looked at last; undefined where that is not known. */
export const recallView = (store: Store, key: string): RememberedView | undefined =>
  read(store).find(([other]) => other === key)?.[1];

function read(store: Store): readonly (readonly [string, RememberedView])[] {
  try {
    const kept: unknown = JSON.parse(store.getItem(KEY) ?? "[]");
    return Array.isArray(kept) ? kept.filter(isEntry) : [];
  } catch {
    return [];
  }
}

function isEntry(entry: unknown): entry is readonly [string, RememberedView] {
  if (!Array.isArray(entry) || typeof entry[0] !== "string" || typeof entry[1] !== "object" || entry[1] === null)
    return false;
  const { x, y, zoom }: Readonly<Record<string, unknown>> = entry[1];
  return [x, y, zoom].every((each) => typeof each === "number" && Number.isFinite(each)) && (zoom as number) > 0;
}
