/** Things that lie along strips of the sheet, found again by strip and stretch. */
export interface Strips<T> {
  put(strip: number, from: number, to: number, item: T): void;
  /** Whether any thing of a strip that may lie in a stretch passes a test; some are asked more than once. */
  some(strip: number, from: number, to: number, test: (item: T) => boolean): boolean;
}

/** More parts than this of a strip are not looked at one by one: a drawing may be millions of units wide. */
const MANY = 48;
/** More than there are parts in a strip. */
const TURN = 2 ** 16;

/** @param part Drawing units of a strip that are looked over at once. */
export function openStrips<T>(part: number): Strips<T> {
  const whole = new Map<number, T[]>();
  const parts = new Map<number, T[]>();
  const long = new Map<number, T[]>();
  return {
    put(strip, from, to, item) {
      const [first, last] = [Math.floor(from / part), Math.floor(to / part)];
      add(whole, strip, item);
      if (last - first > MANY) add(long, strip, item);
      else for (let at = first; at <= last; at++) add(parts, strip * TURN + at, item);
    },
    some(strip, from, to, test) {
      const [first, last] = [Math.floor(from / part), Math.floor(to / part)];
      if (last - first > MANY) return passes(whole.get(strip), test);
      for (let at = first; at <= last; at++) if (passes(parts.get(strip * TURN + at), test)) return true;
      return long.size > 0 && passes(long.get(strip), test);
    },
  };
}

function add<T>(lists: Map<number, T[]>, key: number, item: T): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [item]);
  else list.push(item);
}

function passes<T>(items: readonly T[] | undefined, test: (item: T) => boolean): boolean {
  if (items !== undefined) for (const item of items) if (test(item)) return true;
  return false;
}
