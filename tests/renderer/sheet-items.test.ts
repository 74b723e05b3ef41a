import { beforeEach, describe, expect, test } from "vitest";
import { boxItems, neighbour } from "../../renderer/sheet/box-items.ts";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { answersAbout, answersBySubject, findingMarks } from "../../renderer/sheet/finding-marks.ts";
import { targetsOfEnd, targetsOfJumper } from "../../renderer/sheet/landing-targets.ts";
import {
  dispatch,
  documentStore,
  openDocument,
  refusalOf,
  shownInstallation,
} from "../../renderer/state/document-store.ts";
import { landingChoices } from "../../renderer/state/landing-choices.ts";
import type { Finding, Severity, SubjectKind } from "../../shared-model/answers/finding.ts";
import { asId, type ConductorKey, cableEnd, type JumperId } from "../../shared-model/model/ids.ts";
import { boxId, cableId, deviceId, laundryAsFound, spliceId } from "../builders/drawing.ts";

const B1 = boxId("B1");
const end = (cable: string, conductor: string, side: "a" | "b") =>
  cableEnd(cableId(cable), asId<ConductorKey>(conductor), side);
/** The neutral of the hall cable, in splice Y. */
const WHITE = { enclosure: B1, end: end("C5", "wh", "a") };

function b1() {
  const enclosure = shownInstallation().enclosures[B1];
  const drawing = drawingOf(documentStore.get(), B1);
  if (enclosure === undefined || drawing === undefined) throw new Error("The laundry house has a box B1.");
  return { enclosure, drawing };
}

beforeEach(() => openDocument({ project: laundryAsFound() }));

describe("things in a box", () => {
  test("every conductor end, splice, device and cable of the box can be pressed and has a full name", () => {
    const { enclosure, drawing } = b1();
    const names = boxItems(shownInstallation(), enclosure, drawing).map(({ name }) => name);
    const count = (kind: string) => names.filter((name) => name.startsWith(kind)).length;
    // Five 12/2 cables with three conductors each; jumpers p, q, r and t have both ends here.
    expect(count("12/2 C")).toBe(15);
    expect(count("Jumper ")).toBe(8);
    expect(count("Splice ")).toBe(3);
    expect(count("Cable ")).toBe(5);
    expect(names).toContain("12/2 C3 black end at B1, in splice X");
    expect(names).toContain("Jumper p black end at B1, on R1 H");
    expect(new Set(names).size).toBe(names.length);
  });

  test("an arrow key goes to what lies in its direction, not to what is nearer beside it", () => {
    const at = (x: number, y: number) => ({ at: { x, y } });
    const far = at(100, 10);
    const beside = at(20, 80);
    expect(neighbour([far, beside], { x: 0, y: 0 }, "right")).toBe(far);
    expect(neighbour([far, beside], { x: 0, y: 0 }, "down")).toBe(beside);
    expect(neighbour([far, beside], { x: 0, y: 0 }, "left")).toBeUndefined();
  });
});

