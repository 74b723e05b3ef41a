import { expect, test } from "vitest";
import { replaceNeedsGfci } from "../../shared-model/rules/checks/replace-needs-gfci.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { ruleTester } from "./rule-tester.ts";
import { inRoom, plan, press, replacing, unchanged } from "./two-states.ts";

/** Places by edition: the lists of 210.8(A), checked place by place in the test of outlet-not-protected. */
ruleTester(replaceNeedsGfci, {
  passes: [
    {
      name: "replaced in a bathroom by a ground-fault receptacle",
      drawing: () => replacing(["bathroom"], "gfci-receptacle-15"),
    },
    {
      name: "behind a ground-fault breaker",
      drawing: () => replacing(["bathroom"], "receptacle-tr-15", { breaker: "breaker-gfci-1" }),
    },
    { name: "replaced where nothing asks for it", drawing: () => replacing(["stair"], "receptacle-tr-15") },
    {
      name: "a finished basement, 2017",
      drawing: () => replacing(["basement-finished"], "receptacle-tr-15", { edition: 2017 }),
    },
    { name: "not replaced", drawing: () => unchanged(inRoom(["bathroom"])) },
    {
      name: "as found, whatever it says that it replaces",
      drawing: () => inRoom(["bathroom"]).setDevice("R1", { replaces: "R0" as never }),
    },
    {
      name: "new where none was: that is the rule for outlets",
      drawing: () => plan(inRoom(["bathroom"]), withNewName()),
    },
    {
      name: "an edition held for counting only",
      drawing: () => replacing(["bathroom"], "receptacle-tr-15", { edition: 2014 }),
    },
  ],
  finds: [
    {
      name: "like for like in an unfinished basement",
      drawing: () => replacing(["basement-unfinished"], "receptacle-tr-15"),
      findings: [
        {
          on: "R2",
          severity: "violation",
          data: { places: "basement-unfinished" },
          says: [
            "R2 in A takes the place of R1, and today Room: unfinished basement needs ground-fault protection",
            "Nearest: GFCI receptacle at R2",
          ],
        },
      ],
    },
    {
      name: "a finished basement, 2020",
      drawing: () => replacing(["basement-finished"], "receptacle-tr-15"),
      findings: [{ on: "R2" }],
    },
    {
      name: "an arc-fault receptacle does not do it",
      drawing: () => replacing(["laundry"], "afci-receptacle-15"),
      findings: [{ on: "R2" }],
    },
  ],
  cannotTell: { never: "what cannot be told of its protection or its room is asked by outlet-not-protected" },
});

/** R9 beside R1, fed from it. */
const withNewName = () =>
  inRoom(["bathroom"])
    .device("R9", "receptacle-tr-15", "A")
    .jumper("h", "A", "R1.H2", "R9.H1")
    .jumper("n", "A", "R1.N2", "R9.N1", { colour: "white" });

test("the same is not said twice: what it hides is the outlet without protection", () => {
  const { findings } = checkDocument(replacing(["bathroom"], "receptacle-tr-15").project(), "proposed");
  const said = findings.filter(({ rule }) => /gfci|protected/.test(rule));
  expect(inShort(said)).toEqual(["replace-needs-gfci R2"]);
  expect(said[0]?.folded).toBe(1);
});

test("its offers mend it", () => {
  const { title, left } = press(
    replacing(["bathroom"], "receptacle-tr-15"),
    "replace-needs-gfci",
    "R2",
    "GFCI receptacle",
  );
  expect(title).toContain("GFCI receptacle at R2, LOAD left empty: protects R2 only");
  expect(left).toEqual([]);
});

test("in a room of the arc-fault list the offer gives both", () => {
  const { title, left } = press(
    replacing(["laundry"], "receptacle-tr-15"),
    "replace-needs-gfci",
    "R2",
    "Dual-function",
  );
  expect(title).toContain("Dual-function receptacle at R2");
  expect(left).toEqual([]);
});
