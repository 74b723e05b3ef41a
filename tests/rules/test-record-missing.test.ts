import { asId, type ReadingId } from "../../shared-model/model/ids.ts";
import type { Project, Reading } from "../../shared-model/model/project.ts";
import type { RecordedTest } from "../../shared-model/model/test-record.ts";
import { testRecordMissing } from "../../shared-model/rules/checks/test-record-missing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { type Drawn, ruleTester } from "./rule-tester.ts";
import { inRoom, plan, replacing, unchanged } from "./two-states.ts";

type Taken = Omit<Reading, "id" | "order">;

/** The document with readings in their order, and whether the work is said to be done. */
const tested = (drawn: Drawn, readings: readonly Taken[], workDone?: boolean): Drawn => ({
  ...(drawn.state !== undefined && { state: drawn.state }),
  project: (): Project => ({
    ...drawn.project(),
    ...(workDone !== undefined && { workDone }),
    readings: Object.fromEntries(
      readings.map((reading, order) => {
        const id = asId<ReadingId>(`m${order}`);
        return [id, { ...reading, id, order }];
      }),
    ),
  }),
});

const pressed = (
  test: "own-test" | "reset" | "plug-in-button",
  at: string,
  outlets: readonly string[],
  more: Partial<RecordedTest> = {},
): Taken => ({
  instrument: test,
  points: [at],
  value: `${outlets.join(", ")} ${test === "reset" ? "came on" : "went dark"}`,
  record: { test, stage: "after", item: at, outlets: outlets as never, ...more },
});

const volts = (stage: "before" | "after"): Taken => ({
  instrument: "meter",
  points: ["R2"],
  value: "121.8",
  unit: "V",
  record: { test: "hot-neutral", stage, item: "R2" },
});

const job = (): Drawn => plan(laundryAsFound(), laundryProposed());
const BEHIND = ["R1b", "R2", "R3", "R5"];
const BOTH = [
  pressed("own-test", "R1b", BEHIND),
  pressed("reset", "R1b", BEHIND),
  pressed("own-test", "R4b", ["R4b"]),
  pressed("reset", "R4b", ["R4b"]),
];

/** R1 and its breaker stay, and by a new cable R2 is fed from the box of R1. */
const extended = (type: string): Drawn => {
  const is = inRoom(["utility"], { type });
  is.box("B", 18).cable("C2", "nm-12-2-g", "A", "B");
  return plan(inRoom(["utility"], { type }), is);
};

ruleTester(testRecordMissing, {
  passes: [
    { name: "the work is not said to be done, and nothing after it is recorded", drawing: () => tested(job(), []) },
    { name: "it is said not to be done", drawing: () => tested(job(), [], false) },
    { name: "only what was there before is recorded", drawing: () => tested(job(), [volts("before")]) },
    { name: "TEST and RESET of both", drawing: () => tested(job(), BOTH, true) },
    {
      name: "as found is asked for nothing",
      drawing: () => ({ ...tested(job(), [], true), state: "as-found" }),
    },
    { name: "the work leaves them alone", drawing: () => tested(unchanged(laundryProposed()), [], true) },
    {
      name: "evidence of both that was kept by hand",
      drawing: () =>
        tested(
          job(),
          [
            ...BOTH.slice(2),
            { instrument: "own-test", points: ["R1b.LOAD_H"], value: "R1b, R2, R3 and R5 off", state: "proposed" },
            { instrument: "reset", points: ["R1b"], value: "all on", state: "proposed" },
          ],
          true,
        ),
    },
    {
      name: "nothing goes dark where nothing was expected to",
      drawing: () =>
        tested(
          replacing(["utility"], "gfci-blank"),
          [
            pressed("own-test", "R2", [], { expected: { kind: "outlets", outlets: [], names: [] } }),
            pressed("reset", "R2", []),
          ],
          true,
        ),
    },
    {
      name: "a plain receptacle at a new cable has no button",
      drawing: () => tested(extended("receptacle-15"), [], true),
    },
    {
      name: "failed first, then tested again and found good",
      drawing: () =>
        tested(
          job(),
          [
            pressed("own-test", "R1b", [], { expected: { kind: "outlets", outlets: BEHIND as never, names: BEHIND } }),
            ...BOTH,
          ],
          true,
        ),
    },
  ],
  finds: [
    {
      name: "the work is done and nothing is recorded: X of the laundry job",
      drawing: () => tested(job(), [], true),
      findings: [
        {
          on: "R1b",
          severity: "advice",
          says: ["no TEST of R1b in B1", "Press TEST on R1b and record every outlet that went dark"],
        },
        { on: "R4b" },
      ],
    },
    {
      name: "it is not said to be done, but the first test after it is recorded",
      drawing: () => tested(job(), [volts("after"), ...BOTH.slice(2)]),
      findings: [{ on: "R1b", says: ["no TEST of R1b"] }],
    },
    {
      name: "a plug-in tester only",
      drawing: () => tested(job(), [pressed("plug-in-button", "R1b", BEHIND), ...BOTH.slice(2)], true),
      findings: [{ on: "R1b", says: ["A plug-in tester alone does not show"] }],
    },
    {
      name: "what the program computed",
      drawing: () =>
        tested(
          job(),
          [
            { instrument: "own-test", points: ["R1b"], value: "opened", state: "proposed", computed: true },
            { instrument: "reset", points: ["R1b"], value: "closed", state: "proposed", computed: true },
            ...BOTH.slice(2),
          ],
          true,
        ),
      findings: [{ on: "R1b" }],
    },
    {
      name: "tested before the work only",
      drawing: () =>
        tested(
          job(),
          [
            pressed("own-test", "R1b", BEHIND, { stage: "before" }),
            pressed("reset", "R1b", BEHIND, { stage: "before" }),
            ...BOTH.slice(2),
          ],
          true,
        ),
      findings: [{ on: "R1b" }],
    },
    {
      name: "TEST without RESET",
      drawing: () => tested(job(), BOTH.slice(0, 3), true),
      findings: [{ on: "R4b", says: ["RESET is not"] }],
    },
    {
      name: "nothing went dark, where four were expected to",
      drawing: () =>
        tested(
          job(),
          [
            ...BOTH,
            pressed("own-test", "R1b", [], { expected: { kind: "outlets", outlets: BEHIND as never, names: BEHIND } }),
          ],
          true,
        ),
      findings: [{ on: "R1b", says: ["made nothing go dark, where 4 outlets should have gone dark"] }],
    },
    {
      name: "a device that stays, with a new cable in its box",
      drawing: () => tested(extended("gfci-receptacle-15"), [], true),
      findings: [{ on: "R1", says: ["no TEST of R1 in A"] }],
    },
    {
      name: "an arc-fault receptacle has the buttons too",
      drawing: () => tested(replacing(["bedroom"], "afci-receptacle-15"), [], true),
      findings: [{ on: "R2" }],
    },
    {
      name: "a new breaker with a TEST, while the one that stays and has another cable now is left alone",
      drawing: () => {
        const made = { breaker: "breaker-gfci-1" };
        const is = inRoom(["utility"], made).breaker("Q2", 20, {}, "breaker-gfci-1").box("B", 18);
        return tested(plan(inRoom(["utility"], made), is.cable("C2", "nm-12-2-g", "P", "B")), [], true);
      },
      findings: [{ on: "Q2", says: ["no TEST of Q2 in P"] }],
    },
  ],
  cannotTell: { never: "the record has the test or it has not" },
});
