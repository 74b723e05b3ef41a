import { expect, test } from "vitest";
import type { Room, RoomKind } from "../../shared-model/model/room.ts";
import { placeWords } from "../../shared-model/rules/place-words.ts";

const room = (name: string): Room => ({ id: "r" as never, name, kinds: [], order: 0 });

test.each<[name: string, places: readonly RoomKind[], kinds: readonly string[]]>([
  ["Laundry", ["basement-unfinished", "laundry"], ["unfinished basement"]],
  ["Laundry", ["basement-unfinished", "sink-zone", "laundry"], ["unfinished basement", "sink zone"]],
  ["Basement, unfinished", ["basement-unfinished"], []],
  ["Unfinished basement", ["basement-unfinished", "laundry"], ["laundry"]],
  ["Basement", ["basement-unfinished"], ["unfinished"]],
  ["Finished basement", ["basement-unfinished"], ["unfinished"]],
  ["Kitchen", ["kitchen-counter"], ["counter"]],
  ["Kitchen counter, north", ["kitchen-counter"], []],
  ["Porch", ["outdoor"], ["outdoors"]],
  ["GARAGE", ["garage"], []],
  ["Garáž", ["garage"], ["garage"]],
  ["", ["garage"], ["garage"]],
])("%s, %j", (name, places, kinds) => {
  expect(placeWords(room(name), places)).toEqual({ name, kinds });
});

test("without a room the kinds tell all", () => {
  expect(placeWords(undefined, ["basement-unfinished", "kitchen-counter"])).toEqual({
    kinds: ["unfinished basement", "kitchen counter"],
  });
});
