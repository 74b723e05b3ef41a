import { beforeEach, describe, expect, test } from "vitest";
import { differenceText, differenceWords, readDifference } from "../../renderer/sheet/difference.ts";
import { createKeeper } from "../../renderer/sheet/sheet-drawings.ts";
import { createToFlow } from "../../renderer/sheet/to-flow.ts";
import { documentStore, openDocument } from "../../renderer/state/document-store.ts";
import { placesOf } from "../../renderer/state/sheet-places.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { boxId, cableId, deviceId, laundryDrawing, spliceId } from "../builders/drawing.ts";

/** The laundry circuit with a new receptacle R9 beyond B6, and one end of B1 put under a cap. */
const planned = (): Project =>
  laundryDrawing()
    .propose()
    .box("B9", "device-3-2-3-1-2", { at: { x: 1300, y: 900 } })
    .device("R9", "receptacle-15", "B9")
    .cable("C9", "B6", "B9")
    .splice("S9", "B6", "twist-medium", "C9.wh@B6", "C9.bk@B6").project;

const show = (state: StateName): void => documentStore.merge({ state });

describe("difference of the states on the sheet", () => {
  beforeEach(() => openDocument({ project: planned() }));

  test("proposed says of each box what differs from as found, and nothing of the others", () => {
    show("proposed");
    const of = (box: string) => readDifference(differenceText(documentStore.get(), boxId(box)));
    expect(of("B9").change).toBe("new");
    expect([...of("B9").newDevices]).toEqual([deviceId("R9")]);
    expect(of("B6").change).toBe("opened");
    expect([...of("B6").newCables]).toEqual([cableId("C9")]);
    expect([...of("B6").newSplices]).toEqual([spliceId("S9")]);
    expect(differenceText(documentStore.get(), boxId("B1"))).toBe("");
    expect(differenceWords(documentStore.get())).toBe("1 opened, 1 new");
  });

  test("as found says nothing of what is proposed", () => {
    show("as-found");
    for (const box of ["B6", "B9"]) expect(differenceText(documentStore.get(), boxId(box))).toBe("");
    expect(differenceWords(documentStore.get())).toBeUndefined();
  });

  test("a device that replaces another says whose place it takes", () => {
    const project = planned();
    const proposed = project.proposed;
    const box = proposed?.enclosures[boxId("B9")];
    const R9 = box?.devices[deviceId("R9")];
    if (proposed === undefined || box === undefined || R9 === undefined) throw new Error("R9 is not drawn.");
    const devices = { [R9.id]: { ...R9, replaces: deviceId("R5") } };
    const enclosures = { ...proposed.enclosures, [box.id]: { ...box, devices } };
    openDocument({ project: { ...project, proposed: { ...proposed, enclosures } } });
    show("proposed");
    expect([...readDifference(differenceText(documentStore.get(), box.id)).replaces]).toEqual([[R9.id, "R5"]]);
  });
});

describe("a switch of the shown state", () => {
  beforeEach(() => openDocument({ project: planned() }));
  const nothingMoves = new Map<EnclosureId, { readonly x: number; readonly y: number }>();

  test("draws what is in the shown state alone, and keeps the nodes of what is the same in both", () => {
    const keep = createKeeper();
    const toFlow = createToFlow();
    const nodes = () => toFlow(keep(documentStore.get(), Number.POSITIVE_INFINITY), nothingMoves, new Set(), undefined);
    show("as-found");
    const asFound = nodes();
    show("proposed");
    const proposed = nodes();
    show("as-found");
    const again = nodes();
    const ids = (list: typeof asFound) => list.map(({ id }) => id).sort();
    expect(ids(proposed)).toEqual([...ids(asFound), boxId("B9")].sort());
    expect(ids(again)).toEqual(ids(asFound));
    const same = boxId("B1");
    expect(proposed.find(({ id }) => id === same)).toBe(asFound.find(({ id }) => id === same));
    expect(proposed.find(({ id }) => id === boxId("B6"))?.ariaLabel).toBe("Box B6, hall, opened");
    expect(asFound.find(({ id }) => id === boxId("B6"))?.ariaLabel).toBe("Box B6, hall");
  });

  test("a box without a place in the layout gets a free one, and two get two", () => {
    const project = planned();
    const { [boxId("B6")]: _a, [boxId("B9")]: _b, ...enclosures } = project.layout.enclosures;
    openDocument({ project: { ...project, layout: { ...project.layout, enclosures } } });
    show("proposed");
    const places = placesOf(documentStore.get());
    const [six, nine] = [places[boxId("B6")], places[boxId("B9")]];
    if (six === undefined || nine === undefined) throw new Error("A box has no place.");
    const others = Object.entries(places).filter(([id]) => id !== boxId("B6") && id !== boxId("B9"));
    for (const [, at] of [...others, ["B9", nine] as const])
      expect(Math.abs(at.x - six.x) >= 1000 || Math.abs(at.y - six.y) >= 900).toBe(true);
    expect(placesOf(documentStore.get())).toBe(places);
    show("as-found");
    expect(placesOf(documentStore.get())[boxId("B9")]).toBeUndefined();
  });
});
