import { textWidth } from "./text-width.ts";

/** What a box is from afar, in pixels. */
export interface FarSubject {
  readonly width: number;
  readonly height: number;
  readonly name: string;
  /** How many symbols stand for what is in it. */
  readonly symbols: number;
  /** How full it is, 1 is full; undefined where that is not known. */
  readonly ratio: number | undefined;
  /** Its worst finding stands at its upper right corner. */
  readonly marked: boolean;
  /** What its name may stand out over it on each side; left out: as much as boxes usually leave between them. */
  readonly aside?: number;
}

/** How a box is drawn from afar: what there is room for, in pixels from the upper left corner of its inside. */
export interface FarBox {
  /** Baseline; `centred`: about `x`, over the edges of a box that is smaller than its name. */
  readonly name:
    | { readonly x: number; readonly y: number; readonly size: number; readonly centred: boolean }
    | undefined;
  /** Middle of the first symbol; the others follow to the right, each as wide as it is high. */
  readonly symbols:
    | { readonly x: number; readonly y: number; readonly size: number; readonly count: number }
    | undefined;
  readonly bar: { readonly x: number; readonly y: number; readonly width: number; readonly height: number } | undefined;
}

const NAME = 12;
/** Smaller letters are not read. */
const LEAST_NAME = 11;
export const FAR_NAME_WEIGHT = 750;
const SYMBOL = 31;
const LEAST_SYMBOL = 7;
/** Over a name in a narrow box. */
const LEAST_ALONE = 10;
const SHOWN = 3;
/** What a name may stand out over a box on each side at most. */
const OVER = 7;
/** A box lower than this only has room for a sign. */
const LOWEST = 7;
/** Height of a capital, of the size of its letters. */
const CAPITAL = 0.72;
const BAR = { height: 3.5, margin: 4, side: 3 } as const;
/** Lower than this, a box has no line for its name. */
const LEAST_NAMED = 20;
/** Lower than this, a box has no room for a bar under its name. */
const LEAST_NAMED_BAR = NAME + 2 + BAR.height + BAR.margin;
/** Lower than this, a box has no room for its symbols under its name. */
const LOW = 44;
/** A sign takes this much of the line of the name. */
const SIGN_ROOM = 8;

export function farBox({ width, height, name, symbols, ratio, marked, aside = OVER }: FarSubject): FarBox {
  const nameWidth = height >= LEAST_NAMED ? textWidth(name, NAME, FAR_NAME_WEIGHT) + 4 : 0;
  const named = height >= LEAST_NAMED && width >= nameWidth + 3 + (marked ? SIGN_ROOM : 0);
  const over = Math.min(OVER, aside);
  // In a box that is too small for name and symbols, the name comes first.
  if (!named && height >= LOWEST && width + 2 * over >= textWidth(name, LEAST_NAME, FAR_NAME_WEIGHT))
    return nameAlone(width, height, symbols, ratio !== undefined);
  const barRoom = ratio === undefined || height < (named ? LEAST_NAMED_BAR : 14) ? 0 : BAR.height + BAR.margin;
  // In a low box the symbols stand beside the name, where there is room for them.
  const beside = named && height < LOW && width >= nameWidth + 14;
  const left = beside ? nameWidth : 0;
  const top = named && !beside ? NAME + 3 : 0;
  const wide = width - left - 2;
  const count = Math.min(SHOWN, symbols);
  const size = Math.min(SYMBOL, height - top - barRoom - 4, wide / Math.max(1, count));
  return {
    name: named ? { x: 4, y: NAME + 1, size: NAME, centred: false } : undefined,
    symbols:
      count > 0 && size >= LEAST_SYMBOL
        ? { x: left + wide / 2 - ((count - 1) / 2) * size, y: (top + height - barRoom) / 2, size, count }
        : undefined,
    bar: barRoom > 0 ? barAt(width, height - barRoom) : undefined,
  };
}

/** As low as there is room for it: the worst finding stands at the upper corner. */
function nameAlone(width: number, height: number, symbols: number, known: boolean): FarBox {
  const bar = known && height >= LEAST_NAME + 3 + BAR.height;
  const foot = height - (bar ? BAR.height + 2.5 : 1.5);
  const y = Math.max(foot, (height + LEAST_NAME * CAPITAL) / 2);
  const count = Math.min(SHOWN, symbols);
  const over = y - LEAST_NAME * CAPITAL - 2;
  const size = Math.min(SYMBOL, over - 2, (width - 4) / Math.max(1, count));
  return {
    name: { x: width / 2, y, size: LEAST_NAME, centred: true },
    symbols:
      count > 0 && size >= LEAST_ALONE
        ? { x: width / 2 - ((count - 1) / 2) * size, y: over / 2, size, count }
        : undefined,
    bar: bar ? barAt(width, height - BAR.height - 1) : undefined,
  };
}

const barAt = (width: number, y: number) => ({ x: BAR.side, y, width: width - 2 * BAR.side, height: BAR.height });
