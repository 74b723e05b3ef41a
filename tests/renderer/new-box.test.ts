/** A box as it is seen: one command makes it, whole, for whatever is chosen. */
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { supplyBy } from "../../renderer/state/ask-supply.ts";
import {
  documentStore,
  isDirty,
  newDocument,
  nextUndo,
  openDocument,
  shownInstallation,
  undo,
} from "../../renderer/state/document-store.ts";
import { freshSupply } from "../../renderer/state/draw-panel.ts";
import { MOST_CABLES, MOST_DEVICES, type SeenBox } from "../../renderer/state/new-box.ts";
import {
  BOX_ITEMS,
  CABLE_ITEMS,
  cableNames,
  DEVICE_TYPES,
  FIRST_SEEN,
  makeBox,
  roomFor,
  tryBox,
} from "../../renderer/state/new-box-form.ts";
import { sessionStore } from "../../renderer/state/session-store.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { freePlace } from "../../shared-model/geometry/free-place.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import { drawSupply } from "../../shared-model/planning/supply/draw-supply.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { formatVolume } from "../../shared-model/units/volume.ts";

beforeEach(() => openDocument(newDocument()));

const onlyBox = (): Box => {
  const [box] = Object.values(shownInstallation().enclosures);
  if (box?.kind !== "box") throw new Error("There is no box.");
  return box;
};
const seen = (part: Partial<SeenBox>): SeenBox => ({ ...FIRST_SEEN, ...part });

/** What the worker answers, by the document of this window. */
const answering = () => supplyBy(async (ask) => drawSupply(documentStore.get().project, ask, freePlace));
const panels = () => Object.values(shownInstallation().enclosures).filter(({ kind }) => kind === "panel");

describe("the panel of the supply", () => {
  beforeEach(() => sessionStore.merge({ notice: undefined }));
  const FED = seen({ cables: [{ id: "nm-14-2-g", count: 2 }], supply: 2 });
  afterEach(() => supplyBy(undefined));

  test("is drawn with the box, in one step, and says of itself that it was not seen", async () => {
    answering();
    expect(await makeBox(FED)).toBe(true);
    const [panel] = panels();
    expect(panel).toMatchObject({ name: "P", note: "drawn, not seen" });
    const breaker = Object.values(panel?.devices ?? {}).find(({ type }) => type === "breaker-1");
    // 14 AWG copper: 15 A, NFPA 70 240.4(D).
    expect(breaker).toMatchObject({
      name: "CB1?",
      breakerRatingA: 15,
      evidence: { breakerRatingA: "assumed", type: "assumed" },
    });
    const c2 = Object.values(shownInstallation().cables).find(({ name }) => name === "C2");
    expect(c2?.sides.b).toMatchObject({ enclosure: panel?.id });
    expect(invariantProblems(documentStore.get().project)).toEqual([]);
    expect(nextUndo(documentStore.get())).toBe("Make B1 from what is seen");
    // The next that is not read has a name of its own.
    expect(freshSupply(shownInstallation()).breakers.map(({ name }) => name)).toEqual(["CB2?", "CB3?"]);
    undo();
    expect(shownInstallation().enclosures).toEqual({});
  });

  test("is left out where that is chosen, and where no cable is thought to bring the supply", async () => {
    answering();
    await makeBox({ ...FED, panel: "left-out" });
    await makeBox(seen({ cables: FED.cables }));
    expect(panels()).toEqual([]);
    expect(sessionStore.get().notice).toBeUndefined();
  });

  test.each([
    ["it cannot be", [{ id: "knob-tube-14", count: 1 }], true, /one conductor by itself/],
    ["nobody answers", [{ id: "nm-14-2-g", count: 1 }], false, /do not answer/],
  ])("where %s, the box is made without it, and a line says why", async (_, cables, answers, why) => {
    if (answers) answering();
    expect(await makeBox(seen({ cables, supply: 1 }))).toBe(true);
    expect(onlyBox().name).toBe("B1");
    expect(panels()).toEqual([]);
    expect(JSON.stringify(sessionStore.get())).toMatch(why);
  });
});

