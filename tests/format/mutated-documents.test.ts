import { isDeepStrictEqual } from "node:util";
import * as v from "valibot";
import { afterAll, expect, test } from "vitest";
import {
  type GlancedProject,
  type OpenedProject,
  parsePlain,
  parseProject,
} from "../../shared-model/format/parse-project.ts";
import { documentSchema } from "../../shared-model/format/schema/document.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Problem } from "../../shared-model/lib/result.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { Picker } from "../builders/picker.ts";
import { withRoom } from "../same-seed.ts";
import { mutateStructure, mutateText } from "./mutate.ts";
import { smallProject } from "./small-document.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const DOCUMENTS = LONG ? 100_000 : 10_000;
/** The seed of the first document; the others follow it. */
const SEED = 20_251_125;
const PATIENCE_MS = 1000;

const small = textToSave(smallProject());
/** On one line it is half as long, and so a mutation meets what counts more often. */
const TEXTS = [small, JSON.stringify(JSON.parse(small)), JSON.stringify(JSON.parse(textToSave(laundryAsFound())))];

const namesOfObjects = Object.getOwnPropertyNames(Object.prototype).sort().join();
const codes = new Map<string, number>();
let accepted = 0;
let readInParts = 0;

/** Every fiftieth document is the large one, which takes several times as long. */
function damaged(number: number): string {
  const pick = new Picker(SEED + number);
  const text = number % 50 === 49 ? (TEXTS[2] as string) : (TEXTS[number % 2] as string);
  if (number % 3 === 0) return mutateText(text, pick);
  const root = JSON.parse(text);
  mutateStructure(root, pick);
  // With the line ends and indents that the program writes, its tables are read one by one.
  return number % 3 === 1 ? JSON.stringify(root, null, 1) : JSON.stringify(root);
}

const withoutJudged = ({ judged: _, ...opened }: GlancedProject): OpenedProject => opened;

function judge(text: string): void {
  const started = performance.now();
  const result = parseProject(text);
  // What is taken at first sight is what a careful look takes; what it refuses is never taken.
  const plain = parsePlain(text);
  if (plain !== undefined && !isDeepStrictEqual({ ok: true, value: withoutJudged(plain) }, result))
    throw new Error("It is taken at first sight for something else than it is.");
  if (performance.now() - started > PATIENCE_MS) judgePatience(text);
  judgeParted(text, result);
  if (!result.ok) {
    if (result.problems.length === 0) throw new Error("It was refused without a problem.");
    for (const problem of result.problems) judgeProblem(problem);
    return;
  }
  accepted++;
  const { project } = result.value;
  // The quick check and the library must agree; what the one refuses, the other explains.
  if (!v.is(documentSchema, JSON.parse(text.replace(/^\ufeff/, "")))) throw new Error("The schema refuses it.");
  const broken = invariantProblems(project);
  if (broken.length > 0) throw new Error(`It breaks an invariant: ${JSON.stringify(broken[0])}`);
  if (textToSave(project, { text, project }) !== text) throw new Error("An unedited save changes it.");
  // A newer version may only be looked at.
  if (result.value.readOnly) return;
  const saved = textToSave(project);
  const again = parseProject(saved);
  if (!again.ok) throw new Error(`What was saved does not open: ${JSON.stringify(again.problems[0])}`);
  if (textToSave(again.value.project) !== saved) throw new Error("It does not come back as it was saved.");
}

/** Read as a long text is: each table inside a box when it is first asked for. */
function judgeParted(text: string, result: ReturnType<typeof parseProject>): void {
  const parted = parsePlain(text, 0);
  if (parted === undefined) return;
  readInParts++;
  const whole = structuredClone(parted.project);
  if (result.ok && !isDeepStrictEqual(whole, result.value.project))
    throw new Error("Read in parts it is something else than read at once.");
}

/** A machine that is busy with something else may make anything slow once. */
function judgePatience(text: string): void {
  const started = performance.now();
  parseProject(text);
  const took = performance.now() - started;
  if (took > PATIENCE_MS) throw new Error(`It took ${took} ms.`);
}

/** A code, a path into the document, and sentences on one line: what is wrong and what to do. */
function judgeProblem({ code, path, message }: Problem): void {
  codes.set(code, (codes.get(code) ?? 0) + 1);
  if (!/^[a-z]+(-[a-z0-9]+)+$|^empty$/.test(code)) throw new Error(`Not a code: ${code}`);
  if (path !== "" && !path.startsWith("/")) throw new Error(`Not a path: ${path}`);
  const sentences = /^\S.*\S[.] [A-Z][a-z].*[.]$/u;
  if (!sentences.test(message) || /[\p{Cc}\u2028\u2029]/u.test(message) || /undefined|\[object|NaN is/.test(message))
    throw new Error(`Not sentences on one line: ${JSON.stringify(message)}`);
}

test(`${DOCUMENTS} damaged documents: none crashes or hangs, each refusal is a sentence, each accepted one is sound`, {
  timeout: withRoom(600_000),
}, () => {
  for (let number = 0; number < DOCUMENTS; number++) {
    const text = damaged(number);
    try {
      judge(text);
    } catch (error) {
      throw new Error(`Document ${number} (seed ${SEED + number}): ${(error as Error).message}\n${text}`, {
        cause: error,
      });
    }
  }
  expect(Object.getOwnPropertyNames(Object.prototype).sort().join()).toBe(namesOfObjects);
  expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  // Otherwise the mutations would be too coarse, or too fine, to show anything.
  expect(accepted).toBeGreaterThan(DOCUMENTS / 20);
  expect(accepted).toBeLessThan(DOCUMENTS / 2);
  expect(readInParts).toBeGreaterThan(accepted);
});

afterAll(() => {
  const list = [...codes].sort(([, a], [, b]) => b - a).map(([code, count]) => `${code} ${count}`);
  console.log(`${accepted} of ${DOCUMENTS} damaged documents were accepted; problems: ${list.join(", ")}`);
});
