import { describe, expect, test } from "vitest";
import { LIMITS } from "../../shared-model/format/limits.ts";
import { type OpenedProject, parsePlain, parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Problem } from "../../shared-model/lib/result.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { type JsonValue, smallProject, smallText, withValue } from "./small-document.ts";

const B1 = "/asFound/enclosures/box-B1";
const PANEL = "/asFound/enclosures/box-P";
const C1 = "/asFound/cables/cable-C1";

function problemsOf(text: string): readonly Problem[] {
  const result = parseProject(text);
  return result.ok ? [] : result.problems;
}

function read(text: string): OpenedProject {
  const result = parseProject(text);
  if (!result.ok) throw new Error(result.problems[0]?.message);
  return result.value;
}

/** Codes and paths alone, as text that is easy to read in a failing test. */
const found = (text: string): readonly string[] => problemsOf(text).map(({ code, path }) => `${code} ${path}`);

test("a document comes back as it was written", () => {
  for (const project of [smallProject(), laundryAsFound()]) {
    const result = parseProject(textToSave(project));
    expect(result).toEqual({ ok: true, value: { project, readOnly: false, fileVersion: 1 } });
  }
});

test("an ordinary document is taken at first sight, one that gives cause for doubt is not", () => {
  for (const text of [textToSave(laundryAsFound()), smallText(), `\ufeff${smallText()}`])
    expect(parsePlain(text)).toEqual({ ...read(text), judged: true });
  const doubtful = [
    "",
    "hello",
    "[]",
    "{}",
    smallText().slice(0, 3000),
    smallText().replace('"title"', '"title": "First", "title"'),
    smallText().replace('"title": "', '"title": "\\ud800'),
    withValue("/asFound/loads", 7),
    withValue(`${B1}/roomId`, "room-nowhere"),
    smallText()
      .replace(/"version": \d+/, '"version": 99')
      .replace(/"minReader": \d+/, '"minReader": 99'),
  ];
  for (const text of doubtful) {
    expect(parsePlain(text), text.slice(0, 60)).toBeUndefined();
    expect(parseProject(text).ok, text.slice(0, 60)).toBe(false);
  }
});

test("a long document is taken before its bookkeeping is judged, but not with a circle in it", () => {
  const long = (text: string) => text + " ".repeat(2 * 1024 * 1024);
  expect(parsePlain(long(smallText()))).toEqual({ ...read(smallText()), judged: false });
  const atOdds = long(withValue(`${B1}/roomId`, "room-nowhere"));
  expect(found(atOdds)).toEqual([`unknown-room ${B1}/roomId`]);
  expect(parsePlain(atOdds)).toMatchObject({ judged: false });
  expect(parsePlain(long(withValue(`${PANEL}/devices/device-Q1/tiedTo`, "device-Q1")))).toBeUndefined();
});

test("a byte order mark, Windows line ends and odd spacing are read", () => {
  const odd = `\ufeff${smallText().replaceAll("\n", "\r\n").replaceAll(": ", "\t :  ")}`;
  const result = parseProject(odd);
  expect(result.ok && result.value.project).toEqual(smallProject());
});

describe("what is not a document at all", () => {
  test.each([
    ["nothing", "", "empty "],
    ["a byte order mark alone", "\ufeff", "empty "],
    ["spaces and line ends", " \r\n\t ", "empty "],
    ["words", "hello", "not-json "],
    ["a document cut short", smallText().slice(0, 3000), "not-json "],
    ["a document with more after it", `${smallText()}{}`, "not-json "],
    ["a number", "12", "not-loadside "],
    ["a list", "[]", "not-loadside "],
    ["nothing in an object", "{}", "not-loadside "],
    ["an object of another program", '{"format": "other", "version": 1}', "not-loadside "],
  ])("%s", (_, text, expected) => {
    const [first, ...more] = problemsOf(text);
    expect(`${first?.code} ${first?.code === "not-json" ? "" : first?.path}`).toBe(expected);
    expect(more).toEqual([]);
  });

  test("the line and column of the first slip are told, with the way to it", () => {
    expect(problemsOf('{\n "format": "loadside",\n "rooms": {\n  "r1": [1, 2,, 3]\n }\n}')).toEqual([
      {
        code: "not-json",
        path: "/rooms/r1/2",
        message:
          'Line 4, column 15 is not JSON: A value is expected, not ", 3]\\n }\\n}". Correct it there, or open a copy.',
      },
    ]);
  });
});

