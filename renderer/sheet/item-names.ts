import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import type { DeviceDrawing, SpliceDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import { parseEnd } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { circuitNames } from "../../shared-model/queries/circuit-names.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { saysWhere } from "../../shared-model/queries/far-side.ts";
import { circuitWords } from "../state/answer-words.ts";
import { lengthHere } from "../state/length-here.ts";
import { endWords } from "./end-words.ts";
import type { ItemNews } from "./item-news.ts";
import { wording } from "./words.ts";

/** What things of a box are called in full, for people who hear the sheet. */
export interface Naming {
  readonly installation: Installation;
  readonly enclosure: Enclosure;
  readonly news: ItemNews;
}

const joined = (...parts: readonly (string | undefined)[]): string => parts.filter(Boolean).join(", ");

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** "box B1", "panel P". */
const homeOf = ({ kind, name }: Enclosure): string => `${kind === "panel" ? "panel" : "box"} ${name}`;

/** "GFCI receptacle R1, box B1, circuit Q14, 1 danger". */
export function deviceName(
  { installation, enclosure, news }: Naming,
  { device, name, caption }: Pick<DeviceDrawing, "device" | "name" | "caption">,
): string {
  const circuit = circuitWords(circuitNames(installation, enclosure.id));
  const own = caption === "" || caption.toLowerCase() === name.toLowerCase() ? name : `${capital(caption)} ${name}`;
  return joined(own, homeOf(enclosure), circuit, news.get(`device ${device}`));
}

/** "Splice HL, 3 × 12, large, hot, joins C1 BK, C2 BK, a BK, 1 caution". */
export function spliceName(
  { installation, enclosure, news }: Naming,
  { splice, name, caption, rows }: Pick<SpliceDrawing, "splice" | "name" | "caption" | "rows">,
  role: string | undefined,
): string {
  const members = rows.map(({ end }) => nameOfEnd(installation, enclosure, end));
  const joins = members.length === 0 ? wording.joinsNothing : wording.joins(members.join(", "));
  return joined(wording.splice(name), caption, role, joins, news.get(`splice ${splice}`));
}

/** "Cable C1, 12/2, 55 ft, from P to B1, 1 advice". */
export function cableName(
  installation: Installation,
  cable: Cable | undefined,
  called: string,
  news: string | undefined,
): string {
  if (cable === undefined) return joined(wording.cable(called), news);
  const { name, item, lengthFt, sides } = cable;
  const end = (side: Cable["sides"]["a"]): string =>
    "enclosure" in side ? (installation.enclosures[side.enclosure]?.name ?? "") : outside(side.outside);
  const size = findCableItem(item)?.sizeText ?? item;
  const length = lengthFt === undefined ? undefined : lengthHere(lengthFt, "ft");
  return joined(wording.cable2(name), size, length, wording.fromTo(end(sides.a), end(sides.b)), news);
}

const outside = (words: string): string =>
  saysWhere(words) ? wording.notDrawn(words.replace(/^to /, "")) : wording.notDrawn2;

/** "12/2 C3 black end at B1, on R1 LINE H, 1 danger". What is found of a jumper is said at both its ends. */
export function endName({ installation, enclosure, news }: Naming, end: EndKey): string {
  const parsed = parseEnd(end);
  const ofJumper = parsed?.of === "jumper" ? news.get(`jumper ${parsed.jumper}`) : undefined;
  return joined(endWords(installation, enclosure, end), ofJumper, news.get(`end ${end}`));
}

/** "Box B1, laundry, opened, 2 devices, 1 danger". @param about What the checks say, in words. */
export const boxName = (enclosure: Enclosure, words: string, about: string): string =>
  joined(words, counted(Object.keys(enclosure.devices).length, "device"), about);

const counted = (count: number, word: string): string =>
  count === 0 ? wording.noS(word) : `${count} ${word}${count === 1 ? "" : "s"}`;
