/**
 * What the work changes, counted by hand: one move for an end taken off, one for an end put on. The laundry job, its
 * variants and the exchange of LINE and LOAD were counted on paper from the drawing of the job before the program was run;
 * the hot, neutral and ground lists of B1 agree with an independent exhaustive search over the homes of its joints.
 */
import { describe, expect, test } from "vitest";
import type { ScopeBox, ScopeDifference } from "../../shared-model/answers/scope.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { makeUp } from "../../shared-model/planning/make-up.ts";
import { scopeDifference } from "../../shared-model/planning/scope/difference.ts";
import { foldedNames } from "../../shared-model/planning/scope/folded-names.ts";
import { fillEdition } from "../../shared-model/rules/fill-edition.ts";
import { boxId, deviceId, drawing, laundryDrawing } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { down, intent } from "./worked-boxes.ts";

function scopeOf(project: Project): ScopeDifference {
  if (project.proposed === undefined) throw new Error("Nothing is proposed.");
  return scopeDifference(project.asFound, project.proposed, fillEdition(project));
}

function boxOf(scope: ScopeDifference, name: string): ScopeBox {
  const box = scope.boxes.find((one) => one.name === name);
  if (box === undefined) throw new Error(`${name} is not in the scope.`);
  return box;
}

/** "moved C2 BK: X > HD". */
const told = ({ lines }: ScopeBox): readonly string[] =>
  lines.map(({ kind, title, was, will }) => `${kind} ${title}: ${was === undefined ? "" : `${was} > `}${will}`);

describe("the laundry job as drawn", () => {
  const scope = scopeOf(openSample("laundry-proposed"));

  test("B1: 10 off, 16 on, three new joints, one device; B4: 3 and 3", () => {
    expect(boxOf(scope, "B1").counts).toMatchObject({
      detach: 10,
      attach: 16,
      newJoints: 3,
      devices: 1,
      newJumpers: 3,
    });
    expect(boxOf(scope, "B4").counts).toMatchObject({ detach: 3, attach: 3, newJoints: 0, devices: 1, newJumpers: 0 });
    expect(scope.boxes.map(({ name, work }) => `${name} ${work}`)).toEqual(["B1 opened", "B4 opened"]);
    expect(scope.totals).toMatchObject({ detach: 13, attach: 19, newJoints: 3, devices: 2, boxes: 2 });
  });

  test("B1 line by line", () => {
    const lines = told(boxOf(scope, "B1"));
    for (const line of [
      "removed R1 duplex receptacle: out",
      "new R1b GFCI receptacle: in its place",
      "removed internal clamps: 2.25 in³ > out",
      "replaced entries of C1 to C5: internal clamp > external connector",
      "kept C1 C3 C4 BK: X is HL",
      "kept C1 C3 C4 WH: Y is NL",
      "kept C1 to C4 bare: Z is E1",
      "moved C2 BK: X > HD",
      "moved C5 BK: X > HD",
      "moved a, pigtail p of R1: R1 H > R1b LINE H",
      "new c BK, 6 to 8 in.: HD to R1b LOAD H",
      "moved C2 WH: Y > ND",
      "moved C5 WH: Y > ND",
      "moved b, pigtail q of R1: R1 N > R1b LINE N",
      "new d WH, 6 to 8 in.: ND to R1b LOAD N",
      "moved C5 bare: Z > E2",
      "moved e, ground pigtail r of R1: Z, R1 G > E2, R1b G",
      "moved f, ground pigtail t: Z > E2",
      "new g bare, 6 to 8 in.: E1 to E2",
    ])
      expect(lines).toContain(line);
    // Three lines more, for the three new joints, each with how many it holds.
    expect(
      lines.filter((line) => /^new (HD|ND): joint of 3, .*medium$|^new E2: joint of 4, .*large$/.test(line)),
    ).toHaveLength(3);
    expect(lines).toHaveLength(22);
  });

  test("old and new places are there as data too", () => {
    const moved = boxOf(scope, "B1").changes.find(({ item }) => item.name === "C2 BK");
    expect(moved).toMatchObject({
      kind: "moved",
      states: "both",
      was: { at: { kind: "splice", splice: "splice-X" } },
      will: { at: { kind: "splice", splice: "splice-HD" } },
      conductor: { awg: "12", colour: "black", code: "BK" },
      detach: 1,
      attach: 1,
    });
    const { homes } = boxOf(scope, "B1");
    expect(homes.map(({ name, home }) => `${name} ${home?.name ?? "new"}`)).toEqual([
      "HL X",
      "NL Y",
      "E1 Z",
      "HD new",
      "ND new",
      "E2 new",
    ]);
  });

  test("B4 is fed on LINE alone, and a label opens no box", () => {
    expect(told(boxOf(scope, "B4"))).toContain("new R4b GFCI receptacle: in its place, LINE only");
    expect(scope.elsewhere.map(({ kind, item }) => `${kind} ${item.name}`)).toEqual([
      "new label on R2",
      "new label on R3",
      "new label on R5",
    ]);
  });

  test("one breaker is opened, for both boxes", () => {
    for (const name of ["B1", "B4"])
      expect(boxOf(scope, name).breakers).toMatchObject([
        { name: "Q14", ratingA: 20, multiwire: false, withPoles: [] },
      ]);
  });
});

