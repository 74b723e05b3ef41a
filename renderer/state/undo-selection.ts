import type { History } from "../../shared-model/commands/history.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { documentStore, followDocument, installationOf } from "./document-store.ts";
import { homeOf } from "./home-of.ts";
import type { Selected } from "./selection.ts";
import { sessionStore } from "./session-store.ts";

interface Around {
  readonly before: readonly Selected[];
  readonly after: readonly Selected[] | undefined;
}

/** Steps of which what was selected is remembered; an older one leaves the selection as it is. */
const MOST = 500;

/**
 * Undo brings back what was selected before a step, redo what was selected after it, as far as it is there: until the
 * returned function is called. What stays selected has no more to it than what the drawing still has.
 * @param seen Called with what a step of undo or redo has selected, so that it can be brought into view.
 */
export function restoreSelection(seen: (selection: readonly Selected[]) => void): () => void {
  const around = new Map<number, Around>();
  let known = documentStore.get().history;
  return followDocument(({ patches }) => {
    const now = documentStore.get();
    const { history } = now;
    const before = known;
    known = history;
    if (patches === undefined) {
      around.clear();
      return;
    }
    const { selection } = sessionStore.get();
    const step = travelled(before, history);
    if (step === undefined) {
      remember(around, before, history, selection);
      return;
    }
    const kept = around.get(step.serial);
    if (step.way === "undo" && kept !== undefined && kept.after === undefined)
      around.set(step.serial, { ...kept, after: selection });
    const wanted = step.way === "undo" ? kept?.before : kept?.after;
    // Where nothing was selected, what the person looks at now stays.
    const there = (wanted === undefined || wanted.length === 0 ? selection : wanted).filter((item) =>
      isThere(installationOf(now), item),
    );
    if (!isSame(there, selection)) sessionStore.merge({ selection: there, held: undefined });
    seen(there);
  });
}

/** The step that was taken back or done again; undefined after an edit. */
function travelled(before: History, now: History) {
  if (now.nextSerial !== before.nextSerial) return undefined;
  const isUndo = now.future.length > before.future.length;
  const step = isUndo ? now.future[0] : now.past.at(-1);
  return step && ({ way: isUndo ? "undo" : "redo", serial: step.serial } as const);
}

/** When an edit arrives, what was selected before it still is. A step that it was merged into began with what that did. */
function remember(around: Map<number, Around>, before: History, now: History, selection: readonly Selected[]): void {
  const last = before.past.at(-1)?.serial;
  const step = now.past.at(-1)?.serial;
  if (step === undefined) return;
  const earlier = last === undefined ? undefined : around.get(last);
  if (last !== undefined && earlier !== undefined && earlier.after === undefined)
    around.set(last, { ...earlier, after: selection });
  const isMerged = now.past.length === before.past.length && now.past.at(-2) === before.past.at(-2);
  around.set(step, { before: isMerged && earlier ? earlier.before : selection, after: undefined });
  const [oldest] = around.keys();
  if (around.size > MOST && oldest !== undefined) around.delete(oldest);
}

const isSame = (a: readonly Selected[], b: readonly Selected[]): boolean =>
  a.length === b.length && a.every((item, index) => item === b[index]);

/** Whether a thing that was selected is in the drawing. */
function isThere(installation: Installation, item: Selected): boolean {
  switch (item.kind) {
    case "cable":
      return item.id in installation.cables;
    case "load":
      return item.id in installation.loads;
    case "end":
      return item.id in (installation.enclosures[item.enclosure]?.places ?? {});
    case "entry":
      return item.id in (installation.enclosures[item.enclosure]?.entries ?? {});
    case "label":
      return item.id in installation.labels;
    case "room":
      return true;
    default:
      return homeOf(installation, item) !== undefined;
  }
}
