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
import type { Flow } from "../page/flow.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import { dayWords } from "../page/page-words.ts";
import type { TableRow } from "../page/table-blocks.ts";
import { conductorCount, endLines, isReadAt, known, knownAll, pointWords, sideWords } from "./as-found-parts.ts";
import { AS_FOUND, AS_FOUND_HEADS, CLAMP_WORDS, connectorWords, instrumentWords, RECORDED } from "./as-found-words.ts";
import { volumeWords } from "./box-fill-words.ts";
import { headed, isShown, placeOf, sayNothing, shownEnclosures, writeCautions } from "./list-parts.ts";
import { LIST } from "./list-words.ts";

/** @returns Why there is nothing to record; undefined where there is. */
export const nothingFound = (input: SheetInput): string | undefined =>
  shownEnclosures(input, input.project.asFound).length > 0 ? undefined : LIST.nothingDrawn;

/** Box by box every end with its place, role and how it is known; then cables, readings and photos. */
export function asFoundPages(input: SheetInput): readonly Page[] {
  const asked: SheetInput = { ...input, state: "as-found" };
  const { flow, pages } = openListSheet(asked, { kind: "as-found", title: AS_FOUND.title });
  const { asFound, notes } = input.project;
  const enclosures = shownEnclosures(input, asFound);
  const nothing = nothingFound(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  flow.paragraph(AS_FOUND.how, { size: TYPE.small });
  flow.paragraph(LIST.evidenceLegend, { size: TYPE.small });
  for (const enclosure of enclosures) writeEnclosure(flow, input, enclosure);
  writeCables(flow, input);
  writeReadings(flow, input, enclosures);
  writePhotos(flow, input);
  if (input.box === undefined && notes.trim() !== "") {
    flow.heading(AS_FOUND.notes);
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
      { head: AS_FOUND_HEADS.end, width: 32, weight: 700 },
      { head: AS_FOUND_HEADS.awg, width: 12 },
      { head: AS_FOUND_HEADS.place, width: 42 },
      { head: AS_FOUND_HEADS.known, width: 14, align: "middle" },
      { head: AS_FOUND_HEADS.role, width: 32 },
      { head: AS_FOUND_HEADS.more },
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
          `${volumeWords(enclosure, fill.asFound.find((row) => row.enclosure === enclosure.id)?.ledger.available)} ${CLAMP_WORDS[enclosure.internalClamps]}${known(enclosure, "internalClamps")}.`,
        ]
      : [];
  const devices = inOrder(enclosure.devices).map((device) => {
    const tab = device.hotTab === "removed" || device.neutralTab === "removed" ? `, ${AS_FOUND.tabOff}` : "";
    const facts = knownAll(device);
    return `${nameAndCaption(device)}${tab}${facts === "" ? "" : ` (${facts})`}`;
  });
  const splices = inOrder(enclosure.splices).map(
    (splice) =>
      `${AS_FOUND.joint(splice.name, membersOf(enclosure, splice.id).length, connectorWords(splice.connector))}${known(splice, "connector")}`,
  );
  const photos = inOrder<Attachment>(project.attachments).filter((one) => one.enclosure === enclosure.id);
  return [
    ...box,
    ...(devices.length === 0 ? [] : [AS_FOUND.devicesAre(devices.join("; "))]),
    ...(splices.length === 0 ? [] : [AS_FOUND.jointsAre(splices.join("; "))]),
    ...(photos.length === 0 ? [] : [AS_FOUND.photosAre(photos.map(({ name }) => name).join(", "))]),
  ];
}

/** "R1 duplex receptacle"; a bar that is called after itself is told once. */
function nameAndCaption({ name, type }: Device): string {
  const { caption } = getDeviceType(type);
  return name.toLowerCase() === caption.toLowerCase() ? name : `${name} ${caption}`;
}

function writeCables(flow: Flow, input: SheetInput): void {
  const { asFound } = input.project;
  const cables = inOrder(asFound.cables).filter(
    ({ sides: { a, b } }) =>
      input.box === undefined ||
      ("enclosure" in a && isShown(input, a.enclosure)) ||
      ("enclosure" in b && isShown(input, b.enclosure)),
  );
  if (cables.length === 0) return;
  flow.heading(AS_FOUND.cables);
  flow.table({
    columns: [
      { head: AS_FOUND_HEADS.cable, width: 22, weight: 700 },
      { head: AS_FOUND_HEADS.kind },
      { head: AS_FOUND_HEADS.fromTo, width: 44 },
      { head: AS_FOUND_HEADS.length, width: 22, align: "end", tabular: true },
      { head: "", width: 3 },
      { head: AS_FOUND_HEADS.insulation, width: 22 },
      { head: AS_FOUND_HEADS.notes },
    ],
    rows: cables.map((cable) => {
      const { name, item, sides, lengthFt, insulationC, notes } = cable;
      return {
        cells: [
          name,
          `${AS_FOUND.cableOf(findCableItem(item)?.title ?? item, conductorCount(cable))}${known(cable, "item")}`,
          AS_FOUND.fromTo(sideWords(asFound, sides.a), sideWords(asFound, sides.b)),
          lengthFt === undefined ? "" : `${AS_FOUND.feet(lengthFt)}${known(cable, "lengthFt")}`,
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
  flow.heading(AS_FOUND.readings);
  if (readings.length === 0) {
    flow.paragraph(AS_FOUND.noReadings);
    return;
  }
  flow.table({
    columns: [
      { head: AS_FOUND_HEADS.at, share: 1, weight: 700 },
      { head: AS_FOUND_HEADS.what, share: 1 },
      { head: AS_FOUND_HEADS.value, width: 32, weight: 600 },
      { head: AS_FOUND_HEADS.instrument, width: 34 },
      { head: AS_FOUND_HEADS.date, width: 24 },
      { head: AS_FOUND_HEADS.by, width: 26 },
    ],
    rows: readings.map((reading): TableRow => {
      const { points, record, value, unit, takenAt, by, remark, computed } = reading;
      const at = record?.item ?? points.map((point) => pointWords(input.project.asFound, point)).join(", ");
      return {
        cells: [
          at,
          { text: record === undefined ? "" : TEST_WORDS[record.test], note: remark ?? "" },
          { text: unit === undefined ? value : `${value} ${unit}`, ...(computed && { note: AS_FOUND.computed }) },
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
  flow.heading(AS_FOUND.photos);
  if (photos.length === 0) {
    flow.paragraph(AS_FOUND.noPhotos);
    return;
  }
  flow.table({
    columns: [
      { head: AS_FOUND_HEADS.photo, width: 44, weight: 700 },
      { head: AS_FOUND_HEADS.of, width: 26 },
      { head: AS_FOUND_HEADS.shows },
      { head: AS_FOUND_HEADS.date, width: 24 },
      { head: AS_FOUND_HEADS.by, width: 30 },
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
