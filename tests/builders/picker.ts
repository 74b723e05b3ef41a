/** Picks from lists by a seeded sequence (mulberry32, a public-domain generator), so that a failing case can be replayed. */
export class Picker {
  #state: number;

  constructor(seed: number) {
    this.#state = seed | 0;
  }

  /** From 0 up to, not including, 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number from 0 up to, not including, `end`. */
  below(end: number): number {
    return Math.floor(this.next() * end);
  }

  chance(likelihood: number): boolean {
    return this.next() < likelihood;
  }

  /** One of a list; `otherwise` when it is empty. */
  from<const T, const O>(list: readonly T[], otherwise: O): T | O {
    return list[this.below(list.length)] ?? otherwise;
  }

  /** Up to `most` different ones of a list, in list order. */
  some<T>(list: readonly T[], most: number): readonly T[] {
    const count = Math.min(list.length, 1 + this.below(most));
    const left = [...list];
    while (left.length > count) left.splice(this.below(left.length), 1);
    return left;
  }
}
