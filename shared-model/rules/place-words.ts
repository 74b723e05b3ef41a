import { catalogue } from "../lib/catalogue.ts";
import type { Room, RoomKind } from "../model/room.ts";
import { listed } from "./rule-parts.ts";

/** What the field calls the kinds of place in a sentence. */
const WORDS: Readonly<Record<RoomKind, string>> = catalogue({
  bathroom: "bathroom",
  "kitchen-counter": "kitchen counter",
  "kitchen-other": "kitchen",
  "sink-zone": "sink zone",
  laundry: "laundry",
  garage: "garage",
  "accessory-building": "accessory building",
  outdoor: "outdoors",
  "crawl-space": "crawl space",
  "basement-unfinished": "unfinished basement",
  "basement-finished": "finished basement",
  boathouse: "boathouse",
  "tub-shower-zone": "tub or shower zone",
  "damp-wet-indoor": "damp or wet indoors",
  "food-prep-with-sink": "food preparation with sink",
  bedroom: "bedroom",
  living: "living",
  dining: "dining",
  family: "family",
  den: "den",
  library: "library",
  sunroom: "sunroom",
  recreation: "recreation",
  closet: "closet",
  hallway: "hallway",
  attic: "attic",
  utility: "utility",
  stair: "stair",
});

/** "kitchen counter", "unfinished basement". */
export const placeOfKind = (kind: RoomKind): string => WORDS[kind];

const wording = catalogue({
  /** Nouns of the kinds that go without saying in a room that is called so, with spaces between. */
  nouns: "basement kitchen",
});

/**
 * Where an outlet is, as far as it is on the list: the room by its name, and those kinds of place that the name does not
 * already say. Without a room the kinds alone.
 */
export function placeWords(
  room: Room | undefined,
  places: readonly RoomKind[],
): { readonly name?: string; readonly kinds: readonly string[] } {
  const said = new Set(wordsIn(room?.name ?? ""));
  const kinds = places.map((place) => WORDS[place]);
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

const NOUNS: ReadonlySet<string> = new Set(wording.nouns.split(" "));

const wordsIn = (text: string): readonly string[] => text.toLowerCase().match(/\p{L}+/gu) ?? [];
