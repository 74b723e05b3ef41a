import { catalogue, type Part } from "../lib/catalogue.ts";
import { failed, ok, type Problem, problem, type Result } from "../lib/result.ts";
import { FORMAT, type Project } from "../model/project.ts";
import { hasAllTables, LACKING, partText, putTables } from "./deferred-tables.ts";
import type { Json } from "./json.ts";
import { shown } from "./json-path.ts";
import { LIMITS } from "./limits.ts";
import { bodyOf } from "./parse-json.ts";
import { compileQuickCheck, newTally, type Tally } from "./quick-check.ts";
import { THIS_PROGRAM, upToDate } from "./read-again.ts";
import { readCarefully } from "./read-carefully.ts";
import type { Reader } from "./reader.ts";
import { knowsItsDevices, referenceProblems, tableProblems } from "./references.ts";
import { type DocumentInFile, documentSchema } from "./schema/document.ts";
import { shapeProblems } from "./shape-problems.ts";
import { projectOf } from "./volumes.ts";
import { countMembers, weighText } from "./weigh-text.ts";

const wording = catalogue({
  formatMissing: (format: Part) => `it has no field "format" that says "${format}"`,
  formatOther: (found: Part, format: Part) => `its field "format" is ${found} and not "${format}"`,
  notAnObject: (found: Part) => `the file holds ${found} and not an object`,
  notOurs: (why: Part) => `This is not a Loadside document: ${why}. Choose a file that ends in .loadside.`,
  readerAboveVersion: "It must not be above the field version. Correct it.",
  tooNew: (version: Part, read: Part) =>
    `The file is of version ${version}, and this program reads versions up to ${read}. Open it with a newer program.`,
  wholeNumber: (found: Part) => `It must be a whole number from 1 up; it is ${found}. Correct it.`,
});

/** A document that was read, and what its file is like. */
export interface OpenedProject {
  readonly project: Project;
  /** A newer program wrote it and lets this one read it: it may be looked at and not changed. */
  readonly readOnly: boolean;
  /** Version of the file; lower than that of `project` when it was brought up to date on opening. */
  readonly fileVersion: number;
}

/**
 * Reads the text of a `.loadside` file. A byte order mark may stand before it; unknown fields stay where they are;
 * what could fill the memory is refused before anything is built from the text, the other `LIMITS` before anything
 * recurses into it. Never throws because of its input.
 *
 * Refuses with all problems of the first kind met, each with its path and what to do: not JSON, over a limit, not a
 * document of this program, too new to be read, of the wrong shape, at odds with itself.
 *
 * `readable` is called when the text can be read, before its shape is judged: what `readableJson` needs is known then.
 */
export function parseProject(
  text: string,
  reader: Reader = THIS_PROGRAM,
  readable: () => void = () => {},
): Result<OpenedProject> {
  const parsed = parseText(text);
  if (!parsed.ok) return parsed;
  const header = readHeader(parsed.value.json, reader);
  if (!header.ok) return header;
  const { version, readOnly } = header.value;
  readable();
  const current = version < reader.version ? bringUpToDate(parsed.value, reader) : checkShape(parsed.value);
  if (!current.ok) return current;

  const project = projectOf(current.value);
  const problems = referenceProblems(project);
  if (problems.length > 0) return failed(...problems.slice(0, LIMITS.problems));
  return ok({ project, readOnly, fileVersion: version });
}

/** From here on the whole of a document takes long enough to be noticed before it is seen. */
const MOST_JUDGED_AT_ONCE = 2 * 1024 * 1024;

/** A document that was read at a glance. */
export interface GlancedProject extends OpenedProject {
  /**
   * False for a long text: whether the ends, places and references in it agree is for `parseProject` to say, and whether
   * the tables inside a box or cable are what they should be, which are read when they are first asked for.
   */
  readonly judged: boolean;
}

/**
 * The same for a text of this version that gives no cause for a second look; undefined at the first doubt, which
 * `parseProject` can explain. It takes time in proportion to the text, whatever stands there. What is not `judged` may be
 * looked at while it is judged elsewhere: it can be drawn, and nothing in it leads round in circles.
 *
 * @param mostAtOnce Length in UTF-16 code units up to which all of it is read and judged.
 */
