const NONE = -1;

/** Items 0..count-1 in lists by degree, linked both ways, so that each step costs the same. */
export class DegreeLists {
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly previous: Int32Array;
  private readonly degreeOf: Int32Array;
  private lowest = 0;

  constructor(count: number) {
    this.head = new Int32Array(count + 1).fill(NONE);
    this.next = new Int32Array(count).fill(NONE);
    this.previous = new Int32Array(count).fill(NONE);
    this.degreeOf = new Int32Array(count);
  }

  /** @param degree At most the count. */
  add(item: number, degree: number): void {
    const first = this.head[degree] as number;
    this.degreeOf[item] = degree;
    this.next[item] = first;
    this.previous[item] = NONE;
    if (first !== NONE) this.previous[first] = item;
    this.head[degree] = item;
    if (degree < this.lowest) this.lowest = degree;
  }

  remove(item: number): void {
    const before = this.previous[item] as number;
    const after = this.next[item] as number;
    if (before === NONE) this.head[this.degreeOf[item] as number] = after;
    else this.next[before] = after;
    if (after !== NONE) this.previous[after] = before;
  }

  /** Takes out one of the lowest degree. There must be one. */
  takeLowest(): number {
    while (this.head[this.lowest] === NONE) this.lowest++;
    const item = this.head[this.lowest] as number;
    this.remove(item);
    return item;
  }
}
