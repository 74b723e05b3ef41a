import { catalogue, type Part } from "../lib/catalogue.ts";
import { type Problem, problem } from "../lib/result.ts";
import { jsonPath, type Step, shown } from "./json-path.ts";
import { LIMITS } from "./limits.ts";
import { RESERVED_KEYS } from "./reserved-keys.ts";

const wording = catalogue({
  badEscape: "A text holds an escape that JSON does not have",
  control: "A text holds a line end, tab or control character",
  deep: (most: Part) =>
    `More than ${most} objects and lists stand inside one another. Take this part out of the document.`,
  either: (one: Part, other: Part) => `"${one}" or "${other}"`,
  endsBefore: "The document ends before this",
  expected: (wanted: Part) => `${wanted} is expected`,
  key: "A key in quotation marks is expected",
  keyReserved: (key: Part) => `The key ${key} is reserved and may not stand in a document. Remove it.`,
  keyTwice: (key: Part) => `The key ${key} stands twice in one object. Keep one of the two.`,
  loneSurrogate: (text: Part) => `The text ${text} holds half of a character. Type that character again.`,
  longText: (length: Part, most: Part) =>
    `A text of ${length} characters is longer than the ${most} allowed. Shorten it.`,
  manyMembers: (most: Part) => `More than ${most} entries stand in one place. Split the document.`,
  manyValues: "The document has more entries than this program can hold. Split it.",
  notFinite: (number: Part) => `The number ${number} is too large to be held. Correct it.`,
  notJson: (line: Part, column: Part, what: Part, found: Part) =>
    `Line ${line}, column ${column} is not JSON: ${what}, not ${found}. Correct it there, or open a copy.`,
  notJsonAtEnd: (line: Part, column: Part, what: Part) =>
    `Line ${line}, column ${column} is not JSON: ${what}, but the file ends. Correct it there, or open a copy.`,
  openText: "A text in quotation marks does not end",
  value: "A value is expected",
});

/** An object or list that is being read. */
interface Open {
  readonly keys?: Set<string>;
  /** Undefined while a key is being read. */
  step: Step | undefined;
  members: number;
}

class Found extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
  }
}

/**
 * The first thing wrong with a JSON text, with its path: grammar, limits, keys that stand twice, reserved keys, numbers
 * that are not finite, halves of surrogate pairs. Undefined when there is nothing. It keeps its own stack, so that depth
 * cannot overflow it. Slower than the parser: it reads only texts that something is already known or suspected of.
 */
export function readCarefully(text: string): Problem | undefined {
  try {
    new Reader(text).readDocument();
    return undefined;
  } catch (error) {
    if (error instanceof Found) return error.problem;
    throw error;
  }
}

const QUOTE = 34;
const BACKSLASH = 92;
const FIRST_PRINTABLE = 32;
const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const WORD = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const LONE_SURROGATE = /\p{Surrogate}/u;

class Reader {
  private at = 0;
  private values = 0;
  private containers = 0;
  private readonly open: Open[] = [];

  constructor(private readonly text: string) {}

  readDocument(): void {
    this.skipSpace();
    this.readValue();
    while (this.open.length > 0) this.readOn();
    this.skipSpace();
    if (this.at < this.text.length) this.failGrammar(wording.endsBefore);
  }

  /** Goes on inside the innermost open object or list, up to the end of one value in it. */
  private readOn(): void {
    const inside = this.open[this.open.length - 1] as Open;
    const close = inside.keys === undefined ? "]" : "}";
    this.skipSpace();
    if (this.text[this.at] === close) {
      this.at++;
      this.open.pop();
      return;
    }
    if (inside.members > 0) this.expect(",", wording.either(",", close));
    this.skipSpace();
    if (++inside.members > LIMITS.members) this.fail("too-many-members", wording.manyMembers(LIMITS.members), 1);
    if (inside.keys === undefined) inside.step = inside.members - 1;
    else this.readKey(inside, inside.keys);
    this.readValue();
  }

