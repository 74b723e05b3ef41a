import type { ProtectionRow, SheetInput } from "../../answers/sheet-input.ts";
import { type DeviceId, type OutletKey, parseOutlet } from "../../model/ids.ts";
import { findDevice } from "../../queries/find-item.ts";
import type { Page } from "../display-list.ts";
import { pt } from "../marks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { ListTable } from "../tables/table.ts";
import { cutOutRows } from "./cut-outs.ts";
import { ifDead, LABEL_TABLES, orWords, SLIPS, setAgain } from "./label-words.ts";
import { isShown, nothingWords, placeOf, sayNothing, shownState } from "./list-parts.ts";

/** An outlet that goes dead by a device elsewhere, and where that is set again. */
interface Slip {
  readonly outlet: string;
  readonly box: string;
  readonly place: string;
  readonly devices: readonly string[];
  /** Breakers among what protects it, in words as the others. */
  readonly breakers: readonly string[];
  /** Words that a person has drawn as its label. */
  readonly drawn?: string;
}

/** @returns Why there is no slip to leave; undefined where there is one. */
export const noSlips = (input: SheetInput): string | undefined =>
  slipsOf(input).length > 0 ? undefined : nothingWords(input, SLIPS.none);

/** One slip for each outlet that the proof puts behind a device at another place. */
export function resetSlipPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "reset-slips", title: SLIPS.title });
  const nothing = noSlips(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  flow.paragraph(SLIPS.how);
  const cutOuts = slipsOf(input).map(({ outlet, box, place, devices, breakers, drawn }) => ({
    lines: [
      { words: ifDead(outlet, place), size: pt(12), bold: true },
      ...(drawn === undefined ? [] : [{ words: drawn, size: pt(11), bold: false, above: 1 }]),
      { words: setAgain(devices, breakers), size: pt(11), bold: false, above: 1 },
      {
        words: breakers.length === 0 ? SLIPS.monthly : SLIPS.monthlyByHandle,
        size: pt(8.5),
        bold: false,
        above: 1.5,
      },
    ],
    below: [SLIPS.outletIn(outlet, box), place].filter(Boolean).join(", "),
  }));
  const grid = { columns: 2, height: 32, centred: false };
  for (const row of cutOutRows(flow.width, flow.height, grid, cutOuts)) flow.block(row);
  return pages();
}

const slipsOf = (input: SheetInput): readonly Slip[] =>
  input.protection.rows.flatMap((row) => {
    const { outlet, enclosure, isProtected } = row;
    const own = parseOutlet(outlet.id as OutletKey).device;
    const devices = row.protectedBy.filter(({ id }) => id !== own);
    const isElsewhere = isProtected && devices.length > 0 && devices.length === row.protectedBy.length;
    if (!isElsewhere || !isShown(input, enclosure.id)) return [];
    const home = shownState(input).enclosures[enclosure.id];
    const drawn = input.scope?.labels.find(
      ({ kind, on, label }) => kind === "reset-slip" && on.id === outlet.id && label !== undefined,
    )?.wording;
    return [
      {
        outlet: outlet.name,
        box: enclosure.name,
        place: home === undefined ? "" : placeOf(input, home),
        devices: devices.filter((device) => !isBreaker(input, device)).map((device) => deviceWords(input, device)),
        breakers: devices.filter((device) => isBreaker(input, device)).map((device) => deviceWords(input, device)),
        ...(drawn !== undefined && { drawn }),
      },
    ];
  });

const isBreaker = (input: SheetInput, { id }: ProtectionRow["protectedBy"][number]): boolean =>
  findDevice(shownState(input), id as DeviceId)?.enclosure.kind === "panel";

/** "R1b in B1 (laundry)". */
function deviceWords(input: SheetInput, { id, name }: ProtectionRow["protectedBy"][number]): string {
  const home = findDevice(shownState(input), id as DeviceId)?.enclosure;
  if (home === undefined) return name;
  const place = placeOf(input, home);
  return place === "" ? SLIPS.deviceIn(name, home.name) : SLIPS.deviceAt(name, home.name, place);
}

/** One row a slip. */
export const resetSlipTables = (input: SheetInput): readonly ListTable[] => [
  {
    name: LABEL_TABLES.slips,
    columns: [
      { head: LABEL_TABLES.outlet, kind: "text", width: 12 },
      { head: LABEL_TABLES.box, kind: "text", width: 10 },
      { head: LABEL_TABLES.place, kind: "text", width: 24 },
      { head: LABEL_TABLES.resetAt, kind: "text", width: 40 },
    ],
    rows: slipsOf(input).map(({ outlet, box, place, devices, breakers }) => [
      outlet,
      box,
      place,
      orWords([...devices, ...breakers]),
    ]),
  },
];
