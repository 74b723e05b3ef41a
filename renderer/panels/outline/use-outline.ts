import { useEffect, useMemo, useRef } from "react";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { findingsStore } from "../../state/findings-store.ts";
import { isSame, selectable } from "../../state/item-actions/subject.ts";
import type { Selected } from "../../state/selection.ts";
import { sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { indexOfRow } from "../../ui/tree-rows.ts";
import { countFindings } from "./finding-counts.ts";
import { type OutlineRow, visibleRows } from "./outline-rows.ts";
import { outlineStore, setOpen } from "./outline-store.ts";
import { outlineOf } from "./outline-tree.ts";
import { ancestorsOf, keyInOutline } from "./path-to.ts";

/** The rows of the shown account of the wiring, the active one, and the findings about each thing. */
export function useOutline() {
  const project = useStore(documentStore, (document) => document.project);
  const installation = useStore(documentStore, installationOf);
  const open = useStore(outlineStore, (outline) => outline.open);
  const wanted = useStore(outlineStore, (outline) => outline.active);
  const findings = useStore(findingsStore, (state) => state.findings);
  const { rooms, readings } = project;
  const rows = useMemo(
    () => visibleRows(outlineOf({ rooms, readings }, installation), open),
    [rooms, readings, installation, open],
  );
  const counts = useMemo(() => countFindings(installation, findings), [installation, findings]);

  // A row that is gone hands over to the one that has come to its place.
  const place = useRef(0);
  const found = indexOfRow(rows, wanted);
  const at = found >= 0 ? found : Math.min(place.current, rows.length - 1);
  useEffect(() => {
    place.current = Math.max(at, 0);
  }, [at]);
  const active = rows[at]?.key;
  useRevealed(rows, active);
  return { rows, active, counts };
}

/** What is selected elsewhere is found here: the places it stands in open, and its row becomes the active one. */
function useRevealed(rows: readonly OutlineRow[], active: string | undefined): void {
  const selection = useStore(sessionStore, (session) => session.selection);
  const seen = useRef({ rows, active });
  useEffect(() => {
    seen.current = { rows, active };
  });
  useEffect(() => {
    const item = selection.at(-1);
    if (item !== undefined) reveal(item, seen.current);
  }, [selection]);
}

function reveal(
  item: Selected,
  { rows, active }: { readonly rows: readonly OutlineRow[]; active: string | undefined },
): void {
  const now = rows[indexOfRow(rows, active)];
  if (now !== undefined && shows(now, item)) return;
  const home = active?.split("/")[0];
  const visible = rows.filter((row) => shows(row, item));
  const row = visible.find(({ key }) => key.split("/")[0] === home);
  if (row !== undefined) {
    outlineStore.merge({ active: row.key });
    return;
  }
  const key = keyInOutline(installationOf(documentStore.get()), item, active);
  if (key === undefined) return;
  setOpen(ancestorsOf(key), true);
  outlineStore.merge({ active: key });
}

function shows(row: OutlineRow, item: Selected): boolean {
  const own = selectable(row.node.subject);
  return own !== undefined && isSame(own, item);
}
