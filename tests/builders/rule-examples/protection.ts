import type { RoomKind } from "../../../shared-model/model/room.ts";
import { milliamps } from "../../../shared-model/units/quantity.ts";
import type { Drawing } from "../../rules/drawing.ts";
import { multiwire } from "../../rules/laundry.ts";
import { plan } from "../../rules/two-states.ts";
import { type Drawn, type Examples, signedAt, slip } from "./example.ts";
import { behindGfci, boxIn, feedOf, grounds, LARGE, one, onLine, through } from "./scenes.ts";

/** The two legs, their boxes closed. */
const legs = (): Drawing => {
  const drawing = multiwire().room("Dining", ["utility"], { name: "Workroom" });
  for (const box of ["JB", "BA", "BB"]) drawing.setBox(box, { internalClamps: "none", cover: "device-plate" });
  return drawing.setBox("JB", LARGE);
};

const beforeSplit = (): Drawing =>
  legs()
    .device("G1", "gfci-receptacle-15", "JB")
    .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
    .jumper("y", "JB", "G1.LOAD_H", "jA")
    .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" })
    .jumper("x", "JB", "jE", "G1.G", { colour: "bare" });

const afterSplit = (): Drawing => {
  const drawing = legs().setDevice("RA", { type: "gfci-receptacle-15" });
  return drawing.put({ "MA.bk@BA": "RA.LINE_H", "MA.wh@BA": "RA.LINE_N" });
};

/** Switch S1 between C1 and LINE of G1. */
const switched = (): Drawing =>
  behindGfci()
    .setBox("B1", { gangs: 2 })
    .setSplice("E1", { connector: "lever-5" })
    .device("S1", "switch-single-pole", "B1")
    .put({ "C1.bk@B1": "S1.C" })
    .jumper("s1", "B1", "S1.L", "G1.LINE_H")
    .jumper("g9", "B1", "E1", "S1.G", { colour: "bare" });

const leaking = (ma: number): Drawing => behindGfci().load("Pump", "appliance-600", "R2", { leakMa: milliamps(ma) });

/** Another device in the place of R1. */
function replaced(kind: RoomKind, type: string): Drawn {
  const was = one(kind);
  const is = one(kind);
  const closed = kind === "outdoor" ? ({ cover: "weatherproof-in-use", exposure: "wet" } as const) : {};
  is.removeJumper("g1");
  delete is.at("B1").devices["R1" as never];
  const [hot, neutral] = feedOf(type);
  is.device("R2", type, "B1", { replaces: "R1" as never })
    .put({ "C1.bk@B1": `R2.${hot}`, "C1.wh@B1": `R2.${neutral}` })
    .jumper("g1", "B1", "E1", "R2.G", { colour: "bare" });
  return plan(was.setBox("B1", closed), is.setBox("B1", closed));
}

const replacement = (kind: RoomKind, wrong: string, right: string) => ({
  show: ["B1"],
  wrong: () => replaced(kind, wrong),
  right: () => replaced(kind, right),
});

/** New receptacle R2 in a bedroom, by new cable C2 from the box of R1. */
function extended(breaker: string): Drawn {
  const was = one("utility", "receptacle-15", { breaker });
  const is = boxIn(one("utility", "receptacle-15", { breaker }), "B2", "bedroom").device(
    "R2",
    "receptacle-tr-15",
    "B2",
  );
  is.cable("C2", "nm-12-2-g", "B1", "B2")
    .setSplice("E1", { connector: "lever-5" })
    .put({ "C2.bk@B1": "R1.H2", "C2.wh@B1": "R1.N2", "C2.cu@B1": "E1", "C2.bk@B2": "R2.H1", "C2.wh@B2": "R2.N1" });
  grounds(is, "B2", ["C2"], "R2");
  boxIn(was, "B9", "bedroom");
  delete was.enclosures.B9;
  return plan(was, is);
}

const onBreaker = (neutral: string): Drawing =>
  one("utility", "receptacle-15", { breaker: "breaker-gfci-1" }).put({ "C1.wh@P": neutral });

/** G1 comes new for R1 before R2, and the work is done; what was pressed after it is recorded. */
function finished(...pressed: readonly ("own-test" | "reset")[]): Drawn {
  const drawn = plan(through(), behindGfci());
  const outlets = ["G1", "R2"];
  const readings = pressed.map((test, order) => [
    `m${order}`,
    {
      id: `m${order}`,
      instrument: test,
      points: ["G1"],
      value: `${outlets.join(", ")} ${test === "reset" ? "came on" : "went dark"}`,
      record: { test, stage: "after", item: "G1", box: "B1", outlets },
      order,
    },
  ]);
  return {
    state: "proposed",
    project: () => ({ ...drawn.project(), workDone: true, readings: Object.fromEntries(readings) }),
  };
}

