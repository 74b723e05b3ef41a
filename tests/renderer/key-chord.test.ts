import { expect, test } from "vitest";
import { chordOf, type KeyPress } from "../../renderer/platform/key-chord.ts";

const press = (key: string, held: string = ""): KeyPress => ({
  key,
  ctrlKey: held.includes("c"),
  metaKey: held.includes("m"),
  altKey: held.includes("a"),
  shiftKey: held.includes("s"),
});

/** Names of keys by UI Events, "key values". */
test.each<[string, string, string | undefined, string | undefined]>([
  // key, held: c control, m meta, a alt, s shift; elsewhere; on a Mac
  ["s", "c", "Mod+S", undefined],
  ["s", "m", undefined, "Mod+S"],
  ["S", "cs", "Mod+Shift+S", undefined],
  ["f", "", "F", "F"],
  ["F", "", "F", "F"],
  ["F", "s", "Shift+F", "Shift+F"],
  ["+", "s", "+", "+"],
  ["=", "", "=", "="],
  ["F6", "s", "Shift+F6", "Shift+F6"],
  ["Delete", "", "Delete", "Delete"],
  ["€", "ca", undefined, undefined],
  ["e", "a", "Alt+E", "Alt+E"],
  ["Control", "c", undefined, undefined],
  ["Dead", "", undefined, undefined],
  ["Process", "", undefined, undefined],
])("%s with %s", (key, held, elsewhere, mac) => {
  expect([chordOf(press(key, held), false), chordOf(press(key, held), true)]).toEqual([elsewhere, mac]);
});
