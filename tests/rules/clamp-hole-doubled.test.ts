import { describe, expect, test } from "vitest";
import { clampHoleDoubled } from "../../shared-model/rules/checks/clamp-hole-doubled.ts";
import { Drawing } from "./drawing.ts";
import { fixOf, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** Both protected blacks on the LOAD of R1b instead of a pigtail. */
const onLoad = (one: string, other: string): Drawing =>
  laundryProposed()
    .removeJumper("c")
    .put({ "C2.bk@B1": `R1b.LOAD_H#${one}`, "C5.bk@B1": `R1b.LOAD_H#${other}` });

ruleTester(clampHoleDoubled, {
  passes: [
    { name: "one conductor in a hole", drawing: () => laundryProposed() },
    { name: "two conductors, one in each hole", drawing: () => onLoad("1", "2") },
    {
      name: "two under a side screw are another matter",
      drawing: () => laundryProposed().put({ "C6.bk@B2": "R2.H1" }),
    },
    {
      name: "a push-in terminal: the second may stand under its screw",
      drawing: () => laundryProposed().setDevice("R2", { entryKind: "push-in" }).put({ "C6.bk@B2": "R2.H1" }),
    },
  ],
  finds: [
    {
      name: "two in one hole, the other free",
      drawing: () => onLoad("1", "1"),
      findings: [
        {
          on: "R1b LOAD H",
          severity: "violation",
          data: { conductors: 2, holes: 2, allowed: 1 },
          says: ["C2 BK and C5 BK in one hole", "Move one to the free hole"],
        },
      ],
    },
    {
      name: "three for two holes",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "R1b.LOAD_H#1", "C5.bk@B1": "R1b.LOAD_H#2" }),
      findings: [{ on: "R1b LOAD H", data: { conductors: 3, holes: 2, allowed: 1 }, says: ["bring one pigtail"] }],
    },
    {
      name: "four, two in each",
      drawing: () =>
        laundryProposed().put({ "C2.bk@B1": "R1b.LOAD_H#1", "C5.bk@B1": "R1b.LOAD_H#2", "C3.bk@B1": "R1b.LOAD_H#2" }),
      findings: [{ on: "R1b LOAD H", data: { conductors: 4, holes: 2, allowed: 1 } }],
    },
    {
      name: "a bare in the hole of a hot: neither goes to the hole beside it",
      drawing: () => laundryProposed().put({ "C3.cu@B4": "R4b.LINE_H#1" }),
      findings: [
        {
          on: "R4b LINE H",
          data: { conductors: 2, holes: 2, allowed: 1 },
          says: ["Here are a hot and a ground: take off what does not belong on this terminal."],
        },
      ],
    },
    {
      name: "a white marked as a hot is a hot",
      drawing: () => {
        const drawing = onLoad("1", "1").put({ "C2.bk@B1": "cap", "C2.wh@B1": "R1b.LOAD_H#1" });
        drawing.at("B1").places["C2.wh.a" as never] = {
          at: { kind: "terminal", device: "R1b", terminal: "LOAD_H", hole: 1 },
          markedAs: "black",
        } as never;
        return drawing;
      },
      findings: [{ on: "R1b LOAD H", says: ["Move one to the free hole"] }],
    },
    {
      name: "a white among the blacks",
      drawing: () => onLoad("1", "2").put({ "C2.wh@B1": "R1b.LOAD_H#1" }),
      findings: [{ on: "R1b LOAD H", says: ["Here are a hot and a neutral"] }],
    },
  ],
  cannotTell: { never: "the hole of every landed conductor is recorded" },
});

describe("its fix", () => {
  const RULE = "clamp-hole-doubled";

  test("moves one to the free hole", () => {
    const { title, project } = tryFix(onLoad("2", "2"), RULE, "R1b LOAD H");
    expect(title).toBe("Put one conductor in each hole of R1b LOAD H");
    const { places = {} } = project.proposed?.enclosures["B1" as never] ?? {};
    const holes = Object.values(places).flatMap(({ at }) =>
      at.kind === "terminal" && at.terminal === "LOAD_H" ? [at.hole] : [],
    );
    expect(holes.sort()).toEqual([1, 2]);
  });

  test("splices three and brings one pigtail", () => {
    const drawing = laundryProposed().put({ "C2.bk@B1": "R1b.LOAD_H#1", "C5.bk@B1": "R1b.LOAD_H#2" });
    const { title, left } = tryFix(drawing, RULE, "R1b LOAD H");
    expect(title).toBe("Splice the conductors on R1b LOAD H and bring one pigtail to it");
    expect(left.filter((one) => !one.startsWith("fill-nearly-full"))).toEqual([]);
  });

  test("is withheld where the two are of different kinds", () => {
    const hot = onLoad("1", "1").put({ "C5.bk@B1": "cap", "C5.wh@B1": "R1b.LOAD_H#1" });
    expect(fixOf(hot, RULE, "R1b LOAD H")).toBeUndefined();
    const ground = laundryProposed().put({ "C1.bk@P": "cap", "C3.cu@B4": "R4b.LINE_N#1" });
    expect(fixOf(ground, RULE, "R4b LINE N")).toBeUndefined();
  });

  test("is withheld where no connector takes them", () => {
    const drawing = new Drawing().box("B", 42).device("R", "receptacle-20", "B");
    for (const [name, item] of [
      ["C1", "al-12-2-g"],
      ["C2", "al-12-2-g"],
      ["C3", "nm-12-2-g"],
    ] as const)
      drawing.cable(name, item, "country", "B").put({ [`${name}.bk@B`]: "R.H1#1" });
    expect(fixOf(drawing, RULE, "R H")).toBeUndefined();
  });
});
