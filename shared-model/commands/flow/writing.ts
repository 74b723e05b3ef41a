export type Path = readonly string[];

export interface Write {
  readonly path: Path;
  /** Undefined takes the field away. */
  readonly value: unknown;
}

type Fields = Record<string, unknown>;

/**
 * A frozen value being written without touching it: copies what is on the way to each write, once, and keeps the list of
 * writes, so that the outcome can be looked over before anything is done with it.
 */
export class Writing<T extends object> {
  readonly writes: Write[] = [];
  readonly #own = new WeakSet<object>();
  #value: T;

  constructor(value: T) {
    this.#value = value;
  }

  /** As written so far. */
  get value(): T {
    return this.#value;
  }

  /** What stands at a path now. */
  at(path: Path): unknown {
    let value: unknown = this.#value;
    for (const step of path) value = (value as Fields | undefined)?.[step];
    return value;
  }

  /** Every step but the last of `path` must be there. */
  set(path: Path, value: unknown): void {
    this.writes.push({ path, value });
    this.#value = this.#owned(this.#value);
    let home = this.#value as Fields;
    for (const step of path.slice(0, -1)) {
      const inner = home[step];
      if (typeof inner !== "object" || inner === null) throw new Error(`Nothing to write to at ${path.join("/")}.`);
      home = home[step] = this.#owned(inner) as Fields;
    }
    write(home, path, value);
  }

  #owned<O extends object>(value: O): O {
    if (this.#own.has(value)) return value;
    const copy = { ...value };
    this.#own.add(copy);
    return copy;
  }
}

function write(home: Fields, path: Path, value: unknown): void {
  const last = path[path.length - 1];
  if (last === undefined) throw new Error("A write without a place.");
  if (value === undefined) delete home[last];
  else home[last] = value;
}

/** Does writes again on something of the same form. */
export function replay(target: object, writes: readonly Write[]): void {
  for (const { path, value } of writes) {
    let home = target as Fields;
    for (const step of path.slice(0, -1)) home = home[step] as Fields;
    write(home, path, value);
  }
}
