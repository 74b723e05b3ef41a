/** Settings are tried one by one up to this many switches that bear on each other: 2^10 of them. */
export const MOST_SWITCHES = 10;

/** One position for each of some handles, which are sorted by name; any other handle stands in its first position. */
export class Setting {
  readonly handles: readonly string[];
  /** Position of handle n as bit n. */
  readonly column: number;
  private readonly bitOf: ReadonlyMap<string, number>;

  constructor(handles: readonly string[], bitOf: ReadonlyMap<string, number>, column: number) {
    this.handles = handles;
    this.bitOf = bitOf;
    this.column = column;
  }

  positionOf(handle: string): number {
    const bit = this.bitOf.get(handle);
    return bit === undefined ? 0 : (this.column >> bit) & 1;
  }

  /** The same with one of its handles in the other position. */
  flipped(handle: string): Setting {
    const bit = this.bitOf.get(handle);
    return bit === undefined ? this : new Setting(this.handles, this.bitOf, this.column ^ (1 << bit));
  }

  /** The positions of some of its handles, as bits in their order. */
  columnOf(handles: readonly string[]): number {
    if (handles.length === this.handles.length && handles.every((handle, bit) => handle === this.handles[bit]))
      return this.column;
    let column = 0;
    handles.forEach((handle, bit) => {
      column |= this.positionOf(handle) << bit;
    });
    return column;
  }
}

/** Every combination of two positions; past the limit only the drawn one, and the caller says that it is not certain. */
export function* settingsOf(handles: readonly string[]): Generator<Setting> {
  const bitOf = new Map(handles.map((handle, bit) => [handle, bit]));
  const count = handles.length > MOST_SWITCHES ? 1 : 1 << handles.length;
  for (let column = 0; column < count; column++) yield new Setting(handles, bitOf, column);
}