describe("the laundry box", () => {
  const LAUNDRY = seen({
    cables: [{ id: "nm-12-2-g", count: 5 }],
    supply: 1,
    room: { kind: "new", roomKind: "laundry", name: "Laundry" },
  });

  test("comes with every device in place and every end tagged, capped and in open country at its other side", async () => {
    expect(await makeBox(LAUNDRY)).toBe(true);
    const installation = shownInstallation();
    const box = onlyBox();
    expect(Object.values(box.devices).map(({ name, type }) => [name, type])).toEqual([["R1", "receptacle-15"]]);
    const tags = Object.values(box.places).map(({ at, tag }) => [at.kind, tag]);
    const expected = ["C1", "C2", "C3", "C4", "C5"].flatMap((name) =>
      ["BK", "WH", "bare"].map((code) => ["capped", `${name} ${code}`]),
    );
    expect(tags.sort()).toEqual(expected.sort());
    for (const cable of Object.values(installation.cables)) {
      expect(cable.sides.b).toHaveProperty("outside");
      expect(cable.notes).toMatch(/not traced yet/i);
    }
    const supply = installation.intent.boxes[box.id]?.supply;
    expect(supply && installation.cables[supply]?.name).toBe("C1");
    const room = box.roomId && documentStore.get().project.rooms[box.roomId];
    expect(room).toMatchObject({ name: "Laundry", kinds: ["laundry"] });
    expect(sessionStore.get().selection).toEqual([{ kind: "enclosure", id: box.id }]);
  });

  test("is one step", async () => {
    await makeBox(LAUNDRY);
    expect(nextUndo(documentStore.get())).toBe("Make B1 from what is seen");
    undo();
    expect(documentStore.get().project.asFound).toEqual(newDocument().project.asFound);
    expect(documentStore.get().project.rooms).toEqual({});
    expect(isDirty(documentStore.get())).toBe(false);
  });

  test("is made under the longest names too", async () => {
    const name = "N".repeat(80);
    expect(await makeBox({ ...LAUNDRY, name, room: { kind: "new", roomKind: "laundry", name } })).toBe(true);
    expect(onlyBox().name).toBe(name);
  });

  test("needs what the published worked example counts", () => {
    // The job's worked example: five 12/2 cables, internal clamps and one receptacle need 32.0625 in³ of 30.3.
    const outcome = tryBox(LAUNDRY, "new-drawing", { project: newDocument().project, state: "as-found" });
    if (!outcome.ok) throw new Error(outcome.why);
    const { asked, id } = outcome.tried;
    const session = openSession(documentStore.get().project);
    const [result] = session.preview(asked.state, [asked.call], undefined, id);
    expect(result && "fill" in result && formatVolume(result.fill?.total ?? 0)).toBe("32.0625");
  });
});

test("every box, cable and device that can be chosen makes a sound drawing, with tags as ends are called", async () => {
  for (const [index, { id: item }] of BOX_ITEMS.entries()) {
    for (const held of ["clamps", "connectors"] as const) {
      openDocument(newDocument());
      const kinds = [0, 1, 2].flatMap((next) => {
        const cable = CABLE_ITEMS[(index * 3 + next) % CABLE_ITEMS.length];
        return cable === undefined ? [] : [{ id: cable.id, count: 2 }];
      });
      expect(await makeBox(seen({ item, held, cables: kinds, supply: 6 })), item).toBe(true);
      const { project } = documentStore.get();
      expect(invariantProblems(project), item).toEqual([]);
      const box = onlyBox();
      for (const [end, { tag }] of Object.entries(box.places))
        expect(tag).toBe(nameOfEnd(project.asFound, box, end as EndKey));
      const before = BOX_ITEMS[index]?.make;
      const clamps = before?.kind === "box" ? before.facts.internalClamps : undefined;
      expect(box.internalClamps).toBe(held === "connectors" && clamps === "present" ? "none" : clamps);
      if (box.internalClamps === "none")
        expect(Object.values(box.entries).every(({ means }) => means === "external-connector")).toBe(true);
    }
  }
  for (const { id } of CABLE_ITEMS) {
    openDocument(newDocument());
    expect(await makeBox(seen({ cables: [{ id, count: MOST_CABLES }], devices: [] })), id).toBe(true);
    expect(Object.keys(shownInstallation().cables)).toHaveLength(MOST_CABLES);
  }
  for (const { id } of DEVICE_TYPES) {
    openDocument(newDocument());
    expect(await makeBox(seen({ cables: [], devices: [{ id, count: MOST_DEVICES }] })), id).toBe(true);
    expect(Object.keys(onlyBox().devices)).toHaveLength(MOST_DEVICES);
  }
});

test("a second box takes the next names and the next free place", async () => {
  await makeBox(FIRST_SEEN);
  await makeBox(FIRST_SEEN);
  const { project } = documentStore.get();
  const names = (table: object): unknown[] => Object.values(table).map(({ name }) => name);
  expect(names(project.asFound.enclosures)).toEqual(["B1", "B2"]);
  expect(names(project.asFound.cables).sort()).toEqual(["C1", "C2", "C3", "C4"]);
  const [first, second] = Object.values(project.layout.enclosures);
  expect(first).not.toEqual(second);
});

test("trying changes nothing, and names the cables that there would be", async () => {
  await makeBox(FIRST_SEEN);
  const before = documentStore.get();
  const { project, state } = before;
  const outcome = tryBox(seen({ cables: [{ id: "nm-14-3-g", count: 3 }] }), "this-drawing", { project, state });
  expect(documentStore.get()).toBe(before);
  expect(cableNames(project, outcome.ok ? outcome.tried : undefined)).toEqual(["C3", "C4", "C5"]);
});

test("there is room for as many as there may be", () => {
  expect(roomFor(FIRST_SEEN, "cables")).toBe(MOST_CABLES - 2);
  expect(roomFor(seen({ devices: [] }), "devices")).toBe(MOST_DEVICES);
});

test("a name that cannot be is told, not made", () => {
  const outcome = tryBox(seen({ name: "a\tb" }), "new-drawing", { project: newDocument().project, state: "as-found" });
  expect(outcome).toMatchObject({ ok: false, why: expect.stringContaining("name") });
});

test("is made in no other drawing that was opened while its panel was asked for", async () => {
  supplyBy(() => {
    openDocument(newDocument());
    return Promise.resolve({ ok: false, why: "" });
  });
  expect(await makeBox(seen({ supply: 1 }))).toBe(false);
  expect(shownInstallation().enclosures).toEqual({});
  expect(sessionStore.get().notice?.title).toBe("Not made");
  supplyBy(undefined);
});