  private readKey(inside: Open, keys: Set<string>): void {
    if (this.text[this.at] !== '"') this.failGrammar(wording.key);
    inside.step = undefined;
    const key = this.readText(LIMITS.textLength);
    inside.step = key;
    if (RESERVED_KEYS.has(key)) this.fail("reserved-key", wording.keyReserved(shown(key)));
    if (keys.has(key)) this.fail("duplicate-key", wording.keyTwice(shown(key)));
    keys.add(key);
    this.skipSpace();
    this.expect(":", '":"');
    this.skipSpace();
  }

  private readValue(): void {
    const first = this.text[this.at];
    if (first === "{" || first === "[") this.containers++;
    if (++this.values > LIMITS.values || this.containers > LIMITS.containers)
      this.fail("too-many-values", wording.manyValues);
    if (first === "{" || first === "[") {
      this.at++;
      this.open.push(first === "{" ? { keys: new Set(), step: undefined, members: 0 } : { step: 0, members: 0 });
      if (this.open.length > LIMITS.depth) this.fail("too-deep", wording.deep(LIMITS.depth), 1);
    } else if (first === '"') {
      this.readText(this.innermostStep() === "base64" ? LIMITS.pictureLength : LIMITS.textLength);
    } else if (!this.readNumber() && this.take(WORD) === undefined) {
      this.failGrammar(wording.value);
    }
  }

  private innermostStep(): Step | undefined {
    return this.open[this.open.length - 1]?.step;
  }

  private readNumber(): boolean {
    const number = this.take(NUMBER);
    if (number === undefined || number === "") return false;
    if (!Number.isFinite(Number(number))) this.fail("not-finite", wording.notFinite(shown(number).slice(1, -1)));
    return true;
  }

  /** @returns The text between the quotation marks, its escapes resolved. */
  private readText(longest: number): string {
    const start = this.at++;
    let escaped = false;
    for (let code = this.codeHere(); code !== QUOTE; code = this.codeHere()) {
      if (Number.isNaN(code)) this.failGrammar(wording.openText);
      if (code < FIRST_PRINTABLE) this.failGrammar(wording.control);
      if (code !== BACKSLASH) this.at++;
      else {
        escaped = true;
        if (this.take(ESCAPE) === undefined) this.failGrammar(wording.badEscape);
      }
    }
    this.at++;
    const written = this.text.slice(start, this.at);
    const value = escaped ? (JSON.parse(written) as string) : written.slice(1, -1);
    if (value.length > longest) this.fail("text-too-long", wording.longText(value.length, longest));
    if (LONE_SURROGATE.test(value)) this.fail("lone-surrogate", wording.loneSurrogate(shown(value)));
    return value;
  }

  /** @returns NaN at the end of the text. */
  private codeHere(): number {
    return this.text.charCodeAt(this.at);
  }

  private skipSpace(): void {
    this.take(SPACE);
  }

  private take(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const match = pattern.exec(this.text);
    if (match === null) return undefined;
    this.at += match[0].length;
    return match[0];
  }

  private expect(char: string, wanted: string): void {
    if (this.text[this.at] !== char) this.failGrammar(wording.expected(wanted));
    this.at++;
  }

  private failGrammar(what: string): never {
    const before = this.text.slice(0, this.at);
    const line = before.split("\n").length;
    const column = this.at - before.lastIndexOf("\n");
    this.fail(
      "not-json",
      this.at < this.text.length
        ? wording.notJson(line, column, what, shown(this.text.slice(this.at, this.at + 12)))
        : wording.notJsonAtEnd(line, column, what),
    );
  }

  /** @param up How many of the innermost steps do not belong to the path. */
  private fail(code: string, message: string, up = 0): never {
    const steps = this.open.slice(0, this.open.length - up).flatMap(({ step }) => (step === undefined ? [] : [step]));
    // Where it is far too deep, the first few steps are what a person can use.
    throw new Found(problem(code, jsonPath(steps.slice(0, 12)), message));
  }
}
