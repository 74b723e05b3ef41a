import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { judgeFix } from "../../shared-model/analysis/try-call.ts";
import { tryFix } from "../../shared-model/analysis/try-fix.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { Drawing } from "../rules/drawing.ts";
import { alone, laundryAsFound, laundryProposed } from "../rules/laundry.ts";
import { laundryBoth, statesOf } from "./laundry-states.ts";

/** What one command would bring. Throws when it is refused. */
function brings(project: Project, state: StateName, call: CommandCall, mends?: string) {
  const [result] = openSession(project).preview(state, [call], mends);
  if (result === undefined || "refused" in result) throw new Error(`Refused: ${result?.refused}`);
  return result;
}

const land = (state: StateName, enclosure: string, end: string, at: object): CommandCall => ({
  command: "land-end",
  args: { state, enclosure, end, at },
});
const on = (device: string, terminal: string, hole = 1) => ({ kind: "terminal", device, terminal, hole });
const cap = (state: StateName, enclosure: string, end: string): CommandCall => ({
  command: "cap-end",
  args: { state, enclosure, end },
});

describe("what a command would bring", () => {
  test("names what would be new, by its own severity, and counts what would be gone", () => {
    const result = brings(laundryBoth(), "proposed", cap("proposed", "B6", "C5.wh.b"));
    expect(result.introduces.map(({ rule, severity }) => `${rule} ${severity}`)).toContain("open-neutral danger");
    expect(result.objection).toMatch(/^It would bring a danger \(open-neutral\): R5/);
    const back = statesOf(laundryAsFound(), laundryProposed().put({ "C5.wh@B6": "cap" }));
    const mended = brings(back, "proposed", land("proposed", "B6", "C5.wh.b", on("R5", "N1")));
    expect(mended.repairs).toBeGreaterThan(0);
    expect(mended.introduces).toEqual([]);
    expect(mended.objection).toBeUndefined();
  });

  test("is told of the state that was asked for", () => {
    const call = cap("as-found", "B6", "C5.wh.b");
    expect(brings(laundryBoth(), "as-found", call).objection).toContain("open-neutral");
    expect(() => openSession(laundryAsFound().project()).preview("proposed", [call])).toThrow(/no proposed state/);
  });

  test("leaves the document as it is", () => {
    const session = openSession(laundryBoth());
    const before = structuredClone([session.project, session.report("proposed"), session.report("as-found")]);
    session.preview("proposed", [cap("proposed", "B6", "C5.wh.b"), cap("proposed", "B1", "C1.bk.b")]);
    expect([session.project, session.report("proposed"), session.report("as-found")]).toEqual(before);
  });

  test("a refused one says why", () => {
    const [result] = openSession(laundryBoth()).preview("proposed", [cap("proposed", "B6", "C9.wh.b")]);
    expect(result).toEqual({ refused: expect.stringMatching(/.+/) });
  });

  test("a violation that is told as a caution for having been there is not new when it shows as one", () => {
    // R2 lacks protection in both; its box is not opened until something is landed in it elsewhere.
    const same = statesOf(laundryAsFound(), laundryAsFound());
    const opening = brings(same, "proposed", {
      command: "set-property",
      args: { state: "proposed", target: { kind: "enclosure", id: "B2" }, field: "accessible", value: true },
    });
    expect(opening).toEqual({ introduces: [], repairs: 0, unprotects: [] });
  });

  test("a device in the place of another brings nothing that was said of the other", () => {
    const same = statesOf(laundryAsFound(), laundryAsFound());
    const call: CommandCall = {
      command: "replace-device",
      args: { state: "proposed", device: "R1", id: "R1c", type: "receptacle-tr-15", name: "R1c" },
    };
    const result = brings(same, "proposed", call);
    expect(result.introduces.filter(({ rule }) => rule === "outlet-not-protected")).toEqual([]);
  });

  test("what was said of two ends together is not new when it is left for one of them", () => {
    const start = (): Drawing =>
      new Drawing(2023)
        .panel("P")
        .breaker("Q1", 20)
        .box("J", 18)
        .box("K", 18)
        .cable("C1", "nm-12-2-g", "P", "J")
        .cable("C2", "nm-12-2-g", "J", "K")
        .splice("H", "J", "twist-medium")
        .splice("N", "J", "twist-medium")
        .put({ "C1.bk@J": "H", "C2.bk@J": "H", "C1.wh@J": "N", "C2.wh@J": "N" });
    const introduced = (drawing: Drawing, call: CommandCall) =>
      brings(drawing.project(), "as-found", call).introduces.map(({ message }) => message);
    const landing = land("as-found", "P", "C1.bk.a", on("Q1", "OUT"));
    const half = (drawing: Drawing) =>
      openSession(drawing.project())
        .report("as-found")
        .findings.filter(({ rule }) => rule === "capped-neutral-forgotten")
        .map(({ message }) => message);
    expect(half(start())).toContainEqual(expect.stringMatching(/^C1 BK and C1 WH are capped in P/));
    expect(half(start().put({ "C1.bk@P": "Q1.OUT" }))).toContainEqual(expect.stringMatching(/^C1 WH is capped in P/));
    expect(introduced(start(), landing)).toEqual([]);
    // One more end that is half connected is new all the same.
    const landed = start().put({ "C1.bk@P": "Q1.OUT" });
    expect(introduced(landed, cap("as-found", "P", "C1.bk.a"))).toContainEqual(
      expect.stringMatching(/^C1 BK and C1 WH are capped in P/),
    );
  });

  test("what only shows because its cause is gone is not new", () => {
    const crossed = () => alone(laundryAsFound(), "R4").swap("C3.bk@B4", "C3.wh@B4");
    const plan = statesOf(crossed(), crossed());
    const calls = [
      land("proposed", "B4", "C3.bk.b", on("R4", "H1")),
      land("proposed", "B4", "C3.wh.b", on("R4", "N1")),
    ];
    const call: CommandCall = { command: "run-together", args: { title: "Put them right", calls } };
    const session = openSession(plan);
    const tried = session.tryCall("proposed", call);
    if (!tried.done) throw new Error(tried.refused);
    const shown = openSession(tried.edit.project)
      .report("proposed")
      .findings.map(({ key }) => key);
    expect(session.report("proposed").findings.map(({ key }) => key)).not.toContain("outlet-not-protected|outlet:R4");
    expect(shown).toContain("outlet-not-protected|outlet:R4");
    expect(tried.brings.introduces.filter(({ rule }) => rule === "outlet-not-protected")).toEqual([]);
  });
});

