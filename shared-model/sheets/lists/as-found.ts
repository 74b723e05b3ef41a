import type { SheetInput } from "../../answers/sheet-input.ts";
import { findCableItem } from "../../catalog/cable-items.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { Attachment, Reading } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { membersOf } from "../../queries/landings.ts";
import { TEST_WORDS } from "../../queries/record-words.ts";
import type { Page } from "../display-list.ts";
import { type Flow, TYPE } from "../page/flow.ts";
import { openListSheet } from "../page/list-sheet.ts";
import { dayWords } from "../page/page-words.ts";
import type { TableRow } from "../page/table-blocks.ts";
import { conductorCount, endLines, isReadAt, known, knownAll, pointWords, sideWords } from "./as-found-parts.ts";
import {
  AS_FOUND,
  CABLES,
  CLAMP_WORDS,
  COMPUTED,
  connectorWords,
  HOW,
  instrumentWords,
  NO_PHOTOS,
  NO_READINGS,
  NOTES,
  PHOTOS,
  READINGS,
  RECORDED,
  TABS_OFF,
} from "./as-found-words.ts";
import { volumeWords } from "./box-fill-words.ts";
import { headed, isShown, placeOf, sayNothing, shownEnclosures, writeCautions } from "./list-parts.ts";
import { EVIDENCE_LEGEND, NOTHING_DRAWN } from "./list-words.ts";

/** @returns Why there is nothing to record; undefined where there is. */
export const nothingFound = (input: SheetInput): string | undefined =>
  shownEnclosures(input, input.project.asFound).length > 0 ? undefined : NOTHING_DRAWN;