export function parsePlain(textOfFile: string, mostAtOnce = MOST_JUDGED_AT_ONCE): GlancedProject | undefined {
  const body = bodyOf(textOfFile);
  if (!body.ok) return undefined;
  const judged = textOfFile.length <= mostAtOnce;
  const { text, tables } = judged ? { text: body.value, tables: [] } : partText(body.value);
  const { suspicious, colons } = weighText(text);
  const json = suspicious ? undefined : plainObject(text);
  if (json === undefined) return undefined;
  const header = readHeader(json, THIS_PROGRAM);
  if (!header.ok || header.value.version < THIS_PROGRAM.version) return undefined;
  const tally = newTally();
  const check = judged ? quickCheck : quickCheckOfParted();
  if (!check(json, tally) || losesMembers(text, colons, tally)) return undefined;
  if (!putTables(json, tables) || !(judged || hasAllTables(json))) return undefined;
  const project = projectOf(json as unknown as DocumentInFile);
  if ((judged ? referenceProblems(project) : tableProblems(project)).length > 0) return undefined;
  if (!judged && !knowsItsDevices(project)) return undefined;
  return { project, readOnly: header.value.readOnly, fileVersion: header.value.version, judged };
}

function plainObject(text: string): Json | undefined {
  try {
    const json: unknown = JSON.parse(text);
    return typeof json === "object" && json !== null && !Array.isArray(json) ? (json as Json) : undefined;
  } catch {
    return undefined;
  }
}

const quickCheck = compileQuickCheck(documentSchema);

let partedCheck: typeof quickCheck | undefined;

function quickCheckOfParted(): typeof quickCheck {
  partedCheck ??= compileQuickCheck(documentSchema, LACKING);
  return partedCheck;
}

/**
 * The parser keeps the last of two equal keys without a word. A colon stands after a key or in a text, so where there are
 * no more colons than keys, no key was lost.
 */
const losesMembers = (text: string, colons: number, { members }: Tally): boolean =>
  colons > members && countMembers(text) > members;

interface ParsedText {
  readonly text: string;
  readonly json: Json;
  readonly colons: number;
}

function checkShape({ text, json, colons }: ParsedText): Result<DocumentInFile> {
  const tally = newTally();
  if (quickCheck(json, tally) && !losesMembers(text, colons, tally)) return ok(json as unknown as DocumentInFile);
  const found = readCarefully(text);
  return failed(...(found === undefined ? whyNot(json, tally) : [found]));
}

/** A step must not meet what the parser lets through, so an old document is read with care first. */
function bringUpToDate({ text, json }: ParsedText, reader: Reader): Result<DocumentInFile> {
  const found = readCarefully(text);
  if (found !== undefined) return failed(found);
  const document = upToDate(json, reader);
  const tally = newTally();
  if (quickCheck(document, tally)) return ok(document as unknown as DocumentInFile);
  return failed(...whyNot(document, tally));
}

const whyNot = (json: Json, tally: Tally): readonly Problem[] => shapeProblems(json, tally.refused.toReversed());

function parseText(textOfFile: string): Result<ParsedText> {
  const body = bodyOf(textOfFile);
  if (!body.ok) return body;
  const text = body.value;
  const { suspicious, colons } = weighText(text);
  if (suspicious) {
    const found = readCarefully(text);
    if (found !== undefined) return failed(found);
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    const found = readCarefully(text);
    if (found === undefined) throw new Error("A text that is not JSON was found to be JSON.");
    return failed(found);
  }
  if (typeof json !== "object" || json === null || Array.isArray(json))
    return failed(notOurs(wording.notAnObject(shown(json))));
  return ok({ text, json: json as Json, colons });
}

const notOurs = (why: string): Problem => problem("not-loadside", "", wording.notOurs(why));

function readHeader(json: Json, reader: Reader): Result<{ readonly version: number; readonly readOnly: boolean }> {
  const { format, version, minReader } = json;
  if (format === undefined) return failed(notOurs(wording.formatMissing(FORMAT)));
  if (format !== FORMAT) return failed(notOurs(wording.formatOther(shown(format), FORMAT)));
  const wrong = [...versionProblems("version", version), ...versionProblems("minReader", minReader)];
  if (wrong.length > 0) return failed(...wrong);
  if ((minReader as number) > (version as number))
    return failed(problem("wrong-value", "/minReader", wording.readerAboveVersion));
  if ((minReader as number) > reader.version) {
    return failed(problem("too-new", "/minReader", wording.tooNew(version as number, reader.version)));
  }
  return ok({ version: version as number, readOnly: (version as number) > reader.version });
}

function versionProblems(field: string, value: unknown): readonly Problem[] {
  if (typeof value === "number" && Number.isInteger(value) && value >= 1 && value <= 1_000_000) return [];
  return [problem("wrong-value", `/${field}`, wording.wholeNumber(shown(value)))];
}
