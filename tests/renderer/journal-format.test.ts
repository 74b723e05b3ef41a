/** The journal of unsaved work as text: what is read of it when it is whole, torn, rotten or newer. */

import type { Patch } from "immer";
import { describe, expect, test } from "vitest";
import { crc32 } from "../../renderer/platform/crc32.ts";
import { journalPatches, journalStart, readJournal } from "../../renderer/platform/journal-format.ts";

const HEAD = { name: "Küche", base: { name: "küche.loadside", sha256: "ab".repeat(32) } };
const STEPS: readonly (readonly Patch[])[] = [
  [{ op: "replace", path: ["title"], value: "Küche 1" }],
  [
    { op: "add", path: ["rooms", "r1"], value: { id: "r1", name: "a\nb \u{1f50c}" } },
    { op: "remove", path: ["rooms", "r0"] },
  ],
  [{ op: "replace", path: ["title"], value: "Küche 3" }],
];
const SNAPSHOT = '{\n "title": "Küche"\n}\n';
const lines = [
  ...journalStart(HEAD, SNAPSHOT, 100),
  ...STEPS.map((patches, index) => journalPatches(index + 2, patches, 101 + index)),
];
const whole = lines.join("");
const read = (text: string) => {
  const outcome = readJournal(text);
  return outcome.ok ? outcome.journal : outcome.why;
};

test("the checksum is the usual one", () => {
  // Check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms: 0xcbf43926 for "123456789".
  expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
});

test("a whole journal comes back as it was written", () => {
  expect(read(whole)).toEqual({ head: HEAD, snapshot: SNAPSHOT, steps: STEPS, at: 103, torn: false });
});

test("a journal that was cut anywhere gives every step before the cut and never half of one", () => {
  const bytes = new TextEncoder().encode(whole);
  const ends: number[] = [];
  let end = 0;
  // The line break after an entry may be missing: the entry itself is whole.
  for (const line of lines) {
    end += new TextEncoder().encode(line).length;
    ends.push(end - 1);
  }
  for (let cut = 0; cut <= bytes.length; cut += 1) {
    const complete = ends.filter((each) => each <= cut).length;
    const got = read(new TextDecoder().decode(bytes.subarray(0, cut)));
    if (complete < 2) expect(got, `cut at ${cut}`).toBe("damaged");
    else expect(got, `cut at ${cut}`).toMatchObject({ snapshot: SNAPSHOT, steps: STEPS.slice(0, complete - 2) });
  }
});

test("a byte that is not what was written ends the journal before its line", () => {
  const bytes = new TextEncoder().encode(whole);
  const starts = lines.map((_, index) => new TextEncoder().encode(lines.slice(0, index).join("")).length);
  for (let at = 0; at < bytes.length; at += 1) {
    const rotten = bytes.slice();
    rotten[at] = (rotten[at] ?? 0) ^ 1;
    const line = starts.filter((start) => start <= at).length - 1;
    const got = read(new TextDecoder().decode(rotten));
    if (line < 2) expect(got, `byte ${at}`).toBe("damaged");
    else expect(got, `byte ${at}`).toMatchObject({ steps: STEPS.slice(0, line - 2), torn: true });
  }
});

describe("what does not belong together", () => {
  test("a missing step ends it: what follows was made of another document", () => {
    const [head = "", snapshot = "", first = "", , third = ""] = lines;
    expect(read(head + snapshot + first + third)).toMatchObject({ steps: STEPS.slice(0, 1), torn: true });
  });

  test("a step that comes twice ends it", () => {
    const [head = "", snapshot = "", first = ""] = lines;
    expect(read(head + snapshot + first + first)).toMatchObject({ steps: STEPS.slice(0, 1), torn: true });
  });

  test("text of another kind is damaged", () => {
    for (const text of ["", "\n", "{}", SNAPSHOT, lines[1] ?? "", "00000000 2 {}\n"])
      expect(read(text)).toBe("damaged");
  });
});

test("a journal of a newer version is not read as if it were known", () => {
  const body = JSON.stringify({ place: 0, kind: "head", format: "loadside-journal", version: 2, head: HEAD });
  const bytes = new TextEncoder().encode(body);
  const head = `${crc32(bytes).toString(16).padStart(8, "0")} ${bytes.length} ${body}\n`;
  expect(read(head + lines.slice(1).join(""))).toBe("newer");
});
