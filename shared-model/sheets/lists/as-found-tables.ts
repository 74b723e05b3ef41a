import type { SheetInput } from "../../answers/sheet-input.ts";
import { findCableItem } from "../../catalog/cable-items.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import { inOrder } from "../../queries/in-order.ts";
import { TEST_WORDS } from "../../queries/record-words.ts";
import type { ListTable } from "../tables/table.ts";
import { photosOf, readingsOf } from "./as-found.ts";
import { endLines, pointWords, sideWords } from "./as-found-parts.ts";
import { instrumentWords } from "./as-found-words.ts";
import { shownEnclosures } from "./list-parts.ts";
import { EVIDENCE_LETTERS } from "./signs.ts";

const LETTERS = new Map(Object.entries(EVIDENCE_LETTERS).map(([mark, letter]) => [letter, mark as EvidenceMark]));

/** Every end, cable, reading and photo of as found. */
export function asFoundTables(input: SheetInput): readonly ListTable[] {
  const { asFound } = input.project;
  const enclosures = shownEnclosures(input, asFound);
  return [
    {
      name: "Ends",
      columns: [
        { head: "Box", kind: "text", width: 10 },
        { head: "End", kind: "text", width: 14 },
        { head: "AWG", kind: "text", width: 8 },
        { head: "Place", kind: "text", width: 20 },
        { head: "Known", kind: "text", width: 12 },
        { head: "Role", kind: "text", width: 16 },
        { head: "More", kind: "text", width: 40 },
      ],
      rows: enclosures.flatMap((enclosure) =>
        endLines(input, asFound, enclosure).map(({ name, awg, place, placeKnown, role, more }) => [
          enclosure.name,
          name,
          awg,
          place,
          LETTERS.get(placeKnown),
          role,
          more.join(", "),
        ]),
      ),
    },
    {
      name: "Cables",
      columns: [
        { head: "Cable", kind: "text", width: 10 },
        { head: "Kind", kind: "text", width: 24 },
        { head: "From", kind: "text", width: 14 },
        { head: "To", kind: "text", width: 14 },
        { head: "Length, ft", kind: "number", width: 10 },
        { head: "Length known", kind: "text", width: 12 },
        { head: "Insulation, °C", kind: "number", width: 12 },
      ],
      rows: inOrder(asFound.cables).map(({ name, item, sides, lengthFt, evidence, insulationC }) => [
        name,
        findCableItem(item)?.title ?? item,
        sideWords(asFound, sides.a),
        sideWords(asFound, sides.b),
        lengthFt,
        evidence?.lengthFt,
        insulationC,
      ]),
    },
    {
      name: "Readings",
      columns: [
        { head: "At", kind: "text", width: 20 },
        { head: "Test", kind: "text", width: 24 },
        { head: "Value", kind: "text", width: 16 },
        { head: "Unit", kind: "text", width: 8 },
        { head: "Instrument", kind: "text", width: 24 },
        { head: "Date", kind: "date", width: 12 },
        { head: "By", kind: "text", width: 18 },
        { head: "Remark", kind: "text", width: 40 },
      ],
      rows: readingsOf(input, enclosures).map((reading) => {
        const { points, record, value, unit, takenAt, by, remark } = reading;
        return [
          record?.item ?? points.map((point) => pointWords(asFound, point)).join(", "),
          record === undefined ? undefined : TEST_WORDS[record.test],
          value,
          unit,
          instrumentWords(reading),
          takenAt?.slice(0, 10),
          by,
          remark,
        ];
      }),
    },
    {
      name: "Photos",
      columns: [
        { head: "Photo", kind: "text", width: 24 },
        { head: "Box", kind: "text", width: 10 },
        { head: "Shows", kind: "text", width: 50 },
        { head: "Date", kind: "date", width: 12 },
        { head: "By", kind: "text", width: 18 },
      ],
      rows: photosOf(input).map(({ name, enclosure, caption, takenAt, by }) => [
        name,
        enclosure === undefined ? undefined : asFound.enclosures[enclosure]?.name,
        caption,
        takenAt?.slice(0, 10),
        by,
      ]),
    },
  ];
}
