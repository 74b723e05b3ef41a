import { useEffect, useMemo } from "react";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { type FindingsState, findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import type { Level } from "../detail.ts";
import { gestureStore } from "../gesture-store.ts";
import type { SheetDrawings } from "../sheet-drawings.ts";
import { waitingStore } from "../turns.ts";
import { type FarItem, farItems } from "./far-scene.ts";
import { setPainted } from "./painted.ts";

interface Painted {
  /** All of them, wherever they are. */
  readonly all: readonly FarItem[];
  readonly items: readonly FarItem[];
  /** Boxes that show the sign of a finding. */
  readonly marked: ReadonlySet<EnclosureId>;
}

const NONE: readonly FarItem[] = [];

/** The boxes that are painted: from afar all but those on the move, else those that wait for their picture. */
export function usePainted(shown: SheetDrawings, level: Level): Painted {
  const found = useStore(findingsStore, itself, sameAnswers);
  const waiting = useStore(waitingStore, ({ ids }) => ids);
  const moving = useStore(gestureStore, movingIds);
  const away = level !== "near";
  const all = useMemo(() => (away ? farItems(shown, found) : NONE), [away, shown, found]);
  const marked = useMemo(() => new Set(all.flatMap(({ id, sign }) => (sign === undefined ? [] : [id]))), [all]);
  const items = useMemo(() => {
    if (level === "near") return waiting.size === 0 ? NONE : farItems(shown, found, waiting);
    if (level === "middle") return waiting.size === 0 ? NONE : all.filter(({ id }) => waiting.has(id));
    const held = new Set<string>(moving.split(" "));
    return moving === "" ? all : all.filter(({ id }) => !held.has(id));
  }, [level, all, shown, found, waiting, moving]);
  useEffect(() => setPainted(level === "far" ? all : NONE), [level, all]);
  return { all, items, marked };
}

const itself = (found: FindingsState): FindingsState => found;
const sameAnswers = (a: FindingsState, b: FindingsState): boolean =>
  a.findings === b.findings && a.couldNotTell === b.couldNotTell && a.ledgers === b.ledgers;
/** One text while the same boxes are on the move. */
const movingIds = ({ moving }: ReturnType<typeof gestureStore.get>): string => [...moving.keys()].join(" ");
