import { alarmBehindGfci } from "../../shared-model/rules/checks/alarm-behind-gfci.ts";
import type { Drawing } from "./drawing.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** A smoke alarm in the hall, on R5, behind R1b: X64 of our list of slips. */
const alarm = (drawing = laundryProposed()): Drawing =>
  drawing
    .device("A1", "smoke-alarm", "B6")
    .jumper("y", "B6", "R5.H2", "A1.H")
    .jumper("z", "B6", "R5.N2", "A1.N", { colour: "white" });

const onBreaker = (type: string): Drawing =>
  laundryAsFound().breaker("QG", 20, {}, type).put({ "C1.bk@P": "QG.OUT", "C1.wh@P": "QG.LOAD_N" });

const SYSTEM = { priority: "fire-alarm-system" } as const;

ruleTester(alarmBehindGfci, {
  passes: [
    { name: "no alarm", drawing: () => laundryProposed() },
    { name: "no ground-fault device", drawing: () => alarm(laundryAsFound()) },
    {
      name: "an alarm before R1b",
      drawing: () => alarm().put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" }),
    },
    {
      name: "a smoke alarm behind arc-fault protection, which its room may ask for",
      drawing: () => alarm(onBreaker("breaker-afci-1")),
    },
    { name: "a freezer is another matter", drawing: () => laundryProposed().load("F", "freezer-180", "R3") },
    { name: "no supply", drawing: () => alarm().put({ "C1.bk@P": "cap" }) },
  ],
  finds: [
    {
      name: "a smoke alarm behind R1b",
      drawing: () => alarm(),
      findings: [
        {
          on: "A1",
          severity: "caution",
          data: { devices: "R1b" },
          says: ["R1b in B1 trips", "R1b, R2, R3 and R5", "Feed it before R1b in B1, unless"],
        },
      ],
    },
    {
      name: "a fire alarm system wired in there",
      drawing: () => alarm().setDevice("A1", SYSTEM),
      findings: [
        {
          on: "A1",
          severity: "violation",
          says: ["A1 is a fire alarm system", "Feed it before R1b in B1, from a circuit"],
        },
      ],
    },
    {
      name: "a fire alarm system plugged in behind arc-fault protection",
      drawing: () => onBreaker("breaker-afci-1").load("Unit", "appliance-600", "R5", SYSTEM),
      findings: [
        {
          on: "R5",
          severity: "violation",
          says: ["Unit at R5", "QG in P", "Feed it from another breaker, one without"],
        },
      ],
    },
    {
      name: "an alarm and a system at one outlet: the graver is told",
      drawing: () =>
        laundryProposed()
          .load("Bell", "appliance-600", "R3", { priority: "alarm" })
          .load("Unit", "appliance-600", "R3", { ...SYSTEM, evidence: { priority: "told" } }),
      findings: [{ on: "R3", severity: "violation", basis: "told" }],
    },
    {
      name: "a dual-function breaker trips on a ground fault too",
      drawing: () => alarm(onBreaker("breaker-dual-1")),
      findings: [
        {
          on: "A1",
          severity: "caution",
          data: { devices: "QG" },
          says: ["from another breaker, or use an arc-fault breaker without ground-fault protection"],
        },
      ],
    },
  ],
  cannotTell: { never: "what must not go off is recorded or it is not" },
});