describe("fields", () => {
  test.each<[string, string, JsonValue | undefined, string]>([
    ["a missing one", "/title", undefined, "missing-field /title"],
    ["a number for a text", "/title", 7, "wrong-value /title"],
    ["an edition that is none", "/edition", 2019, "wrong-value /edition"],
    ["null for an optional number", `${C1}/lengthFt`, null, `wrong-value ${C1}/lengthFt`],
    ["a length below zero", `${C1}/lengthFt`, -1, `wrong-value ${C1}/lengthFt`],
    ["a length past all bounds", `${C1}/lengthFt`, 10_000_001, `wrong-value ${C1}/lengthFt`],
    ["a colour that is none", `${C1}/conductors/bk/colour`, "mauve", `wrong-value ${C1}/conductors/bk/colour`],
    ["an enclosure of no kind", `${B1}/kind`, "bag", `wrong-value ${B1}/kind`],
    ["a list for a table", `${B1}/devices`, [], `wrong-value ${B1}/devices`],
    ["half a gang", `${B1}/gangs`, 1.5, `wrong-value ${B1}/gangs`],
    ["a side that is neither inside nor outside", `${C1}/sides/a`, { x: 1 }, `wrong-value ${C1}/sides/a`],
    ["a key that is no end", `${B1}/places/c1`, { at: { kind: "capped" } }, `wrong-key ${B1}/places/c1`],
    ["an id with a space", "/rooms/a room", {}, "wrong-key /rooms/a room"],
    ["a mark of evidence that is none", `${B1}/evidence`, { volume: "heard" }, `wrong-value ${B1}/evidence/volume`],
  ])("%s", (_, path, value, expected) => {
    expect(found(withValue(path, value))).toContain(expected);
  });

  test("an id may not be a name that every object has", () => {
    for (const name of ["toString", "hasOwnProperty", "valueOf", "prototype"])
      expect(found(withValue(`${C1}/sides/a`, { enclosure: name, entry: "e" }))).toEqual([
        `wrong-value ${C1}/sides/a/enclosure`,
      ]);
  });

  test("unknown ones stay where they are, at every level", () => {
    const extra = { "any thing": [1, { deep: null }], volumeIn3: 30.30001 };
    for (const path of ["/later", `${B1}/later`, `${C1}/conductors/bk/later`, `${B1}/volume/later`, "/layout/later"]) {
      const result = parseProject(withValue(path, extra));
      expect(result.ok && JSON.parse(textToSave(result.value.project))).toEqual(JSON.parse(withValue(path, extra)));
    }
  });
});

describe("volumes", () => {
  test("are decimal in the file and exact in memory", () => {
    const result = parseProject(withValue(`${B1}/volume`, { kind: "marked", volumeIn3: 30.3 }));
    expect(result.ok && result.value.project.asFound.enclosures).toMatchObject({
      "box-B1": {
        volume: { kind: "marked", volumeIn3: 303_000 },
        rings: { "ring-box-B1": { volume: { volumeIn3: 35_000 } } },
      },
    });
  });

  test("of more than four decimals are refused", () => {
    expect(found(withValue(`${B1}/volume`, { kind: "marked", volumeIn3: 30.3001 }))).toEqual([]);
    expect(found(withValue(`${B1}/volume`, { kind: "marked", volumeIn3: 30.30001 }))).toEqual([
      `wrong-value ${B1}/volume/volumeIn3`,
    ]);
  });
});

