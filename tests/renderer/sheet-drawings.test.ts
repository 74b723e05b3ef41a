import { beforeEach, describe, expect, test } from "vitest";
import { createKeeper } from "../../renderer/sheet/sheet-drawings.ts";
import { createToFlow } from "../../renderer/sheet/to-flow.ts";
import { dispatch, documentStore, openDocument } from "../../renderer/state/document-store.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { boxId, laundryAsFound } from "../builders/drawing.ts";

const UNLIMITED = Number.POSITIVE_INFINITY;
const NOTHING_MOVES = new Map<EnclosureId, { readonly x: number; readonly y: number }>();

/** Boxes whose drawing is another object after an edit. */
function redrawnBy(edit: () => { readonly ok: boolean }): readonly string[] {
  const keep = createKeeper();
  const before = keep(documentStore.get(), UNLIMITED).drawings;
  expect(edit().ok).toBe(true);
  const after = keep(documentStore.get(), UNLIMITED).drawings;
  return [...after].flatMap(([id, drawing]) => (drawing === before.get(id) ? [] : [drawing.header.name])).sort();
}

describe("drawings of the sheet", () => {
  beforeEach(() => openDocument({ project: laundryAsFound() }));

  test("an edit inside a box draws that box alone", () => {
    const end = "cable-C2.bk.b";
    const args = { state: "as-found", enclosure: boxId("B2"), end: end as never } as const;
    expect(redrawnBy(() => dispatch({ command: "cap-end", args }))).toEqual(["B2"]);
  });

  test("a new name draws the box and those whose cables say where they go", () => {
    const args = { state: "as-found", item: { kind: "enclosure", id: boxId("B2") }, name: "Sink" } as const;
    expect(redrawnBy(() => dispatch({ command: "rename-item", args }))).toEqual(["B1", "B3", "Sink"]);
  });

  test("boxes that move together draw nothing anew when no cable leaves them", () => {
    const { layout } = documentStore.get().project;
    const moves = (Object.keys(layout.enclosures) as EnclosureId[]).map((id) => {
      const at = layout.enclosures[id];
      return { id, to: { x: (at?.x ?? 0) + 160, y: (at?.y ?? 0) + 32 } };
    });
    expect(redrawnBy(() => dispatch({ command: "move-enclosures", args: { moves } }))).toEqual([]);
  });

  test("a large building is drawn in slices, and an edit does not wait for them", () => {
    // Every look at the clock costs a millisecond, so that a budget of two draws two or three boxes.
    let time = 0;
    const keep = createKeeper(() => time++);
    const first = keep(documentStore.get(), 2);
    expect(first.missing).toBeGreaterThan(0);
    const waiting = [...Object.keys(documentStore.get().project.asFound.enclosures)].filter(
      (id) => !first.drawings.has(id as EnclosureId),
    );
    const last = waiting.at(-1) as EnclosureId;
    const item = { kind: "enclosure", id: last } as const;
    expect(dispatch({ command: "rename-item", args: { state: "as-found", item, name: "Last" } }).ok).toBe(true);
    expect(keep(documentStore.get(), 0).drawings.get(last)?.header.name).toBe("Last");
    let shown = keep(documentStore.get(), 2);
    for (let i = 0; i < 20 && shown.missing > 0; i++) shown = keep(documentStore.get(), 2);
    expect(shown.missing).toBe(0);
    expect(shown.drawings.size).toBe(Object.keys(documentStore.get().project.asFound.enclosures).length);
  });

  test("what was drawn ahead is there at once when it is shown", () => {
    openDocument({ project: laundryAsFound() });
    let time = 0;
    const keep = createKeeper(() => time++);
    const document = documentStore.get();
    keep(document, 0);
    let slices = 1;
    while (!keep.drawAhead(document, 2)) slices++;
    expect(slices).toBeGreaterThan(1);
    const before = time;
    const shown = keep(document, UNLIMITED);
    expect(shown.missing).toBe(0);
    expect(shown.drawings.size).toBe(Object.keys(document.project.asFound.enclosures).length);
    expect(time).toBeGreaterThan(before);
    expect(keep.drawAhead(document, 0)).toBe(true);
  });

  test("a box on the move gives one other flow node, and the others stay the same objects", () => {
    const keep = createKeeper();
    const toFlow = createToFlow();
    const shown = keep(documentStore.get(), UNLIMITED);
    const before = toFlow(shown, NOTHING_MOVES, new Set(), undefined);
    const moving = new Map([[boxId("B3"), { x: 5000, y: 5000 }]]);
    const during = toFlow(shown, moving, new Set(), undefined);
    const changed = during.filter((node, i) => node !== before[i]);
    expect(changed.map(({ ariaLabel }) => ariaLabel)).toEqual(["Box B3, porch"]);
    expect(
      toFlow(shown, NOTHING_MOVES, new Set(["box-B1"]), undefined).filter(({ selected }) => selected),
    ).toHaveLength(1);
  });
});