describe("places for what is held", () => {
  test("every choice of the list is on the sheet too, except lying loose, which is no place", () => {
    const held = { kind: "end", ...WHITE } as const;
    const choices = landingChoices(shownInstallation(), "as-found", WHITE);
    const keys = targetsOfEnd(b1().drawing, held, choices, new Map(), "C1 BK").map(({ key }) => key);
    expect(keys).toEqual(choices.map(({ key }) => key).filter((key) => key !== "loose"));
    expect(keys.length).toBeGreaterThan(5);
  });

  test("a target tells its refusal, else the worst finding that would follow, else nothing against it", () => {
    const held = { kind: "end", ...WHITE } as const;
    const [first, second, third, ...rest] = landingChoices(shownInstallation(), "as-found", WHITE);
    if (first === undefined || second === undefined || third === undefined) throw new Error("There are places.");
    const refused = { ...first, refusal: { code: "no-way", message: "There is no way." } };
    const introduces = (["advice", "danger", "caution"] as const).map((severity) => ({
      rule: "some-rule",
      severity,
      message: `A ${severity}.`,
    }));
    const previews = new Map([
      [second.key, { introduces, repairs: 0, unprotects: [] }],
      [third.key, { introduces: [], repairs: 1, unprotects: [] }],
    ]);
    const targets = targetsOfEnd(b1().drawing, held, [refused, second, third, ...rest], previews, "C1 BK");
    expect(targets.slice(0, 3).map(({ verdict }) => verdict)).toEqual([
      { kind: "refused", reason: "There is no way." },
      { kind: "finding", severity: "danger", message: "A danger." },
      { kind: "open" },
    ]);
  });

  test("a jumper may end anywhere but where it begins", () => {
    const { enclosure, drawing } = b1();
    const from = { kind: "splice", splice: spliceId("X") } as const;
    const held = {
      kind: "jumper",
      enclosure: B1,
      jumper: asId<JumperId>("j1"),
      from,
      awg: "12",
      colour: "black",
    } as const;
    const targets = targetsOfJumper(drawing, enclosure, held, "as-found", refusalOf);
    expect(targets.map(({ name }) => name)).not.toContain("X");
    expect(targets.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Y", "Z", "R1 H", "R1 N", "R1 G", "Box ground screw"]),
    );
    expect(targets.every(({ verdict }) => verdict.kind === "open")).toBe(true);
  });
});

describe("findings at their subjects", () => {
  const finding = (kind: SubjectKind, id: string, severity: Severity, message: string): Finding => ({
    key: `${message} ${id}`,
    rule: "some-rule",
    severity,
    status: "stable",
    state: "as-found",
    subjects: [{ kind, id, name: id }],
    message,
    numbers: {},
    folded: 0,
    foldedSubjects: [],
  });

  test("one sign a thing, the worst, with a count; the device's outlet counts with the device", () => {
    const { enclosure, drawing } = b1();
    const answers = [
      finding("device", deviceId("R1"), "advice", "first"),
      finding("outlet", deviceId("R1"), "violation", "second"),
      finding("splice", spliceId("X"), "caution", "third"),
      finding("enclosure", B1, "violation", "fourth"),
      finding("device", deviceId("R2"), "danger", "in another box"),
    ];
    const about = answersAbout(enclosure, answersBySubject(answers, []));
    const marks = findingMarks(drawing, about);
    const told = marks
      .map(({ worst, count, messages }) => `${worst} ${count} ${[...messages].sort().join(",")}`)
      .sort();
    expect(told).toEqual(["caution 1 third", "violation 1 fourth", "violation 2 first,second"]);
    const splice = drawing.splices.find(({ splice: id }) => id === spliceId("X"));
    const mark = marks.find(({ worst }) => worst === "caution");
    expect(Math.abs((mark?.at.y ?? 0) - (splice?.labelAt.y ?? 0))).toBeLessThan(20);
  });

  test("a sign at a capped end stands beside the cap, which stays free to be taken", () => {
    const { enclosure: was } = b1();
    const capped = [end("C3", "bk", "a"), end("C5", "wh", "a")];
    for (const one of capped)
      expect(dispatch({ command: "cap-end", args: { state: "as-found", enclosure: was.id, end: one } }).ok).toBe(true);
    const { enclosure, drawing } = b1();
    const about = answersAbout(
      enclosure,
      answersBySubject(
        capped.map((one) => finding("end", one, "caution", "half")),
        [],
      ),
    );
    const marks = findingMarks(drawing, about);
    const items = boxItems(shownInstallation(), enclosure, drawing).filter(({ subject }) => subject.kind === "end");
    expect(marks).toHaveLength(2);
    // 12: how far a press on a sign reaches.
    for (const { at } of marks)
      for (const { at: grip } of items) expect(Math.hypot(at.x - grip.x, at.y - grip.y)).toBeGreaterThan(12 + 8);
    for (const [index, { at }] of marks.entries()) {
      const cap = drawing.caps.find((each) => each.end === capped[index]);
      expect(Math.hypot(at.x - (cap?.at.x ?? 0), at.y - (cap?.at.y ?? 0))).toBeLessThan(40);
    }
  });
});
