/** What planning, the file format and the stock say in the language for tests: of the same things, and none of it in English. */
import { beforeAll, expect, test, vi } from "vitest";

/** Sentences and phrases by where they stand: "scope of laundry-proposed", "file". */
type Said = readonly (readonly [where: string, text: string])[];

/** Ids, names, and what a person wrote. */
const NOT_READ = /^(id|key|changes|names?|note|size|feeds|leadsTo)$/;
/** Read even where it is one word, which may look like an id. */
const READ = /^(expect|what|will|title|caption|words?)$/;
/** Stored, or not told to anybody. */
const NOT_TOLD = /^(calls?|directory|expected)$/;

/** Everything in an answer that a person reads. */
function readIn(value: unknown, key = ""): readonly string[] {
  if (typeof value === "string") return (READ.test(key) || / \S/.test(value)) && !NOT_READ.test(key) ? [value] : [];
  if (typeof value !== "object" || value === null || NOT_TOLD.test(key)) return [];
  if (Array.isArray(value)) return value.flatMap((one) => readIn(one, key));
  return Object.entries(value).flatMap(([inner, one]) => readIn(one, inner));
}

/** A word as English writes it, a capital before it or not; keys of a file stand in quotation marks. */
const PLAIN = /[A-Za-z]*[a-z]{2,}/g;
const QUOTED = /"[^"]*"/g;

/** Words of names, and of what was written into a document. */
function namesIn(value: unknown, key = ""): readonly string[] {
  if (typeof value === "string")
    return /^(name|note|wording|requiredBy|outside|by)$/.test(key) ? (value.match(PLAIN) ?? []) : [];
  if (typeof value !== "object" || value === null) return [];
  if (key === "directory") return Object.values(value).flatMap((line: string) => line.match(PLAIN) ?? []);
  return Object.entries(value).flatMap(([inner, one]) => namesIn(one, inner));
}

/** What a damaged file may hold, one fault each. */
const DAMAGED = [
  "",
  "[]",
  "{}",
  '{"a": 1, "a": 2}',
  '{"__proto__": 1}',
  '{"a": "\\x"}',
  '{"a": 1e999}',
  '{"a": ',
  '{"format": "loadside", "version": "one", "minReader": 1}',
  '{"format": "loadside", "version": 9, "minReader": 9}',
  '{"format": "loadside", "version": 1, "minReader": 1, "title": 1, "edition": "old", "rooms": [], "supply": {}}',
];

/** Modules of the core, loaded anew: their language is chosen by then. */
async function loadCore(): Promise<{ readonly said: Said; readonly names: ReadonlySet<string> }> {
  vi.resetModules();
  const { openSample } = await import("../builders/samples/open-sample.ts");
  const { openSession } = await import("../../shared-model/analysis/session.ts");
  const { scopeAnswer } = await import("../../shared-model/analysis/scope-answer.ts");
  const { answerFit, answerMakeUp } = await import("../../shared-model/planning/answer-make-up.ts");
  const { mapCircuits } = await import("../../shared-model/planning/survey/map-circuits.ts");
  const { orderAlong } = await import("../../shared-model/planning/survey/order-along.ts");
  const { parseProject } = await import("../../shared-model/format/parse-project.ts");
  const { deviceTypes } = await import("../../shared-model/catalog/device-types.ts");
  const { cableItems } = await import("../../shared-model/catalog/cable-items.ts");
  const { connectors } = await import("../../shared-model/catalog/connectors.ts");
  const { enclosureItems } = await import("../../shared-model/catalog/enclosure-items.ts");
  const { loadItems } = await import("../../shared-model/catalog/load-items.ts");
  const { CAUTIONS } = await import("../../shared-model/catalog/cautions.ts");
  const { boxId, deviceId, outlet } = await import("../builders/drawing.ts");
  const bench = await import("../planning/survey-bench.ts");

  const said: (readonly [string, string])[] = [];
  const names = new Set<string>();
  const add = (where: string, value: unknown): void => {
    for (const text of readIn(value)) said.push([where, text]);
  };
  add("cautions", CAUTIONS);
  for (const one of [...deviceTypes, ...cableItems, ...connectors, ...enclosureItems, ...loadItems])
    add(`stock ${one.id}`, { ...one, source: undefined, make: undefined });

  for (const name of ["laundry-proposed", "kitchen-multiwire"]) {
    const project = openSample(name);
    for (const word of namesIn(project)) names.add(word);
    add(`scope of ${name}`, scopeAnswer(openSession(project)));
  }
  const laundry = openSample("laundry-box");
  for (const word of namesIn(laundry)) names.add(word);
  for (const box of ["B1", "B2", "P1"]) add("make-up", answerMakeUp(laundry, { state: "as-found", box: boxId(box) }));
  for (const name of ["R1", "R4", "L1"]) add("fit", answerFit(laundry, { outlet: outlet(name) }));
  const [r1, r5, l1] = [outlet("R1"), outlet("R5"), outlet("L1")];
  add("map", mapCircuits(laundry, [{ breaker: deviceId("Q14"), dead: [r1], stillLive: [r5] }]).remarks);
  const { before, notKnown } = orderAlong(laundry, [
    { kind: "opened", at: r1, dead: [r5] },
    { kind: "drop", loadAt: l1, at: r5, volts: 0 },
  ]);
  add("order", [...before.map(({ why }) => why), ...notKnown]);

  const groups = [[bench.outletItem("R2")], [bench.lightItem("L1")]];
  const live = bench.triple("C1", [120, 120, 0]);
  for (const readings of [
    [],
    [...live, ...bench.triple("C2", [0, 0, 0]), bench.ohms("C2", "open"), bench.works(["C1", "C2"], ["R2"])],
    [...bench.triple("C1", [120, 0, 120]), bench.ohms("C2", 0.2), bench.works(["C1", "C3"], [])],
    [bench.volts("C1", "b", "w", 120, "meter"), bench.volts("C2", "b", "w", 120, "noncontact")],
    [...live, ...bench.triple("C1", [0, 0, 0])],
  ])
    add("survey", bench.survey(bench.unknownBox(3), { groups, switchesHere: 1 }, readings));

  for (const text of DAMAGED) {
    const read = parseProject(text);
    add("file", read.ok ? [] : read.problems.map(({ message }) => message));
  }
  return { said, names };
}

let english: Awaited<ReturnType<typeof loadCore>>;
let pseudo: Awaited<ReturnType<typeof loadCore>>;

beforeAll(async () => {
  english = await loadCore();
  vi.stubGlobal("name", "words of planning pseudo");
  pseudo = await loadCore();
  vi.unstubAllGlobals();
}, 120_000);

test("no English is left", () => {
  const left = ({ said, names }: typeof english): readonly string[] =>
    said.flatMap(([where, text]) =>
      (text.replace(QUOTED, "").match(PLAIN) ?? []).some((word) => !names.has(word)) ? [`${where}: ${text}`] : [],
    );
  expect(left(english).length).toBeGreaterThan(900);
  expect([...new Set(left(pseudo))]).toEqual([]);
});

test("as much is said in both languages, each at its place", () => {
  expect(pseudo.said.map(([where]) => where)).toEqual(english.said.map(([where]) => where));
});
