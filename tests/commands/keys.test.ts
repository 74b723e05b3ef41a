/** Keys of the catalogue, and those that a person has chosen. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { whyNotChordWords } from "../../shared-model/commands/catalog/key-words.ts";
import {
  type ChosenKeys,
  chordsOf,
  entryOfChord,
  findKeyEntry,
  isChord,
  isSingleKey,
  type KeyEntry,
  type KeyId,
  keyEntries,
  soundKeys,
  TEXT_CHORDS,
  whyNotChord,
  withChord,
} from "../../shared-model/commands/catalog/keys.ts";

const entry = (id: KeyId): KeyEntry => {
  const found = findKeyEntry(id);
  if (found === undefined) throw new Error(`No keys for ${id}.`);
  return found;
};

const allChords = (chosen: ChosenKeys) => keyEntries.flatMap((one) => chordsOf(one, chosen));

describe("the catalogue", () => {
  test("gives no keys twice, and writes all of them as chords", () => {
    const all = allChords({});
    expect(new Set(all).size).toBe(all.length);
    expect(all.filter((chord) => !isChord(chord))).toEqual([]);
    expect(new Set(keyEntries.map(({ id }) => id)).size).toBe(keyEntries.length);
  });

  /** WCAG 2.1.4: a single character works only where its component has the focus. */
  test("has single keys on the sheet only, and text fields lose none of theirs", () => {
    for (const { id, where, chords, fixed } of keyEntries)
      for (const chord of chords) {
        if (where === "window") expect([id, isSingleKey(chord)]).toEqual([id, false]);
        // The window leaves undo and redo to a field that is being written in.
        if (TEXT_CHORDS.has(chord)) expect([id, fixed === true || id === "undo" || id === "redo"]).toEqual([id, true]);
      }
  });

  test("a key means one thing in one place", () => {
    expect(entryOfChord("Mod+S", {}, "window")?.id).toBe("save-document");
    expect(entryOfChord("Mod+Y", {})?.id).toBe("redo");
    expect(entryOfChord("F1", {})?.id).toBe("find-anything");
    expect(entryOfChord("F", {}, "window")).toBeUndefined();
    expect(entryOfChord("F", {}, "sheet")?.id).toBe("follow");
    expect(entryOfChord("Mod+Shift+P", {})).toBeUndefined();
  });
});

describe("chosen keys", () => {
  test("take the place of all keys of their entry", () => {
    const chosen = withChord({}, entry("redo"), "F4");
    expect([chordsOf(entry("redo"), chosen), entryOfChord("Mod+Y", chosen)]).toEqual([["F4"], undefined]);
    expect(entryOfChord("F4", chosen)?.id).toBe("redo");
  });

  test("are taken from whoever had them, which keeps its second ones", () => {
    const chosen = withChord({}, entry("energise"), "Mod+S");
    expect(chosen).toEqual({ energise: "Mod+S", "save-document": null });
    expect(entryOfChord("Mod+S", chosen)?.id).toBe("energise");
    expect(chordsOf(entry("redo"), withChord({}, entry("duplicate"), "Mod+Y"))).toEqual(["Mod+Shift+Z"]);
  });

  test("are put back one by one, and taken back from where they went", () => {
    const swapped = withChord(withChord({}, entry("energise"), "F8"), entry("other-state"), "F9");
    expect(swapped).toEqual({ energise: "F8", "other-state": "F9" });
    const back = withChord(swapped, entry("energise"), "F9");
    expect(back).toEqual({ "other-state": null });
    expect(withChord(back, entry("other-state"), "F8")).toEqual({});
    expect(withChord({}, entry("energise"), null)).toEqual({ energise: null });
  });

  test.each<[KeyId, string, RegExp | undefined]>([
    ["energise", "Mod+E", undefined],
    ["energise", "F2", undefined],
    ["energise", "E", /single key/],
    ["energise", "Delete", /single key/],
    ["follow", "G", undefined],
    ["energise", "Mod+C", /Text fields/],
    ["energise", "Mod+Z", /Text fields/],
    ["undo", "Mod+Z", undefined],
    ["energise", "Mod+W", /system keeps/],
    ["energise", "F5", /system keeps/],
    ["energise", "Alt+E", /menus/],
    ["energise", "Alt+F4", undefined],
    ["energise", "Escape", /move the focus/],
    ["follow", "ArrowLeft", /move the focus/],
    ["follow", "Enter", /move the focus/],
    ["energise", "Mod+é", /move the focus/],
    ["copy", "F3", /answers these keys itself/],
  ])("%s and %s", (id, chord, why) => {
    const no = whyNotChord(entry(id), chord);
    if (why === undefined) expect(no).toBeUndefined();
    else expect(no && whyNotChordWords[no]).toMatch(why);
  });

  test("whatever is chosen in whatever order: no keys twice, and reset leads back to the catalogue", () => {
    const free = keyEntries.filter(({ fixed }) => !fixed);
    const pool = [...allChords({}), "Mod+E", "F3", "G", "Mod+Shift+E"];
    const step = fc.tuple(fc.constantFrom(...free), fc.option(fc.constantFrom(...pool)));
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        let chosen: ChosenKeys = {};
        for (const [one, chord] of steps)
          if (chord === null || whyNotChord(one, chord) === undefined) chosen = withChord(chosen, one, chord);
        const all = allChords(chosen);
        expect(new Set(all).size).toBe(all.length);
        // What is kept between runs means the same.
        const kept = soundKeys(JSON.parse(JSON.stringify(chosen)));
        for (const one of free) expect(chordsOf(one, kept)[0]).toBe(chordsOf(one, chosen)[0]);
        for (const one of free) chosen = withChord(chosen, one, one.chords[0] ?? null);
        for (const one of free) expect(chordsOf(one, chosen)[0]).toBe(one.chords[0]);
      }),
    );
  });
});

test.each<[string, unknown]>([
  ["nothing", undefined],
  ["a text", "Mod+E"],
  ["a list", ["Mod+E"]],
  ["what does not exist", { nothing: "Mod+E" }],
  ["what may not be chosen", { energise: "Mod+C", copy: "F3", follow: "Enter", undo: 7, redo: {} }],
  ["keys of every object", JSON.parse('{"__proto__": {"energise": "F3"}, "constructor": "F3"}')],
])("of chosen keys that come from outside, %s is left out", (_, kept) => expect(soundKeys(kept)).toEqual({}));

test("keys from outside that two entries claim go to one of them", () => {
  const all = allChords(soundKeys({ energise: "F8", "start-page": "F8" }));
  expect(new Set(all).size).toBe(all.length);
});