/** Box by box every end with its place, role and how it is known; then cables, readings and photos. */
export function asFoundPages(input: SheetInput): readonly Page[] {
  const asked: SheetInput = { ...input, state: "as-found" };
  const { flow, pages } = openListSheet(asked, { kind: "as-found", title: AS_FOUND });
  const { asFound, notes } = input.project;
  const enclosures = shownEnclosures(input, asFound);
  const nothing = nothingFound(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  flow.paragraph(HOW, { size: TYPE.small });
  flow.paragraph(EVIDENCE_LEGEND, { size: TYPE.small });
  for (const enclosure of enclosures) writeEnclosure(flow, input, enclosure);
  writeCables(flow, input);
  writeReadings(flow, input, enclosures);
  writePhotos(flow, input);
  if (input.box === undefined && notes.trim() !== "") {
    flow.heading(NOTES);
    flow.paragraph(notes);
  }
  flow.keepTogether((kept) => {
    writeCautions(kept, ["WRK2", "WRK3"]);
    kept.signOff(RECORDED);
  });
  return pages();
}

function writeEnclosure(flow: Flow, input: SheetInput, enclosure: Enclosure): void {
  const installation = input.project.asFound;
  headed(flow, enclosure.name, placeOf(input, enclosure));
  for (const words of factsOf(input, enclosure)) flow.paragraph(words, { size: TYPE.small, withNext: true });
  const ends = endLines(input, installation, enclosure);
  flow.table({
    columns: [
      { head: "end", width: 32, weight: 700 },
      { head: "AWG", width: 12 },
      { head: "place", width: 42 },
      { head: "known", width: 14, align: "middle" },
      { head: "role", width: 32 },
      { head: "more" },
    ],
    rows: ends.map(({ name, awg, place, placeKnown, role, more }) => ({
      cells: [name, awg, place, placeKnown, role, more.join(", ")],
    })),
  });
}

/** Volume, clamps, devices and joints, each with its source. */
function factsOf({ fill, project }: SheetInput, enclosure: Enclosure): readonly string[] {
  const box =
    enclosure.kind === "box"
      ? [
          `${volumeWords(enclosure, fill.asFound.find((row) => row.enclosure === enclosure.id)?.ledger.available)} ${sentence(CLAMP_WORDS[enclosure.internalClamps])}${known(enclosure, "internalClamps")}.`,
        ]
      : [];
  const devices = inOrder(enclosure.devices).map((device) => {
    const tab = device.hotTab === "removed" || device.neutralTab === "removed" ? `, ${TABS_OFF}` : "";
    const facts = knownAll(device);
    return `${nameAndCaption(device)}${tab}${facts === "" ? "" : ` (${facts})`}`;
  });
  const splices = inOrder(enclosure.splices).map(
    (splice) =>
      `${splice.name} ${membersOf(enclosure, splice.id).length} ends, ${connectorWords(splice.connector).toLowerCase()}${known(splice, "connector")}`,
  );
  const photos = inOrder<Attachment>(project.attachments).filter((one) => one.enclosure === enclosure.id);
  return [
    ...box,
    ...(devices.length === 0 ? [] : [`Devices: ${devices.join("; ")}.`]),
    ...(splices.length === 0 ? [] : [`Joints: ${splices.join("; ")}.`]),
    ...(photos.length === 0 ? [] : [`${PHOTOS}: ${photos.map(({ name }) => name).join(", ")}.`]),
  ];
}

/** "R1 duplex receptacle"; a bar that is called after itself is told once. */
function nameAndCaption({ name, type }: Device): string {
  const { caption } = getDeviceType(type);
  return name.toLowerCase() === caption.toLowerCase() ? name : `${name} ${caption}`;
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function writeCables(flow: Flow, input: SheetInput): void {
  const { asFound } = input.project;
  const cables = inOrder(asFound.cables).filter(
    ({ sides: { a, b } }) =>
      input.box === undefined ||
      ("enclosure" in a && isShown(input, a.enclosure)) ||
      ("enclosure" in b && isShown(input, b.enclosure)),
  );
  if (cables.length === 0) return;
  flow.heading(CABLES);
  flow.table({
    columns: [
      { head: "cable", width: 22, weight: 700 },
      { head: "kind" },
      { head: "from, to", width: 44 },
      { head: "length", width: 22, align: "end", tabular: true },
      { head: "", width: 3 },
      { head: "insulation", width: 22 },
      { head: "notes" },
    ],
    rows: cables.map((cable) => {
      const { name, item, sides, lengthFt, insulationC, notes } = cable;
      return {
        cells: [
          name,
          `${findCableItem(item)?.title ?? item}, ${conductorCount(cable)} wires${known(cable, "item")}`,
          `${sideWords(asFound, sides.a)} to ${sideWords(asFound, sides.b)}`,
          lengthFt === undefined ? "" : `${lengthFt} ft${known(cable, "lengthFt")}`,
          "",
          insulationC === undefined ? "" : `${insulationC} °C${known(cable, "insulationC")}`,
          notes ?? "",
        ],
      };
    }),
  });
}

/** Readings of as found: those that say so, and those from before the work. */
export function readingsOf(input: SheetInput, enclosures: readonly Enclosure[]): readonly Reading[] {
  const { project, box } = input;
  return inOrder<Reading>(project.readings)
    .filter(({ state, record }) => state !== "proposed" && record?.stage !== "after")
    .filter((one) => box === undefined || enclosures.some((each) => isReadAt(project.asFound, each, one)));
}

function writeReadings(flow: Flow, input: SheetInput, enclosures: readonly Enclosure[]): void {
  const readings = readingsOf(input, enclosures);
  flow.heading(READINGS);
  if (readings.length === 0) {
    flow.paragraph(NO_READINGS);
    return;
  }
  flow.table({
    columns: [
      { head: "at", share: 1, weight: 700 },
      { head: "what", share: 1 },
      { head: "value", width: 32, weight: 600 },
      { head: "instrument", width: 34 },
      { head: "date", width: 24 },
      { head: "by", width: 26 },
    ],
    rows: readings.map((reading): TableRow => {
      const { points, record, value, unit, takenAt, by, remark, computed } = reading;
      const at = record?.item ?? points.map((point) => pointWords(input.project.asFound, point)).join(", ");
      return {
        cells: [
          at,
          { text: record === undefined ? "" : TEST_WORDS[record.test], note: remark ?? "" },
          { text: unit === undefined ? value : `${value} ${unit}`, ...(computed && { note: COMPUTED }) },
          instrumentWords(reading),
          takenAt === undefined ? "" : dayWords(takenAt),
          by ?? "",
        ],
      };
    }),
  });
}

function writePhotos(flow: Flow, input: SheetInput): void {
  const photos = photosOf(input);
  flow.heading(PHOTOS);
  if (photos.length === 0) {
    flow.paragraph(NO_PHOTOS);
    return;
  }
  flow.table({
    columns: [
      { head: "photo", width: 44, weight: 700 },
      { head: "of", width: 26 },
      { head: "shows" },
      { head: "date", width: 24 },
      { head: "by", width: 30 },
    ],
    rows: photos.map(({ name, enclosure, caption, takenAt, by }) => ({
      cells: [
        name,
        enclosure === undefined ? "" : (input.project.asFound.enclosures[enclosure]?.name ?? ""),
        caption ?? "",
        takenAt === undefined ? "" : dayWords(takenAt),
        by ?? "",
      ],
    })),
  });
}

export const photosOf = (input: SheetInput): readonly Attachment[] =>
  inOrder<Attachment>(input.project.attachments).filter(({ enclosure }) => isShown(input, enclosure));
