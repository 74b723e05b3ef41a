import { catalogue, type Part } from "../../lib/catalogue.ts";
import { type Problem, problem } from "../../lib/result.ts";
import { MOST_OHM } from "./modelling-values.ts";

const wording = catalogue({
  giveOhms: (most: Part, is: Part) => `Give ohms, more than 0 and at most ${most}; it is ${is}`,
  giveOneOf: (choices: Part, is: Part) => `Give one of ${choices}; it is ${is}`,
  giveName: (is: Part) => `Give an id or a name; it is ${is}`,
  giveList: (is: Part) => `Give a list; it is ${is}`,
  giveObject: (is: Part) => `Give an object; it is ${is}`,
  unknownField: (known: Part) => `This field is not known here; known are ${known}`,
  aList: "a list",
  anObject: "an object",
  missing: "missing",
});

/** Reads parsed JSON and collects problems on the way, each with its place; a refused value reads as none. */
export class JsonReader {
  readonly problems: Problem[] = [];

  /** `message` without its full stop. */
  protected refuse(code: string, path: string, message: string): void {
    this.problems.push(problem(code, path, `${message}.`));
  }

  protected ohms(input: unknown, at: string): number | undefined {
    if (typeof input === "number" && Number.isFinite(input) && input > 0 && input <= MOST_OHM) return input;
    this.refuse("not-a-resistance", at, wording.giveOhms(MOST_OHM, shown(input)));
    return undefined;
  }

  protected oneOf<T extends string>(input: unknown, at: string, choices: readonly T[]): T | undefined {
    const found = choices.find((choice) => choice === input);
    if (found === undefined)
      this.refuse("not-a-choice", at, wording.giveOneOf(choices.map((one) => `"${one}"`).join(", "), shown(input)));
    return found;
  }

  protected text(input: unknown, at: string): string | undefined {
    if (typeof input === "string") return input;
    this.refuse("not-a-name", at, wording.giveName(shown(input)));
    return undefined;
  }

  protected list(input: unknown, path: string): readonly (readonly [item: unknown, at: string])[] {
    if (input === undefined) return [];
    if (Array.isArray(input)) return input.map((item: unknown, index) => [item, `${path}/${index}`]);
    this.refuse("not-a-list", path, wording.giveList(shown(input)));
    return [];
  }

  protected record<K extends string>(input: unknown, path: string, known: readonly K[]): Partial<Record<K, unknown>> {
    if (!isRecord(input)) {
      this.refuse("not-an-object", path, wording.giveObject(shown(input)));
      return {};
    }
    for (const key of Object.keys(input))
      if (!(known as readonly string[]).includes(key))
        this.refuse("unknown-field", `${path}/${step(key)}`, wording.unknownField(known.join(", ")));
    // Own fields only, so that a name such as "constructor" finds nothing.
    return Object.fromEntries(Object.entries(input)) as Partial<Record<K, unknown>>;
  }
}

export const isRecord = (input: unknown): input is Readonly<Record<string, unknown>> =>
  typeof input === "object" && input !== null && !Array.isArray(input);

export const step = (key: string): string => key.slice(0, 40).replaceAll("~", "~0").replaceAll("/", "~1");

/** A value in a message, short. */
export function shown(value: unknown): string {
  if (value === undefined) return wording.missing;
  if (Array.isArray(value)) return wording.aList;
  if (typeof value === "object" && value !== null) return wording.anObject;
  const text = JSON.stringify(value) ?? `a ${typeof value}`;
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
