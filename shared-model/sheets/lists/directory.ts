import type { CircuitFeeds } from "../../answers/circuit-feeds.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import type { Device } from "../../model/device.ts";
import type { Panel } from "../../model/enclosure.ts";
import { isBreakerFound, ratingRead } from "../../queries/breaker-read.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { Page } from "../display-list.ts";
import type { Flow } from "../page/flow.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { TableCell, TableRow } from "../page/table-blocks.ts";
import type { ListTable } from "../tables/table.ts";
import { CORRECTED, DIRECTORY, DIRECTORY_TABLE, FUNCTIONS, howWords } from "./directory-words.ts";
import { sectionWords } from "./findings-words.ts";
import { headed, nothingWords, placeOf, sayNothing, shownEnclosures, shownState } from "./list-parts.ts";

/** @returns Why there is no page for a door; undefined where there is one. */
export const noPanels = (input: SheetInput): string | undefined =>
  panelsOf(input).length > 0 ? undefined : nothingWords(input, DIRECTORY.noPanel);

/** The page for the door of each panel: numbers left and right as its breakers stand. */
export function directoryPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "directory", title: DIRECTORY.title });
  const nothing = noPanels(input);
  if (nothing !== undefined) sayNothing(flow, nothing);
  panelsOf(input).forEach((panel, i) => {
    if (i > 0) flow.newPage();
    writePanel(flow, input, panel);
  });
  return pages();
}

const panelsOf = (input: SheetInput): readonly Panel[] =>
  shownEnclosures(input, shownState(input)).filter((enclosure): enclosure is Panel => enclosure.kind === "panel");

const directorySection = ({ rules: { directory } }: SheetInput): string | undefined =>
  directory === undefined ? undefined : sectionWords(directory);

const isCircuit = ({ type }: Device): boolean => {
  const family = findDeviceType(type)?.family;
  return family === "breaker" || family === "fuse" || family === "disconnect";
};

const circuitsOf = (panel: Panel): readonly Device[] => inOrder(panel.devices).filter(isCircuit);

/** Numbers of the spaces that a breaker fills: its own, and the next below in its column for each further pole. */
const spacesOf = ({ slot, type }: Device): readonly number[] =>
  slot === undefined ? [] : Array.from({ length: findDeviceType(type)?.gangs ?? 1 }, (_, i) => slot + 2 * i);

/** A door holds no more rows than this; what a file may claim beyond it is not a panel. */
const MOST_SPACES = 120;

function writePanel(flow: Flow, input: SheetInput, panel: Panel): void {
  headed(flow, panel.name, placeOf(input, panel));
  const circuits = circuitsOf(panel);
  const bySpace = new Map<number, Device>();
  for (const device of [...circuits].reverse()) for (const space of spacesOf(device)) bySpace.set(space, device);
  const taken = [...bySpace.keys()];
  const spaces = Math.min(MOST_SPACES, Math.max(panel.spaces, 0, ...taken));
  const cells = (space: number): readonly (string | TableCell)[] =>
    space > spaces ? ["", "", ""] : [String(space), ...spaceCells(input, bySpace.get(space), space)];
  flow.table({
    grid: true,
    columns: [0, 1].flatMap(() => [
      { head: "", width: 10, align: "end" as const, tabular: true, weight: 700 as const },
      { head: DIRECTORY.ampere, width: 14, align: "end" as const, tabular: true },
      { head: DIRECTORY.circuit },
    ]),
    rows: Array.from(
      { length: Math.ceil(spaces / 2) },
      (_, i): TableRow => ({
        cells: [...cells(2 * i + 1), ...cells(2 * i + 2)],
        height: 9,
      }),
    ),
  });
  const others = circuits.filter(({ slot }) => slot === undefined || slot > spaces);
  if (others.length > 0) {
    flow.heading(DIRECTORY.withoutNumber);
    flow.table({
      columns: [
        { head: DIRECTORY.breaker, width: 30, weight: 700 },
        { head: DIRECTORY.ampere, width: 14, align: "end", tabular: true },
        { head: DIRECTORY.circuit },
      ],
      rows: others.map((device) => ({ cells: [device.name, ...spaceCells(input, device, device.slot ?? 0)] })),
    });
  }
  flow.keepTogether((kept) => {
    kept.paragraph(howWords(directorySection(input)), { size: TYPE.small });
    kept.signOff(CORRECTED);
  });
}

function spaceCells(input: SheetInput, device: Device | undefined, space: number): readonly (string | TableCell)[] {
  if (device === undefined) return ["", ""];
  const read = isBreakerFound(device) ? device.breakerRatingA : ratingRead(device);
  const rating = read === undefined ? "" : String(read);
  // The further poles of a breaker point at its first.
  if (device.slot !== undefined && device.slot !== space) return [rating, DIRECTORY.withSpace(device.slot)];
  const { text, notes } = circuitWords(input, device);
  return [rating, { text, weight: 600, note: notes.join("; ") }];
}

const feedsOf = ({ circuits }: SheetInput, { id }: Device): CircuitFeeds | undefined =>
  circuits.find(({ breaker }) => breaker === id);

function circuitWords(input: SheetInput, device: Device): { readonly text: string; readonly notes: readonly string[] } {
  const line = (shownState(input).directory[device.id] ?? "").trim();
  const feeds = feedsOf(input, device);
  const fn = device.function === undefined ? "" : FUNCTIONS[device.function];
  const number = device.slot === undefined || device.name === String(device.slot) ? "" : device.name;
  const rooms = feeds === undefined || feeds.rooms.length === 0 ? "" : DIRECTORY.rooms(feeds.rooms.join("; "));
  return {
    text: line !== "" ? line : (feeds?.feeds ?? ""),
    notes: [
      number,
      isBreakerFound(device) ? "" : DIRECTORY.notFound,
      fn,
      line === "" && feeds !== undefined && feeds.feeds !== "" ? DIRECTORY.fromWiring : "",
      rooms,
      feeds === undefined ? DIRECTORY.noConductor : "",
      feeds?.leadsOutside ? DIRECTORY.mayFeedMore : "",
    ].filter(Boolean),
  };
}

/** One row a breaker. */
export const directoryTables = (input: SheetInput): readonly ListTable[] => [
  {
    name: DIRECTORY_TABLE.name,
    columns: [
      { head: DIRECTORY_TABLE.panel, kind: "text", width: 10 },
      { head: DIRECTORY_TABLE.space, kind: "number", width: 8 },
      { head: DIRECTORY_TABLE.breaker, kind: "text", width: 10 },
      { head: DIRECTORY_TABLE.rating, kind: "number", width: 10 },
      { head: DIRECTORY_TABLE.protection, kind: "text", width: 16 },
      { head: DIRECTORY_TABLE.written, kind: "text", width: 40 },
      { head: DIRECTORY_TABLE.fed, kind: "text", width: 40 },
      { head: DIRECTORY_TABLE.rooms, kind: "text", width: 40 },
      { head: DIRECTORY_TABLE.outlets, kind: "number", width: 8 },
    ],
    rows: panelsOf(input).flatMap((panel) =>
      circuitsOf(panel).map((device) => {
        const feeds = feedsOf(input, device);
        return [
          panel.name,
          device.slot,
          isBreakerFound(device) ? device.name : DIRECTORY_TABLE.notFound(device.name),
          isBreakerFound(device) ? device.breakerRatingA : ratingRead(device),
          device.function === undefined ? undefined : FUNCTIONS[device.function],
          shownState(input).directory[device.id],
          feeds?.feeds,
          feeds?.rooms.join("; "),
          feeds?.outlets,
        ];
      }),
    ),
  },
];
