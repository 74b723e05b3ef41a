/** Pictures of drawings: small whatever they show, and read back only when they make sense. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import * as fc from "fast-check";
import { beforeEach, describe, expect, test, vi } from "vitest";
import type { KeptPicture, PictureStore } from "../../renderer/platform/picture-store.ts";
import { pictureOf } from "../../renderer/sheet/sheet-picture.ts";
import {
  dispatch,
  documentStore,
  lastSerial,
  markSaved,
  newDocument,
  openDocument,
} from "../../renderer/state/document-store.ts";
import {
  type DrawingPicture,
  NAME_LENGTH,
  type PictureBox,
  readPicture,
  writePicture,
} from "../../renderer/state/drawing-picture.ts";
import { keepPictures, picturesStore, refreshPictures, workPicture } from "../../renderer/state/pictures.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { ROOT } from "../small-project.ts";

const LARGEST = 8192;
const bytes = (text: string): number => Buffer.byteLength(text);

function sample(name: string) {
  const text = readFileSync(join(ROOT, `assets/samples/${name}.loadside`), "utf8");
  const parsed = parseProject(text);
  if (!parsed.ok) throw new Error(`${name} is no drawing.`);
  return { text, project: parsed.value.project };
}

const whole = (max = 1000) => fc.integer({ min: 0, max });
const box = fc.record(
  {
    at: fc.tuple(whole(), whole(), whole(), whole()),
    name: fc.string({ unit: "binary", maxLength: NAME_LENGTH }).filter((name) => name.length <= NAME_LENGTH),
    glyph: fc.constantFrom("gfci", "switch-3way"),
  },
  { requiredKeys: ["at"] },
);
const picture: fc.Arbitrary<DrawingPicture> = fc.record({
  state: fc.constantFrom("as-found" as const, "proposed" as const),
  count: whole(2000),
  width: fc.integer({ min: 1, max: 1000 }),
  height: fc.integer({ min: 1, max: 1000 }),
  boxes: fc.array(box as fc.Arbitrary<PictureBox>, { maxLength: 300, size: "max" }),
  roads: fc.array(
    fc.array(fc.tuple(whole(), whole()), { minLength: 2, maxLength: 6 }).map((points) => points.flat()),
    { maxLength: 200, size: "max" },
  ),
});

describe("a picture as text", () => {
  test("takes at most 8 KiB and is read back, whatever it shows", () => {
    let whole = 0;
    let less = 0;
    fc.assert(
      fc.property(picture, (drawn) => {
        const text = writePicture(drawn);
        expect(bytes(text)).toBeLessThanOrEqual(LARGEST);
        const read = readPicture(text);
        expect(read).toMatchObject({ count: drawn.count, state: drawn.state });
        if (bytes(JSON.stringify(drawn)) <= LARGEST) {
          expect(read).toEqual(drawn);
          whole += 1;
        } else {
          expect(read?.boxes.map(({ at }) => at)).toEqual(drawn.boxes.slice(0, read?.boxes.length).map(({ at }) => at));
          less += 1;
        }
      }),
      { numRuns: 100, endOnFailure: true },
    );
    expect([whole > 0, less > 0]).toEqual([true, true]);
  });

  test("gives up names first, then signs, then cables, then boxes", () => {
    const road = Array.from({ length: 12 }, () => 999);
    const boxes = (count: number): readonly PictureBox[] =>
      Array.from({ length: count }, () => ({ at: [999, 999, 99, 99], name: "N".repeat(NAME_LENGTH), glyph: "switch" }));
    const made = (count: number, roads: number) =>
      readPicture(
        writePicture({
          state: "as-found",
          count,
          width: 1000,
          height: 1000,
          boxes: boxes(count),
          roads: Array.from({ length: roads }, () => road),
        }),
      );
    expect(made(50, 50)?.boxes[0]).toEqual(boxes(1)[0]);
    expect(made(120, 60)?.boxes[0]).toEqual({ at: [999, 999, 99, 99], glyph: "switch" });
    expect(made(150, 60)).toMatchObject({
      boxes: { length: 150, 0: { at: [999, 999, 99, 99] } },
      roads: { length: 60 },
    });
    expect(made(200, 100)).toMatchObject({ boxes: { length: 200 }, roads: { length: 0 } });
    expect(made(900, 0)?.boxes.length).toBe(225);
  });

  test.each([
    ["", "nothing"],
    ["<svg onload=alert(1)>", "a page"],
    ["null", "null"],
    ['{"state":"as-found","count":1,"width":0,"height":9,"boxes":[],"roads":[]}', "no width"],
    ['{"state":"other","count":1,"width":9,"height":9,"boxes":[],"roads":[]}', "a state that does not exist"],
    ['{"state":"as-found","count":1,"width":9,"height":9,"boxes":[{"at":[1,2,3]}],"roads":[]}', "a box with no height"],
    ['{"state":"as-found","count":1,"width":9,"height":9,"boxes":[{"at":[1,2,3,1e9]}],"roads":[]}', "a huge box"],
    [
      '{"state":"as-found","count":1,"width":9,"height":9,"boxes":[{"at":[1,2,3,4],"glyph":"a b"}],"roads":[]}',
      "a sign",
    ],
    ['{"state":"as-found","count":1,"width":9,"height":9,"boxes":[{"at":[1,2,3,4],"name":7}],"roads":[]}', "a number"],
    ['{"state":"as-found","count":1,"width":9,"height":9,"boxes":[],"roads":[[1,2,3,4,5]]}', "half a corner"],
    ['{"state":"as-found","count":1,"width":9,"height":9,"boxes":[],"roads":[["0","0","L","1"]]}', "words in a path"],
  ])("%s is none: %s", (text) => {
    expect(readPicture(text)).toBeUndefined();
  });
});

describe("the picture of a document", () => {
  test.each(["laundry-box", "house-twelve-circuits", "wrong-on-purpose"])("%s: every box, every cable", (name) => {
    const { project } = sample(name);
    openDocument({ project });
    const drawn = pictureOf(documentStore.get());
    const { enclosures, cables } = project.proposed ?? project.asFound;
    const all = Object.values(enclosures);
    expect(drawn?.boxes.map((each) => each.name).sort()).toEqual(all.map((each) => each.name.slice(0, 16)).sort());
    expect(drawn?.count).toBe(all.filter(({ kind }) => kind === "box").length);
    const between = Object.values(cables).filter(({ sides }) => "enclosure" in sides.a && "enclosure" in sides.b);
    expect(drawn?.roads.length).toBe(between.length);
    expect(drawn && Math.max(drawn.width, drawn.height)).toBe(1000);
    for (const { at } of drawn?.boxes ?? []) {
      expect(at[0] + at[2]).toBeLessThanOrEqual((drawn?.width ?? 0) + 1);
      expect(at[1] + at[3]).toBeLessThanOrEqual((drawn?.height ?? 0) + 1);
    }
    // Rounded to a thousandth, it keeps everything: a whole house fits.
    expect(readPicture(writePicture(drawn as DrawingPicture))).toEqual(drawn);
  });

  test("that is empty: there is none", () => {
    openDocument(newDocument());
    expect(pictureOf(documentStore.get())).toBeUndefined();
  });
});

function inMemory() {
  const kept = new Map<string, string>();
  const store: PictureStore = {
    async keep(id, text) {
      kept.set(id, text);
    },
    all: async () => [...kept].map(([id, text]): KeptPicture => ({ id, text })),
    async remove(ids) {
      for (const id of ids) kept.delete(id);
    },
  };
  return { kept, store };
}

describe("keeping pictures", () => {
  beforeEach(() => openDocument(newDocument()));
  const { project, text } = sample("laundry-box");
  const target = (recent: string | undefined) => ({
    name: "a.loadside",
    recent: async () => recent,
    write: async () => ({ kind: "saved" as const }),
  });

  function start() {
    const { kept, store } = inMemory();
    const waits: number[] = [];
    let work: (() => void) | undefined;
    const stop = keepPictures({
      store,
      journal: "j1",
      maker: async () => ({ pictureOf }),
      later(then, afterMs) {
        waits.push(afterMs);
        work = then;
        return () => {
          work = undefined;
        };
      },
    });
    const run = async (): Promise<void> => {
      work?.();
      await vi.waitFor(() => undefined);
      await new Promise((done) => setTimeout(done, 20));
    };
    return { kept, waits, run, stop };
  }

  test("of a file that is opened, under its line of the list", async () => {
    const { kept, run, stop } = start();
    openDocument({ project, text, fileName: "a.loadside", target: target("r1") });
    await run();
    expect([...kept.keys()]).toEqual(["r1"]);
    stop();
  });

  test("of unsaved work under its journal, and of the file again once it is saved", async () => {
    const { kept, waits, run, stop } = start();
    openDocument({ project, text, fileName: "a.loadside", target: target("r1") });
    await run();
    const before = kept.get("r1");
    const id = Object.values(project.asFound.enclosures).find(({ name }) => name === "B1")?.id;
    if (id === undefined) throw new Error("There is no B1.");
    expect(
      dispatch({ command: "rename-item", args: { state: "as-found", item: { kind: "enclosure", id }, name: "B1x" } }),
    ).toEqual({ ok: true });
    await run();
    expect(kept.get(workPicture("j1"))).toContain('"B1x"');
    expect(kept.get("r1")).toBe(before);
    const now = documentStore.get();
    markSaved({
      serial: lastSerial(now),
      file: { text: "", project: now.project },
      fileName: "a.loadside",
      target: now.target,
    });
    await run();
    expect(kept.get("r1")).toContain('"B1x"');
    // While somebody edits, a picture waits longer.
    expect((waits[1] ?? 0) > (waits[0] ?? 0)).toBe(true);
    stop();
  });

  test("of nothing that is empty, of no copy that belongs to no file, and of nothing once stopped", async () => {
    const { kept, run, stop } = start();
    openDocument({ ...newDocument(), target: target("r1") });
    await run();
    openDocument({ project });
    await run();
    openDocument({ project, text, fileName: "a.loadside", target: target(undefined) });
    await run();
    stop();
    openDocument({ project, text, fileName: "a.loadside", target: target("r2") });
    await run();
    expect([...kept.keys()]).toEqual([]);
  });

  test("those of files and work that are no longer listed go; where nobody can tell, they stay", async () => {
    const { kept, store } = inMemory();
    openDocument({ project });
    const good = writePicture(pictureOf(documentStore.get()) as DrawingPicture);
    for (const id of ["r1", "r2", workPicture("j1"), workPicture("j2")]) kept.set(id, good);
    kept.set("r3", "junk");
    await refreshPictures(store, { files: undefined, journals: undefined });
    expect([...kept.keys()]).toEqual(["r1", "r2", workPicture("j1"), workPicture("j2")]);
    await refreshPictures(store, { files: ["r2"], journals: ["j1"] });
    expect([...kept.keys()]).toEqual(["r2", workPicture("j1")]);
    expect([...picturesStore.get().of.keys()]).toEqual(["r2", workPicture("j1")]);
  });

  test("a host that keeps nothing shows none", async () => {
    const { store } = inMemory();
    const broken: PictureStore = { ...store, all: () => Promise.reject(new Error("no")) };
    await refreshPictures(broken, { files: [], journals: [] });
    expect(picturesStore.get().of.size).toBe(0);
  });
});