/** LINE and LOAD, who is protected by what, and what must not go off. */
export const protectionExamples: Examples = {
  "line-load-swapped": slip("B1", behindGfci, (right) =>
    right.exchange("G1", "LINE_H", "LOAD_H").exchange("G1", "LINE_N", "LOAD_N"),
  ),
  "line-load-half-swapped": slip("B1", behindGfci, (right) => right.exchange("G1", "LINE_N", "LOAD_N")),
  "hot-both-sides": slip("B1", behindGfci, (right) => right.jumper("y", "B1", "G1.LINE_H#2", "G1.LOAD_H#2")),
  "neutral-both-sides": slip("B1", behindGfci, (right) =>
    right.jumper("y", "B1", "G1.LINE_N#2", "G1.LOAD_N#2", { colour: "white" }),
  ),
  "downstream-neutral-on-line": signedAt(
    "end C2.wh.a",
    slip("B1", behindGfci, (right) => right.put({ "C2.wh@B1": "G1.LINE_N#2" })),
  ),
  "downstream-hot-on-line": signedAt(
    "end C2.bk.a",
    slip("B1", behindGfci, (right) => right.put({ "C2.bk@B1": "G1.LINE_H#2" })),
  ),
  "outlet-not-protected": slip(
    "B1",
    () => one("bathroom", "gfci-receptacle-15"),
    () => one("bathroom"),
  ),
  "wish-not-protected": signedAt(
    "end C2.bk.a",
    slip("B1", () => behindGfci().wish({ R2: "protect" }, "the customer"), onLine),
  ),
  "gfci-behind-gfci": signedAt(
    "end C2.bk.a",
    slip(
      "B1",
      () => onLine(behindGfci("G2", "gfci-receptacle-15")),
      () => behindGfci("G2", "gfci-receptacle-15"),
    ),
  ),
  "gfci-no-neutral": slip("B1", behindGfci, (right) => right.put({ "C1.wh@B1": "cap" })),
  "gfci-switched-supply": { show: ["B1"], wrong: switched, right: () => behindGfci() },
  "gfci-load-empty-tape": slip("B1", () => behindGfci().wish({ R2: "protect" }), onLine),
  "shared-neutral-upstream-gfci": {
    show: ["JB"],
    showRight: ["BA"],
    wrong: beforeSplit,
    right: afterSplit,
  },
  "gfci-breaker-neutral-on-bar": slip(
    "P",
    () => onBreaker("Q1.LOAD_N"),
    () => onBreaker("P-NB.BAR"),
  ),
  "alarm-behind-gfci": signedAt(
    "end C2.bk.a",
    slip(
      "B1",
      () => onLine(behindGfci("A1", "smoke-alarm", "stair")),
      () => behindGfci("A1", "smoke-alarm", "stair"),
    ),
  ),
  "freezer-shares-trip": slip(
    "B1 B2",
    () => onLine(behindGfci()).load("Freezer", "freezer-180", "R2"),
    () => behindGfci().load("Freezer", "freezer-180", "R2"),
  ),
  "lighting-behind-gfci-egress": signedAt(
    "end C2.bk.a",
    slip(
      "B1",
      () => onLine(behindGfci("L1", "luminaire-60", "stair")),
      () => behindGfci("L1", "luminaire-60", "stair"),
    ),
  ),
  "standing-leak-budget": slip(
    "B1 B2",
    () => leaking(0.8),
    () => leaking(2.2),
  ),
  "half-switched-on-gfci": slip(
    "B1",
    () => one("utility", "gfci-receptacle-15"),
    (right) => right.setDevice("R1", { wasSplit: true }),
  ),
  "test-record-missing": { show: ["B1", "B2"], wrong: () => finished(), right: () => finished("own-test", "reset") },
  "replace-needs-gfci": replacement("bathroom", "receptacle-tr-15", "gfci-receptacle-15"),
  "replace-needs-afci": replacement("bedroom", "receptacle-tr-15", "afci-receptacle-15"),
  "extension-needs-afci": signedAt("cable C2", {
    show: ["B1", "B2"],
    wrong: () => extended("breaker-1"),
    right: () => extended("breaker-afci-1"),
  }),
  "tamper-resistant": replacement("stair", "receptacle-15", "receptacle-tr-15"),
  "weather-resistant": replacement("outdoor", "gfci-receptacle-15", "gfci-receptacle-wr-15"),
};