describe("variants", () => {
  const replace = [{ device: deviceId("R1"), type: "dual-function-receptacle-15" }];
  const made = (protect: (cable: string) => boolean): Project => {
    const asked = intent("C1", {
      downstream: ["C2", "C3", "C4", "C5"].map((cable) => down(cable, protect(cable))),
      replace,
    });
    const done = makeUp(laundryDrawing().propose().project, "proposed", boxId("B1"), asked);
    if (!done.ok) throw new Error(done.refusal.message);
    return done.value.project;
  };

  test("A, made up by the program: the same moves as by hand", () =>
    expect(boxOf(scopeOf(made((cable) => cable === "C2" || cable === "C5")), "B1").counts).toMatchObject({
      detach: 10,
      attach: 16,
      newJoints: 3,
      devices: 1,
    }));

  test("B, everything behind the device: only the supply pair leaves, 8 off, 10 on, one new joint", () =>
    expect(boxOf(scopeOf(made(() => true)), "B1").counts).toMatchObject({
      detach: 8,
      attach: 10,
      newJoints: 1,
      devices: 1,
    }));

  test("C, a device that feeds on by its screws: all its ends come off and go on again, nothing else", () => {
    const plan = laundryDrawing().propose();
    plan.run("replace-device", {
      device: deviceId("R2"),
      id: deviceId("R2b"),
      type: "gfci-receptacle-15",
      name: "R2b",
    });
    for (const [end, spot] of [
      ["C2.bk@B2", "R2b.LINE_H"],
      ["C2.wh@B2", "R2b.LINE_N"],
      ["C6.bk@B2", "R2b.LOAD_H"],
      ["C6.wh@B2", "R2b.LOAD_N"],
    ] as const)
      plan.land(end, spot);
    // Four conductors and the ground pigtail.
    expect(boxOf(scopeOf(plan.project), "B2").counts).toMatchObject({ detach: 5, attach: 5, newJoints: 0, devices: 1 });
  });

  test("LINE and LOAD exchanged: four pigtails off the device and on again", () => {
    const job = openSample("laundry-proposed");
    const { proposed, ...rest } = job;
    if (proposed === undefined) throw new Error("Nothing is proposed.");
    const found = new Drawing({ ...rest, asFound: proposed }, "as-found");
    const sides: readonly (readonly [string, string])[] = [
      ["p.b", "LINE_H"],
      ["q.b", "LINE_N"],
      ["c.b", "LOAD_H"],
      ["d.b", "LOAD_N"],
    ];
    for (const [end] of sides) found.land(end, "capped");
    for (const [end, side] of sides)
      found.land(end, `R1b.${side.startsWith("LINE") ? side.replace("LINE", "LOAD") : side.replace("LOAD", "LINE")}`);
    const plan = found.propose();
    for (const [end] of sides) plan.land(end, "capped");
    for (const [end, side] of sides) plan.land(end, `R1b.${side}`);
    const scope = scopeOf(plan.project);
    expect(scope.totals).toMatchObject({ detach: 4, attach: 4, newJoints: 0, devices: 0, boxes: 1 });
  });
});

describe("what was drawn anew and is the same thing", () => {
  const plan = laundryDrawing().propose();
  plan.run("replace-device", { device: deviceId("R1"), id: deviceId("R1b"), type: "gfci-receptacle-15", name: "R1b" });
  plan.remove({ kind: "jumper", id: plan.end("p.a").key.slice(0, -2) as never });
  plan
    .splice("HL", "B1", "twist-large", "C1.bk@B1", "C3.bk@B1", "C4.bk@B1")
    .splice("HD", "B1", "twist-medium", "C2.bk@B1", "C5.bk@B1")
    .jumper("a", "B1", "splice HL", "R1b.LINE_H")
    .jumper("c", "B1", "splice HD", "R1b.LOAD_H");
  const box = boxOf(scopeOf(plan.project), "B1");

  test("a joint is the one with the most of its members, a pigtail the one that still hangs in its joint", () => {
    expect(plan.project.proposed?.enclosures[boxId("B1")]?.splices).not.toHaveProperty("splice-X");
    expect(box.homes.find(({ name }) => name === "HL")?.home?.name).toBe("X");
    expect(box.homes.find(({ name }) => name === "HD")).not.toHaveProperty("home");
    const lines = told(box);
    expect(lines).toContain("kept C1 C3 C4 BK: X is HL");
    expect(lines).toContain("moved a, pigtail p of R1: R1 H > R1b LINE H");
    expect(lines).toContain("new c BK, 6 to 8 in.: HD to R1b LOAD H");
  });

  test("its moves are those of the same work under the old ids: of hots three off and five on", () => {
    const hot = box.changes.filter(({ conductor, item }) => item.kind === "end" && conductor?.code === "BK");
    expect(hot.reduce((sum, one) => sum + one.detach, 0)).toBe(3);
    expect(hot.reduce((sum, one) => sum + one.attach, 0)).toBe(5);
    expect(box.counts.newJoints).toBe(1);
  });
});

test("an end that goes to the same screw of another device is moved", () => {
  const house = drawing().box("B1").device("R1", "receptacle-15", "B1").device("R2", "receptacle-15", "B1");
  house.outside("C1", "B1").land("C1.bk@B1", "R1.H1");
  const plan = house.propose().land("C1.bk@B1", "R2.H1");
  const box = boxOf(scopeOf(plan.project), "B1");
  expect(box.counts).toMatchObject({ detach: 1, attach: 1, devices: 0 });
  expect(told(box)).toContain("moved C1 BK: R1 H > R2 H");
});

test("names in a row stand for those between them from four on", () => {
  expect(foldedNames(["C1", "C3", "C4"])).toBe("C1 C3 C4");
  expect(foldedNames(["C4", "C2", "C1", "C3"])).toBe("C1 to C4");
  expect(foldedNames(["C10", "C9", "C8", "C11", "C2"])).toBe("C2 C8 to C11");
  expect(foldedNames(["a", "b", "C9", "C9"])).toBe("a b C9");
});
