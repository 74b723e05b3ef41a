import type { DeviceFamily } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue } from "../lib/catalogue.ts";
import type { Installation, Project } from "../model/project.ts";
import type { Room } from "../model/room.ts";
import { loadsOn } from "../solver/circuit/loads-on.ts";
import type { OutletStanding } from "../solver/section.ts";

/** What people write in a directory besides English, which is read in every language: words with spaces between. */
const also = catalogue({
  alarm: "",
  appliance: "",
  emptyWords: "",
  fan: "",
  luminaire: "",
  receptacle: "",
});

const LIGHT = ["light", "lighting"];
const RECEPTACLE = ["receptacle", "outlet", "plug", also.receptacle].join(" ");

/** Words for a kind of outlet that a directory uses in place of rooms. */
const OF_FAMILY: Readonly<Partial<Record<DeviceFamily, string>>> = {
  luminaire: [...LIGHT, "lamp", "luminaire", also.luminaire].join(" "),
  receptacle: RECEPTACLE,
  "ground-fault-receptacle": RECEPTACLE,
  combination: RECEPTACLE,
  fan: ["fan", ...LIGHT, also.fan].join(" "),
  alarm: ["smoke", "alarm", "detector", also.alarm].join(" "),
  appliance: ["appliance", also.appliance].join(" "),
};

const IN_BETWEEN = ["a", "an", "and", "at", "by", "for", "from", "in", "near", "of", "on", "or", "the", "to", "with"];
const EMPTY_WORDS: ReadonlySet<string> = new Set([...IN_BETWEEN, ...also.emptyWords.split(" ")]);

/** "Bedrooms 2 and 3" gives "bedroom", "2", "3". */
const wordsOf = (text: string): readonly string[] =>
  (text.toLowerCase().match(/\p{L}+|\d+/gu) ?? []).filter((word) => !EMPTY_WORDS.has(word)).map(singular);

const singular = (word: string): string => (word.length > 3 && /[^s]s$/.test(word) ? word.slice(0, -1) : word);

const roomWords = new WeakMap<Room, readonly string[]>();

/** Every line is held against every room of the house. */
function wordsOfRoom(room: Room): readonly string[] {
  let words = roomWords.get(room);
  if (words === undefined) {
    words = wordsOf(room.name);
    roomWords.set(room, words);
  }
  return words;
}

const isNumber = (word: string): boolean => /^\d/.test(word);

/** "hall" is said by "hallway" and the other way round. */
const SHORTEST_STEM = 4;
const isSame = (one: string, other: string): boolean =>
  one === other ||
  (Math.min(one.length, other.length) >= SHORTEST_STEM && (one.startsWith(other) || other.startsWith(one)));

/** One word of a phrase is in a text; of a phrase with a number, the number too. */
function isNamed(phrase: string, text: readonly string[]): boolean {
  const words = wordsOf(phrase);
  const isIn = (word: string): boolean => text.some((one) => isSame(word, one));
  const numbers = words.filter(isNumber);
  return words.some((word) => !isNumber(word) && isIn(word)) && numbers.every(isIn);
}

/** What the directory of a panel says of a circuit, held against what the wiring feeds. */
export interface DirectoryGap {
  /** Places that it feeds and the line does not name, as a person calls them. */
  readonly unnamed: readonly string[];
  /** Rooms that the line names and the circuit does not feed. */
  readonly foreign: readonly string[];
}

export function directoryGap(
  { rooms }: Pick<Project, "rooms">,
  { loads }: Installation,
  line: string,
  fed: readonly OutletStanding[],
): DirectoryGap {
  const text = wordsOf(line);
  const phrasesOf = (standing: OutletStanding): readonly string[] => {
    const { outlet, enclosure } = standing;
    const room = enclosure.roomId === undefined ? undefined : rooms[enclosure.roomId];
    const plugged = (loadsOn(loads).get(outlet.device.id) ?? []).map(({ name }) => name);
    const kind = OF_FAMILY[getDeviceType(outlet.device.type).family]?.split(" ") ?? [];
    // "Bedroom" does not tell which of two.
    const isNumbered = room !== undefined && wordsOfRoom(room).some(isNumber);
    const kinds = isNumbered ? [] : (room?.kinds ?? []).map((one) => one.replaceAll("-", " "));
    return [room?.name ?? "", enclosure.note ?? "", ...kinds, ...plugged, ...kind, outlet.device.name, enclosure.name];
  };
  const said = fed.map((standing) => ({ standing, phrases: phrasesOf(standing) }));
  const unnamed = said.filter(({ phrases }) => !phrases.some((phrase) => isNamed(phrase, text)));
  const here = new Set(fed.map(({ enclosure }) => enclosure.roomId));
  const isIn = (word: string, all: readonly string[]): boolean => all.some((one) => isSame(word, one));
  const isForeign = (room: Room): boolean => {
    const words = wordsOfRoom(room);
    if (here.has(room.id) || words.length === 0 || !words.every((word) => isIn(word, text))) return false;
    const wordsHere = said.flatMap(({ phrases }) => phrases.flatMap(wordsOf));
    return !words.every((word) => isIn(word, wordsHere));
  };
  return {
    unnamed: [...new Set(unnamed.map(({ standing }) => placeOf(rooms, standing)))],
    foreign: Object.values(rooms)
      .filter(isForeign)
      .map(({ name }) => name)
      .sort(),
  };
}

const placeOf = (rooms: Project["rooms"], { enclosure }: OutletStanding): string => {
  const room = enclosure.roomId === undefined ? undefined : rooms[enclosure.roomId];
  return room?.name ?? enclosure.note ?? enclosure.name;
};

/**
 * What the wiring feeds, as a line of the directory: places in the order of the outlets, each with what is plugged in
 * there, or with what is there where it is one kind of thing.
 */
export function directoryLine(
  { rooms }: Pick<Project, "rooms">,
  { loads }: Installation,
  fed: readonly OutletStanding[],
): string {
  const places = new Map<string, { readonly kinds: Set<string>; readonly plugged: string[] }>();
  for (const standing of fed) {
    const { device } = standing.outlet;
    const place = placeOf(rooms, standing);
    const known = places.get(place) ?? { kinds: new Set<string>(), plugged: [] };
    known.kinds.add(KIND_WORDS[getDeviceType(device.type).family] ?? "");
    known.plugged.push(...(loadsOn(loads).get(device.id) ?? []).map(({ name }) => name));
    places.set(place, known);
  }
  return [...places]
    .map(([place, { kinds, plugged }]) => {
      const [kind = "", ...others] = kinds;
      const words = plugged.length > 0 ? [...new Set(plugged)].join(", ") : others.length === 0 ? kind : "";
      return words === "" || isNamed(words, wordsOf(place)) ? place : `${place} (${words})`;
    })
    .join("; ");
}

const kinds = catalogue({
  alarm: "smoke alarm",
  fan: "fan",
  lights: "lights",
  receptacles: "receptacles",
});

const KIND_WORDS: Readonly<Partial<Record<DeviceFamily, string>>> = {
  luminaire: kinds.lights,
  alarm: kinds.alarm,
  fan: kinds.fan,
  receptacle: kinds.receptacles,
  "ground-fault-receptacle": kinds.receptacles,
  combination: kinds.receptacles,
};