describe("outlets that would lose protection", () => {
  const moved: CommandCall = land("proposed", "B1", "C5.bk.a", { kind: "splice", splice: "HL" });

  test("are named", () => {
    const result = brings(laundryBoth(), "proposed", moved);
    expect(result.unprotects).toEqual(["R5"]);
    expect(result.objection).toContain("It would leave R5 without ground-fault protection.");
  });

  test("those that never had it are not", () => {
    expect(
      brings(statesOf(laundryAsFound(), laundryAsFound()), "proposed", cap("proposed", "B6", "C5.bk.b")).unprotects,
    ).toEqual([]);
  });

  test("one that is gone altogether counts, and one whose successor is protected does not", () => {
    const gone = brings(laundryBoth(), "proposed", {
      command: "remove-items",
      args: { state: "proposed", items: [{ kind: "device", id: "R3" }] },
    });
    expect(gone.unprotects).toEqual(["R3"]);
    const replaced = (type: string) =>
      brings(laundryBoth(), "proposed", {
        command: "replace-device",
        args: { state: "proposed", device: "R3", id: "R3c", type, name: "R3c" },
      }).unprotects;
    expect(replaced("receptacle-tr-15")).toEqual([]);
  });

  test("a successor that is not protected does not stand in", () => {
    const unprotected = brings(laundryBoth(), "proposed", {
      command: "replace-device",
      args: { state: "proposed", device: "R4b", id: "R4c", type: "receptacle-15", name: "R4c" },
    });
    expect(unprotected.unprotects).toEqual(["R4b"]);
  });
});

describe("a fix", () => {
  const broken = () => statesOf(laundryAsFound(), laundryProposed().put({ "C5.wh@B6": "cap" }));
  const findingOf = (project: Project, rule: string) => {
    const found = openSession(project)
      .report("proposed")
      .findings.find((one) => one.rule === rule);
    if (found === undefined) throw new Error(`No finding of ${rule}.`);
    return found;
  };
  const trying = (project: Project, call: CommandCall) =>
    tryFix(openSession(project), findingOf(project, "open-neutral"), { title: "Try it", call });

  /** Mends R5, and takes both conductors of R2 and R3 past the device. */
  const unprotecting: CommandCall = {
    command: "run-together",
    args: {
      title: "Try it",
      calls: [
        land("proposed", "B6", "C5.wh.b", on("R5", "N1")),
        land("proposed", "B1", "C2.bk.a", { kind: "splice", splice: "HL" }),
        land("proposed", "B1", "C2.wh.a", { kind: "splice", splice: "NL" }),
      ],
    },
  };

  test("that mends applies, and gives the document that it makes", () => {
    const tried = trying(broken(), land("proposed", "B6", "C5.wh.b", on("R5", "N1")));
    expect(tried).toMatchObject({ applies: true, brings: { introduces: [], unprotects: [] } });
    if (!tried.applies) return;
    expect(
      openSession(tried.project)
        .report("proposed")
        .findings.filter(({ rule }) => rule === "open-neutral"),
    ).toEqual([]);
  });

  test.each<readonly [string, CommandCall, RegExp]>([
    ["removes nothing", land("proposed", "B6", "C5.wh.b", on("R5", "G")), /It does not remove this finding\./],
    ["is refused", cap("proposed", "B6", "no.wh.b"), /.+/],
    ["unprotects", unprotecting, /would leave R2 and R3 without ground-fault protection/],
  ])("that %s does not", (_, call, why) => {
    expect(trying(broken(), call)).toEqual({ applies: false, why: expect.stringMatching(why) });
  });

  test("of a finding that is not there does not", () => {
    const finding = findingOf(broken(), "open-neutral");
    const tried = tryFix(openSession(laundryBoth()), finding, { title: "Cap", call: cap("proposed", "B6", "C5.cu.b") });
    expect(tried).toMatchObject({ applies: false, why: expect.stringContaining("It does not remove this finding.") });
  });
});

describe("the judgement", () => {
  const fine = { introduces: [], unprotects: [], mended: true };
  const brought = (severity: "danger" | "violation" | "caution" | "advice") => ({
    rule: `a-${severity}`,
    severity,
    message: "B1 is wrong.",
  });

  test("has nothing against what mends and brings nothing worse than a caution", () => {
    expect(judgeFix(fine)).toBeUndefined();
    expect(judgeFix({ ...fine, introduces: [brought("caution"), brought("advice")] })).toBeUndefined();
  });

  test("says the worst that would come, how much more, what would be unprotected and what would stay", () => {
    expect(
      judgeFix({ introduces: [brought("violation"), brought("danger")], unprotects: ["R2", "R3"], mended: false }),
    ).toBe(
      "It would bring a danger (a-danger): B1 is wrong. It would bring 1 more at danger or violation. " +
        "It would leave R2 and R3 without ground-fault protection. It does not remove this finding.",
    );
  });
});
