import type { SheetInput } from "../../answers/sheet-input.ts";
import { findCableItem } from "../../catalog/cable-items.ts";
import { EVIDENCE_MARKS } from "../../model/evidence.ts";
import { inOrder } from "../../queries/in-order.ts";
import { TEST_WORDS } from "../../queries/record-words.ts";
import type { ListTable } from "../tables/table.ts";
import { photosOf, readingsOf } from "./as-found.ts";
import { endLines, pointWords, sideWords } from "./as-found-parts.ts";
import { AS_FOUND_TABLES, instrumentWords } from "./as-found-words.ts";
import { shownEnclosures } from "./list-parts.ts";
import { EVIDENCE_WORDS } from "./list-words.ts";
import { EVIDENCE_LETTERS } from "./signs.ts";

const LETTERS = new Map(EVIDENCE_MARKS.map((mark) => [EVIDENCE_LETTERS[mark], EVIDENCE_WORDS[mark]]));

/** Every end, cable, reading and photo of as found. */
export function asFoundTables(input: SheetInput): readonly ListTable[] {
  const { asFound } = input.project;
  const enclosures = shownEnclosures(input, asFound);
  return [
    {
      name: AS_FOUND_TABLES.ends,
      columns: [
        { head: AS_FOUND_TABLES.box, kind: "text", width: 10 },
        { head: AS_FOUND_TABLES.end, kind: "text", width: 14 },
        { head: AS_FOUND_TABLES.awg, kind: "text", width: 8 },
        { head: AS_FOUND_TABLES.place, kind: "text", width: 20 },
        { head: AS_FOUND_TABLES.known, kind: "text", width: 12 },
        { head: AS_FOUND_TABLES.role, kind: "text", width: 16 },
        { head: AS_FOUND_TABLES.more, kind: "text", width: 40 },
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
      name: AS_FOUND_TABLES.cables,
      columns: [
        { head: AS_FOUND_TABLES.cable, kind: "text", width: 10 },
        { head: AS_FOUND_TABLES.kind, kind: "text", width: 24 },
        { head: AS_FOUND_TABLES.from, kind: "text", width: 14 },
        { head: AS_FOUND_TABLES.to, kind: "text", width: 14 },
        { head: AS_FOUND_TABLES.length, kind: "number", width: 10 },
        { head: AS_FOUND_TABLES.lengthKnown, kind: "text", width: 12 },
        { head: AS_FOUND_TABLES.insulation, kind: "number", width: 12 },
      ],
      rows: inOrder(asFound.cables).map(({ name, item, sides, lengthFt, evidence, insulationC }) => [
        name,
        findCableItem(item)?.title ?? item,
        sideWords(asFound, sides.a),
        sideWords(asFound, sides.b),
        lengthFt,
        evidence?.lengthFt && EVIDENCE_WORDS[evidence.lengthFt],
        insulationC,
      ]),
    },
    {
      name: AS_FOUND_TABLES.readings,
      columns: [
        { head: AS_FOUND_TABLES.at, kind: "text", width: 20 },
        { head: AS_FOUND_TABLES.test, kind: "text", width: 24 },
        { head: AS_FOUND_TABLES.value, kind: "text", width: 16 },
        { head: AS_FOUND_TABLES.unit, kind: "text", width: 8 },
        { head: AS_FOUND_TABLES.instrument, kind: "text", width: 24 },
        { head: AS_FOUND_TABLES.date, kind: "date", width: 12 },
        { head: AS_FOUND_TABLES.by, kind: "text", width: 18 },
        { head: AS_FOUND_TABLES.remark, kind: "text", width: 40 },
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
      name: AS_FOUND_TABLES.photos,
      columns: [
        { head: AS_FOUND_TABLES.photo, kind: "text", width: 24 },
        { head: AS_FOUND_TABLES.box, kind: "text", width: 10 },
        { head: AS_FOUND_TABLES.shows, kind: "text", width: 50 },
        { head: AS_FOUND_TABLES.date, kind: "date", width: 12 },
        { head: AS_FOUND_TABLES.by, kind: "text", width: 18 },
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
