import { expect, test } from "vitest";
import { type Migration, migrate, migrations } from "../../shared-model/format/migrations.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { FORMAT_VERSION } from "../../shared-model/model/project.ts";
import { smallProject, smallText } from "./small-document.ts";

test("the chain leads from the first version to this one, a step each", () => {
  expect(migrations.map(({ from }) => from)).toEqual(
    Array.from({ length: FORMAT_VERSION - 1 }, (_, index) => index + 1),
  );
});

/** An invented past: version 1 called the title a name, version 2 had no notes. */
const INVENTED: readonly Migration[] = [
  {
    from: 1,
    migrate: ({ name, ...rest }) => ({ ...rest, title: name }),
  },
  { from: 2, migrate: (document) => ({ ...document, notes: "none in version 2" }) },
];

const oldText = (version: number): string => {
  const { title, notes, ...rest } = JSON.parse(smallText());
  const naming = version === 1 ? { name: title } : { title };
  return JSON.stringify({ ...rest, ...naming, version, ...(version === 3 && { notes }), later: { kept: true } });
};

test("an old document is brought up to date a step at a time, and unknown fields come with it", () => {
  for (const [version, notes] of [
    [1, "none in version 2"],
    [2, "none in version 2"],
    [3, ""],
  ] as const) {
    const result = parseProject(oldText(version), { version: 3, chain: INVENTED });
    expect(result.ok && result.value).toEqual({
      project: { ...smallProject(), version: 3, notes, later: { kept: true } },
      readOnly: false,
      fileVersion: version,
    });
  }
});

test("an old document that is not edited keeps its bytes, too", () => {
  const text = oldText(1);
  const result = parseProject(text, { version: 3, chain: INVENTED });
  if (!result.ok) throw new Error("refused");
  expect(textToSave(result.value.project, { text, project: result.value.project })).toBe(text);
});

test("an old document is judged before a step meets it", () => {
  const reader = { version: 3, chain: INVENTED };
  const bad = oldText(1).replace('"name"', '"later": {"__proto__": 1}, "name"');
  expect(parseProject(bad, reader)).toMatchObject({ ok: false, problems: [{ code: "reserved-key" }] });
  const twice = oldText(1).replace('"name"', '"name": "x", "name"');
  expect(parseProject(twice, reader)).toMatchObject({ ok: false, problems: [{ code: "duplicate-key" }] });
});

test("what a step leaves out is a problem with its path", () => {
  const chain: readonly Migration[] = [{ from: 1, migrate: ({ title: _, ...rest }) => rest }];
  expect(parseProject(smallText(), { version: 2, chain })).toMatchObject({
    ok: false,
    problems: [{ code: "missing-field", path: "/title" }],
  });
});

test("a gap in the chain is a fault of the program", () => {
  expect(() => migrate({}, 1, INVENTED.slice(1), 3)).toThrow("No migration leads from version 1 to 2.");
});

test("a newer document opens to be looked at where it allows that, and is refused where not", () => {
  const newer = (version: number, minReader: number) =>
    smallText().replace('"version": 1', `"version": ${version}`).replace('"minReader": 1', `"minReader": ${minReader}`);
  expect(parseProject(newer(7, 1))).toMatchObject({ ok: true, value: { readOnly: true, fileVersion: 7 } });
  expect(parseProject(newer(7, 2))).toEqual({
    ok: false,
    problems: [
      {
        code: "too-new",
        path: "/minReader",
        message: "The file is of version 7, and this program reads versions up to 1. Open it with a newer program.",
      },
    ],
  });
});

test.each([
  ["no version", '"version": 1,', "", "/version"],
  ["version 0", '"version": 1', '"version": 0', "/version"],
  ["version one half", '"version": 1', '"version": 0.5', "/version"],
  ["a text for a version", '"version": 1', '"version": "1"', "/version"],
  ["a reader above the version", '"minReader": 1', '"minReader": 2', "/minReader"],
])("%s is refused", (_, from, to, path) => {
  // The version is the last field, so it leaves a comma behind.
  const text = smallText()
    .replace(from, to)
    .replace(/"title": "Small",\s*}/, '"title": "Small"}');
  const broken = _ === "no version" ? JSON.stringify({ ...JSON.parse(smallText()), version: undefined }) : text;
  expect(parseProject(broken)).toMatchObject({ ok: false, problems: [{ path }] });
});
