import type { Material } from "../model/cable.ts";
import type { WireSize } from "../units/wire-size.ts";
import { CONNECTOR_TITLES, CONNECTOR_WORDS } from "./stock-words.ts";

/** One line of a connector's table: how many of each size, both ends included; every named size must be present. */
export type CapacityRow = Readonly<Partial<Record<WireSize, readonly [least: number, most: number]>>>;

/**
 * A splicing connector and what it takes. Rows are illustrative: the table on the package of the actual connector governs.
 * A row holds a set of conductors when it names exactly the sizes present, each within its range.
 */
export interface Connector {
  readonly id: string;
  readonly title: string;
  /** One word for the sheet: "large". */
  readonly word: string;
  readonly glyph: string;
  readonly capacity:
    | { readonly kind: "table"; readonly rows: readonly CapacityRow[] }
    /** One conductor a port, each within the sizes. */
    | {
        readonly kind: "ports";
        readonly ports: number;
        readonly thinnest: WireSize;
        readonly thickest: WireSize;
        readonly solidOnly: boolean;
      }
    /** Listed for aluminium to copper. */
    | {
        readonly kind: "al-cu";
        readonly aluminium: readonly [number, number];
        readonly copper: readonly [number, number];
      };
  readonly materials: readonly Material[];
  readonly groundsOnly?: boolean;
  readonly source: string;
}

const SOURCE = "illustrative; the package table of the actual connector governs";
const CU: readonly Material[] = ["copper"];

/** Of the stock, with its words. */
const called = (id: keyof typeof CONNECTOR_TITLES): Pick<Connector, "id" | "title" | "word"> => ({
  id,
  title: CONNECTOR_TITLES[id],
  word: CONNECTOR_WORDS[id],
});

const twist = (size: "small" | "medium" | "large" | "grounding", rows: readonly CapacityRow[]): Connector => ({
  ...called(`twist-${size}`),
  glyph: "cap",
  capacity: { kind: "table", rows },
  materials: CU,
  source: SOURCE,
});
const lever = (ports: 2 | 3 | 5): Connector => ({
  ...called(`lever-${ports}`),
  glyph: "splice",
  capacity: { kind: "ports", ports, thinnest: "18", thickest: "12", solidOnly: false },
  materials: CU,
  source: SOURCE,
});
const pushIn = (ports: 2 | 3 | 4 | 6 | 8): Connector => ({
  ...called(`push-in-${ports}`),
  glyph: "splice",
  capacity: { kind: "ports", ports, thinnest: "18", thickest: "12", solidOnly: true },
  materials: CU,
  source: SOURCE,
});

export const connectors: readonly Connector[] = [
  twist("small", [{ "14": [2, 3] }, { "16": [2, 2] }]),
  twist("medium", [{ "14": [2, 4] }, { "12": [2, 3] }, { "12": [1, 1], "14": [2, 2] }]),
  twist("large", [{ "14": [3, 6] }, { "12": [2, 5] }, { "12": [1, 3], "14": [1, 3] }, { "10": [1, 2], "12": [1, 3] }]),
  {
    ...twist("grounding", [{ "14": [2, 4] }, { "12": [2, 4] }, { "12": [1, 3], "14": [1, 3] }]),
    groundsOnly: true,
  },
  lever(2),
  lever(3),
  lever(5),
  pushIn(2),
  pushIn(3),
  pushIn(4),
  pushIn(6),
  pushIn(8),
  {
    ...called("al-cu-listed"),
    glyph: "splice",
    capacity: { kind: "al-cu", aluminium: [1, 1], copper: [1, 2] },
    materials: ["copper", "aluminium"],
    source: SOURCE,
  },
  {
    ...called("crimp-ground"),
    glyph: "splice",
    capacity: { kind: "table", rows: [{ "14": [2, 4] }, { "12": [2, 4] }, { "12": [1, 3], "14": [1, 3] }] },
    materials: CU,
    groundsOnly: true,
    source: SOURCE,
  },
];

const BY_ID = new Map(connectors.map((connector) => [connector.id, connector]));
export const findConnector = (id: string): Connector | undefined => BY_ID.get(id);