describe("hostile content", () => {
  test.each(["__proto__", "constructor", "prototype"])("the key %s is refused wherever it stands", (key) => {
    const bad = `"${key}": {"polluted": true}`;
    expect(found(smallText().replace('"title":', `${bad}, "title":`))).toEqual([`reserved-key /${key}`]);
    expect(found(smallText().replace('"title":', `"later": {${bad}}, "title":`))).toEqual([
      `reserved-key /later/${key}`,
    ]);
    expect(found(smallText().replace('"box-B1": {', `"box-B1": {${bad}, `))).toContain(`reserved-key ${B1}/${key}`);
    expect(found(smallText().replace('"rooms": {', `"rooms": {${bad}, `))).toEqual([
      `reserved-key /layout/rooms/${key}`,
    ]);
    expect(found(smallText().replace('"title":', `"\\u005f_proto__": 1, "title":`))).toEqual([
      "reserved-key /__proto__",
    ]);
    expect(found(smallText().replace('"evidence": {', `"evidence": {"${key}": "seen", `))).toMatchObject([
      expect.stringMatching(new RegExp(`^reserved-key .*/evidence/${key}$`)),
    ]);
    expect(found(smallText().replace('"title":', `"tariff": {"${key}": 1}, "title":`))).toEqual([
      `reserved-key /tariff/${key}`,
    ]);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  test("a number too large to be held is refused, known or unknown", () => {
    expect(found(smallText().replace('"lengthFt": 20', '"lengthFt": 1e999'))).toEqual([`not-finite ${C1}/lengthFt`]);
    expect(found(smallText().replace('"title":', '"later": [0, -1e999], "title":'))).toEqual(["not-finite /later/1"]);
    const long = `1${"0".repeat(400)}`;
    expect(found(smallText().replace('"title":', `"later": ${long}, "title":`))).toEqual(["not-finite /later"]);
  });

  test("half of a character is refused, written or escaped; whole ones are read", () => {
    const withTitle = (title: string) => smallText().replace('"Small"', `"${title}"`);
    for (const half of ["\\ud83d", "\ud83d", "\\uDE00", "x\\ud83dx\\ude00"])
      expect(found(withTitle(half))).toEqual(["lone-surrogate /title"]);
    for (const whole of ["\\ud83d\\ude00", "😀", "C\\u0031"]) expect(found(withTitle(whole))).toEqual([]);
    expect(found(smallText().replace('"title":', '"\\ud800": 1, "title":'))).toHaveLength(1);
  });

  test("a key that stands twice is refused, also when one is escaped", () => {
    expect(found(smallText().replace('"title":', '"title": "x", "title":'))).toEqual(["duplicate-key /title"]);
    expect(found(smallText().replace('"title":', '"t\\u0069tle": "x", "title":'))).toEqual(["duplicate-key /title"]);
    expect(found(smallText().replace('"title":', '"later": {"a": 1, "a" : 2}, "title":'))).toEqual([
      "duplicate-key /later/a",
    ]);
    const twoIds = smallText().replace('"splice-X": {', '"splice-X": {"id": "splice-X"}, "splice-X": {');
    expect(found(twoIds)).toEqual([`duplicate-key ${B1}/splices/splice-X`]);
  });

  test("a colon in a text does not pass for a key that stands twice", () => {
    expect(found(withValue("/notes", 'seen at 12:30: "x": y'))).toEqual([]);
  });
});

describe("limits, on both sides", () => {
  const later = (json: string) => smallText().replace('"title":', `"later": ${json}, "title":`);

  test("depth", () => {
    // The document itself is the first level.
    const nested = (levels: number) => "[".repeat(levels) + "]".repeat(levels);
    expect(found(later(nested(LIMITS.depth - 1)))).toEqual([]);
    expect(problemsOf(later(nested(LIMITS.depth)))).toMatchObject([{ code: "too-deep" }]);
    const objects = (levels: number) => `${'{"a":'.repeat(levels)}1${"}".repeat(levels)}`;
    expect(found(later(objects(LIMITS.depth - 1)))).toEqual([]);
    expect(problemsOf(later(objects(LIMITS.depth)))).toMatchObject([{ code: "too-deep" }]);
  });

  test.each([200_000, 900_000])("%d levels end neither the stack nor the patience", (levels) => {
    const started = performance.now();
    for (const text of ["[".repeat(levels), later("[".repeat(levels) + "]".repeat(levels)), '{"a":'.repeat(levels)])
      expect(problemsOf(text)).toMatchObject([{ code: "too-deep" }]);
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  test("length of a text", () => {
    const long = (length: number) => "x".repeat(length);
    for (const path of ["/title", "/later"]) {
      expect(found(withValue(path, long(LIMITS.textLength)))).toEqual([]);
      expect(found(withValue(path, long(LIMITS.textLength + 1)))).toEqual([`text-too-long ${path}`]);
    }
    const picture = (length: number) => ({
      a1: { id: "a1", name: "Photo", mediaType: "image/png", base64: long(length), order: 0 },
    });
    expect(found(withValue("/attachments", picture(LIMITS.pictureLength)))).toEqual([]);
    expect(found(withValue("/attachments", picture(LIMITS.pictureLength + 4)))).toEqual([
      "text-too-long /attachments/a1/base64",
    ]);
  });

  test("entries in one place", () => {
    const ones = (count: number) => `[${Array(count).fill("1").join(",")}]`;
    const keys = (count: number) => `{${Array.from({ length: count }, (_, index) => `"k${index}":1`).join(",")}}`;
    for (const make of [ones, keys]) {
      expect(found(later(make(LIMITS.members)))).toEqual([]);
      expect(problemsOf(later(make(LIMITS.members + 1)))).toMatchObject([{ code: "too-many-members", path: "/later" }]);
    }
  });

  test("objects and lists together", () => {
    const lists = (count: number) => `[${Array(count).fill("[[],[],[],[],[],[],[],[],[],[]]").join(",")}]`;
    expect(found(later(lists(80_000)))).toEqual([]);
    expect(problemsOf(later(lists(95_000)))).toMatchObject([{ code: "too-many-values" }]);
  });

  test("characters", () => {
    const spaces = " ".repeat(LIMITS.characters - smallText().length);
    expect(found(smallText() + spaces)).toEqual([]);
    expect(found(`${smallText() + spaces} `)).toEqual(["too-large "]);
  });

  test("100 MB are refused at once", () => {
    const text = " ".repeat(100_000_000);
    const started = performance.now();
    expect(found(text)).toEqual(["too-large "]);
    expect(performance.now() - started).toBeLessThan(1000);
  });
});

describe("references", () => {
  test.each<[string, string, JsonValue | undefined, string]>([
    [
      "a splice that is not there",
      `${B1}/places/cable-C1.wh.b/at`,
      { kind: "splice", splice: "x" },
      `unknown-splice ${B1}/places/cable-C1.wh.b`,
    ],
    [
      "a terminal that is not there",
      `${B1}/places/cable-C1.wh.b/at`,
      { kind: "terminal", device: "device-R1", terminal: "Z9", hole: 1 },
      `unknown-terminal ${B1}/places/cable-C1.wh.b`,
    ],
    [
      "a hole that is not there",
      `${B1}/places/cable-C1.wh.b/at`,
      { kind: "terminal", device: "device-R1", terminal: "N1", hole: 2 },
      `unknown-hole ${B1}/places/cable-C1.wh.b`,
    ],
    ["an end without a place", `${B1}/places/cable-C1.wh.b`, undefined, `end-without-place ${B1}/places`],
    [
      "a place without an end",
      `${B1}/places/cable-C9.wh.b`,
      { at: { kind: "capped" } },
      `place-without-end ${B1}/places/cable-C9.wh.b`,
    ],
    ["a cable into no enclosure", `${C1}/sides/b/enclosure`, "box-B9", `unknown-enclosure ${C1}/sides/b`],
    ["a room that is not there", `${B1}/roomId`, "room-x", `unknown-room ${B1}/roomId`],
    [
      "a type of the catalogue that is not there",
      `${B1}/devices/device-R1/type`,
      "x",
      `unknown-device-type ${B1}/devices/device-R1/type`,
    ],
    [
      "a load on no outlet",
      "/asFound/loads/load-Lamp/plug",
      "device-R9",
      "unknown-outlet /asFound/loads/load-Lamp/plug",
    ],
    ["an id that differs from its key", "/rooms/room-Hall/id", "room-x", "id-differs-from-key /rooms/room-Hall/id"],
    [
      "an id in two enclosures",
      `${PANEL}/splices/splice-X`,
      { id: "splice-X", name: "X", connector: "none", order: 0 },
      `duplicate-id ${PANEL}/splices/splice-X`,
    ],
    [
      "a position of nothing",
      "/layout/enclosures/box-B9",
      { x: 0, y: 0 },
      "unknown-enclosure /layout/enclosures/box-B9",
    ],
    [
      "a breaker tied to nothing",
      `${PANEL}/devices/device-Q1/tiedTo`,
      "device-Q9",
      `unknown-device ${PANEL}/devices/device-Q1/tiedTo`,
    ],
    [
      "a breaker tied to itself",
      `${PANEL}/devices/device-Q1/tiedTo`,
      "device-Q1",
      `tied-to-itself ${PANEL}/devices/device-Q1/tiedTo`,
    ],
    [
      "a replacement of nothing",
      `${B1}/devices/device-R1/replaces`,
      "device-R9",
      `unknown-device ${B1}/devices/device-R1/replaces`,
    ],
  ])("%s", (_, path, value, expected) => {
    expect(found(withValue(path, value))).toContain(expected);
  });

  test("two breakers may be tied to each other, three may not go round", () => {
    const tied = (ties: Record<string, string>) => {
      const root = JSON.parse(smallText());
      for (const [from, to] of Object.entries(ties))
        root.asFound.enclosures["box-P"].devices[`device-${from}`].tiedTo = `device-${to}`;
      return JSON.stringify(root);
    };
    expect(found(tied({ Q1: "Q2", Q2: "Q1" }))).toEqual([]);
    expect(found(tied({ Q1: "Q2", Q2: "Q3" }))).toEqual([]);
    expect(found(tied({ Q1: "Q2", Q2: "Q3", Q3: "Q1" }))).toEqual([`ring-of-ties ${PANEL}/devices/device-Q1/tiedTo`]);
  });

  test("replacements may not go round through both states", () => {
    const root = JSON.parse(smallText());
    root.proposed = structuredClone(root.asFound);
    const [before, after] = [root.asFound, root.proposed].map((state) => state.enclosures["box-B1"].devices);
    after["device-R2"] = { ...after["device-R1"], id: "device-R2", replaces: "device-R1" };
    const stillThere = "kept-and-replaced /proposed/enclosures/box-B1/devices/device-R2/replaces";
    expect(found(JSON.stringify(root)), "nothing is both kept and replaced").toEqual([stillThere]);
    before["device-R1"].replaces = "device-R2";
    expect(found(JSON.stringify(root))).toContain(`ring-of-replacements ${B1}/devices/device-R1/replaces`);
  });

  test("wiring that goes round is a drawing like any other", () => {
    const root = JSON.parse(smallText());
    // C2 leads from B1 back into B1.
    root.asFound.cables["cable-C2"].sides.b = root.asFound.cables["cable-C2"].sides.a;
    const b1 = root.asFound.enclosures["box-B1"];
    const b2 = root.asFound.enclosures["box-B2"];
    for (const key of Object.keys(b2.places).filter((end) => end.startsWith("cable-C2"))) {
      b1.places[key] = b2.places[key];
      delete b2.places[key];
    }
    expect(found(JSON.stringify(root))).toEqual([]);
  });
});

test("a hundred problems at most are told", () => {
  expect(problemsOf(withValue("/amendments", Array(50_000).fill(1)))).toHaveLength(LIMITS.problems);
});
