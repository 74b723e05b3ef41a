import type { LostText } from "../../answers/paper-messages.ts";
import type { Project } from "../../model/project.ts";
import type { Page } from "../display-list.ts";
import { legible, losesLetters, printable } from "../page/measure.ts";
import { textsOf } from "../text-boxes.ts";
import { DRAWING, FIELD_WORDS, LOST, PANEL, TABLE_WORDS, type Thing } from "./lost-letters-words.ts";

/** Where in a document a walk is. */
interface Spot {
  readonly thing: Thing;
  /** What it is called, and what it stands in: "R1 in B1". */
  readonly names: readonly string[];
}

/**
 * Texts of a document that pages cannot show as they were written, since the face that goes with the program lacks
 * letters of them, each with the first page that it stands on. Texts that no page shows are left out.
 * @param pages In the order in which they are printed.
 */
export function lostLetters(
  project: Project,
  pages: readonly Page[],
  fileName: string | undefined,
): readonly LostText[] {
  const texts = [
    ...lostIn(project, "", { thing: DRAWING, names: [] }),
    ...(fileName !== undefined && losesLetters(fileName) ? [{ text: fileName, where: LOST.fileName }] : []),
  ];
  if (texts.length === 0) return [];
  const unique = [...new Map(texts.map((one) => [`${one.where}\n${one.text}`, one])).values()];
  const shown = pages.map(({ marks }) =>
    closed(
      textsOf(marks)
        .map(({ written }) => written)
        .join(""),
    ),
  );
  return unique.flatMap((one) => {
    const page = shown.findIndex((words) => stands(one.text, words));
    return page < 0 ? [] : [{ ...one, page: page + 1 }];
  });
}

const closed = (words: string): string => words.replace(/\s+/gu, "");

/** A text may be broken between lines, and cut off where there is no room: a word of it with a lost letter is enough. */
function stands(text: string, page: string): boolean {
  const whole = legible(text);
  if (page.includes(closed(whole))) return true;
  return whole.split(/\s+/u).some((word) => losesLetters(word) && page.includes(word));
}

type Lost = Omit<LostText, "page">;

function lostIn(value: unknown, key: string, spot: Spot): readonly Lost[] {
  if (typeof value === "string") return losesLetters(value) ? [{ text: value, where: whereOf(key, spot) }] : [];
  if (Array.isArray(value)) return value.flatMap((each: unknown) => lostIn(each, key, spot));
  if (typeof value !== "object" || value === null) return [];
  const own = key === "" ? spot : inside(value, spot);
  return Object.entries(value).flatMap(([field, each]): readonly Lost[] => {
    // What a picture is made of are no words.
    if (field === "base64") return [];
    const thing = TABLE_WORDS[field];
    if (thing === undefined) return lostIn(each, field, own);
    return Object.values(isTable(each) ? each : {}).flatMap((one) =>
      lostIn(one, field, { thing: isPanel(one) ? PANEL : thing, names: own.names }),
    );
  });
}

const isTable = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

const isPanel = (one: unknown): boolean => isTable(one) && one.kind === "panel";

/** A thing with a name is what its fields are told of. */
const inside = (value: object, spot: Spot): Spot =>
  "name" in value && typeof value.name === "string" ? { ...spot, names: [value.name, ...spot.names] } : spot;

/** "name of a box", "note of box B1", "name of a device in B1". */
function whereOf(key: string, { thing, names }: Spot): string {
  const [own, ...around] = names;
  const isNamed = own !== undefined && key !== "name";
  const of = isNamed ? LOST.called(thing.named, printable(own)) : thing.one;
  const what = LOST.fieldOf(FIELD_WORDS[key] ?? LOST.someWords, of);
  return around.reduce((inner, name) => LOST.inside(inner, printable(name)), what);
}
