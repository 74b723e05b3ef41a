import type { Room, RoomKind } from "../model/room.ts";
import { listed } from "./rule-parts.ts";

/** What the field calls the kinds whose own words would not do in a sentence. */
const WORDS: Readonly<Partial<Record<RoomKind, string>>> = {
  "kitchen-other": "kitchen",
  outdoor: "outdoors",
  "basement-unfinished": "unfinished basement",
  "basement-finished": "finished basement",
  "damp-wet-indoor": "damp or wet indoors",
  "tub-shower-zone": "tub or shower zone",
  "food-prep-with-sink": "food preparation with sink",
};

/**
 * Where an outlet is, as far as it is on the list: the room by its name, and those kinds of place that the name does not
 * already say. Without a room the kinds alone.
 */
export function placeWords(
  room: Room | undefined,
  places: readonly RoomKind[],
): { readonly name?: string; readonly kinds: readonly string[] } {
  const said = new Set(wordsIn(room?.name ?? ""));
  const kinds = places.map((place) => WORDS[place] ?? place.replaceAll("-", " "));
  const more = kinds
    .filter((kind) => wordsIn(kind).some((word) => !said.has(word)))
    .map((kind) => withoutNoun(kind, said));
  return room === undefined ? { kinds } : { name: room.name, kinds: more };
}

/** The same in one: "Laundry: unfinished basement", "Porch: outdoors", "Basement, unfinished". */
export function whereWords(room: Room | undefined, places: readonly RoomKind[]): string {
  const { name, kinds } = placeWords(room, places);
  if (name === undefined) return listed(kinds);
  return kinds.length === 0 ? name : `${name}: ${listed(kinds)}`;
}

/** "unfinished" in a room called "Basement", "counter" in one called "Kitchen". */
function withoutNoun(kind: string, said: ReadonlySet<string>): string {
  const words = kind.split(" ");
  const rest = words.filter((word) => !(NOUNS.has(word) && said.has(word)));
  return rest.length === 0 ? kind : rest.join(" ");
}

const NOUNS: ReadonlySet<string> = new Set(["basement", "kitchen"]);

const wordsIn = (text: string): readonly string[] => text.toLowerCase().match(/\p{L}+/gu) ?? [];
