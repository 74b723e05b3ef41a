import { type Problem, problem } from "../../lib/result.ts";
import { MOST_OHM } from "./modelling-values.ts";

/** Reads parsed JSON and collects problems on the way, each with its place; a refused value reads as none. */
export class JsonReader {
  readonly problems: Problem[] = [];

  /** `message` without its full stop. */
  protected refuse(code: string, path: string, message: string): void {
    this.problems.push(problem(code, path, `${message}.`));
  }

  protected ohms(input: unknown, at: string): number | undefined {
    if (typeof input === "number" && Number.isFinite(input) && input > 0 && input <= MOST_OHM) return input;
    this.refuse("not-a-resistance", at, `Give ohms, more than 0 and at most ${MOST_OHM}; it is ${shown(input)}`);
    return undefined;
  }

  protected oneOf<T extends string>(input: unknown, at: string, choices: readonly T[]): T | undefined {
    const found = choices.find((choice) => choice === input);
    if (found === undefined)
      this.refuse(
        "not-a-choice",
        at,
        `Give one of ${choices.map((one) => `"${one}"`).join(", ")}; it is ${shown(input)}`,
      );
    return found;
  }

  protected text(input: unknown, at: string): string | undefined {
    if (typeof input === "string") return input;
    this.refuse("not-a-name", at, `Give an id or a name; it is ${shown(input)}`);
    return undefined;
  }

  protected list(input: unknown, path: string): readonly (readonly [item: unknown, at: string])[] {
    if (input === undefined) return [];
    if (Array.isArray(input)) return input.map((item: unknown, index) => [item, `${path}/${index}`]);
    this.refuse("not-a-list", path, `Give a list; it is ${shown(input)}`);
    return [];
  }

  protected record<K extends string>(input: unknown, path: string, known: readonly K[]): Partial<Record<K, unknown>> {
    if (!isRecord(input)) {
      this.refuse("not-an-object", path, `Give an object; it is ${shown(input)}`);
      return {};
    }
    for (const key of Object.keys(input))
      if (!(known as readonly string[]).includes(key))
        this.refuse(
          "unknown-field",
          `${path}/${step(key)}`,
          `This field is not known here; known are ${known.join(", ")}`,
        );
    // Own fields only, so that a name such as "constructor" finds nothing.
    return Object.fromEntries(Object.entries(input)) as Partial<Record<K, unknown>>;
  }
}

export const isRecord = (input: unknown): input is Readonly<Record<string, unknown>> =>
  typeof input === "object" && input !== null && !Array.isArray(input);

export const step = (key: string): string => key.slice(0, 40).replaceAll("~", "~0").replaceAll("/", "~1");

/** A value in a message, short. */
export function shown(value: unknown): string {
  if (value === undefined) return "missing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object";
  const text = JSON.stringify(value) ?? `a ${typeof value}`;
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
