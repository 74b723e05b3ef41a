import { describe, expect, test } from "vitest";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import type { CommandArgs } from "../../shared-model/commands/command-args.ts";
import { applyPatches, refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import { canonicalText } from "../../shared-model/lib/canonical-text.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { acknowledgementOf } from "../../shared-model/queries/acknowledgement-of.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, cableId, deviceId, drawing, laundryDrawing, loadId, outlet, spliceId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { refused, titleOf } from "./asking.ts";
import { leftOvers } from "./sound-references.ts";

const asFound = () => laundryDrawing();
const proposed = () => laundryDrawing().propose();
const sound = (project: Project) => [...invariantProblems(project), ...leftOvers(project)];

describe("starting", () => {
  test("makes a second account, equal to as found and sharing nothing with it", () => {
    const { project } = asFound().run("start-proposed", {});
    expect(project.proposed).toEqual(project.asFound);
    expect(project.proposed?.enclosures[boxId("B1")]).not.toBe(project.asFound.enclosures[boxId("B1")]);
    expect(titleOf(asFound().project, "start-proposed", {})).toBe("Start proposed");
  });

  test("is refused when it was started, and everything else when it was not", () => {
    expect(refused(proposed().project, "start-proposed", {})).toBe("already-started");
    expect(refused(asFound().project, "reset-proposed", {})).toBe("no-proposed-state");
    expect(refused(asFound().project, "discard-proposed", {})).toBe("no-proposed-state");
    expect(refused(asFound().project, "settle-held-back", { id: "1" })).toBe("unknown-item");
  });
});

/** B4 with another receptacle in proposed, the freezer moved over to it, and another load beside it. */
const reworked = () =>
  proposed()
    .run("replace-device", { device: deviceId("R4"), id: deviceId("N4"), type: "receptacle-tr-15", name: "N4" })
    .load("Fan", "lamp-60", "N4")
    .run("set-outlet-wish", { outlet: outlet("N4"), wish: { wish: "protect" } });

describe("resetting", () => {
  test("all of proposed: it is as found again, and places on the sheet that only it had are gone", () => {
    const { project } = reworked()
      .box("B9")
      .cable("C9", "B4", "B9")
      .splice("S9", "B4", "twist-medium", "C9.bk@B4", "C9.wh@B4");
    const placed = new Drawing(project, "proposed").run("move-splice", { splice: spliceId("S9"), to: { x: 1, y: 2 } });
    const reset = placed.run("reset-proposed", {}).project;
    expect(reset.proposed).toEqual(reset.asFound);
    expect(reset.layout).toEqual(asFound().project.layout);
    expect(sound(reset)).toEqual([]);
    expect(titleOf(placed.project, "reset-proposed", {})).toBe("Reset proposed to as found");
  });

  test("changes nothing where nothing differs", () => {
    const { project } = proposed();
    const done = runCommand(project, { command: "reset-proposed", args: {} });
    expect(done.ok && done.project).toBe(project);
  });

  test("one box: its content, what is plugged in and what was decided for it; the rest stays", () => {
    const plan = reworked().device("N6", "receptacle-15", "B6");
    const reset = plan.run("reset-proposed", { enclosure: boxId("B4") }).project;
    expect(reset.proposed?.enclosures[boxId("B4")]).toEqual(reset.asFound.enclosures[boxId("B4")]);
    expect(reset.proposed?.loads).toEqual(reset.asFound.loads);
    expect(reset.proposed?.loads[loadId("Freezer")]?.plug).toBe(deviceId("R4"));
    expect(reset.proposed?.intent).toEqual(reset.asFound.intent);
    expect(reset.proposed?.enclosures[boxId("B6")]?.devices).toHaveProperty("device-N6");
    expect(sound(reset)).toEqual([]);
    expect(titleOf(plan.project, "reset-proposed", { enclosure: boxId("B4") })).toBe("Reset B4 to as found");
  });

  test("one box is refused where a cable is not the same in both states", () => {
    const enclosure = boxId("B4");
    expect(refused(proposed().cable("C9", "P", "B4").project, "reset-proposed", { enclosure })).toBe("cable-differs");
    const removed = proposed().remove({ kind: "cable", id: cableId("C3") });
    expect(refused(removed.project, "reset-proposed", { enclosure })).toBe("cable-differs");
    expect(refused(proposed().box("B9").project, "reset-proposed", { enclosure: boxId("B9") })).toBe("not-as-found");
    expect(refused(proposed().project, "reset-proposed", { enclosure: boxId("B99") })).toBe("unknown-item");
  });

  test("one box is refused where its device stands elsewhere in proposed", () => {
    const spare = asFound().device("S9", "receptacle-15", "B4").propose();
    const moved = spare.run("move-device", { id: deviceId("S9"), enclosure: boxId("B6") });
    expect(refusalOf(moved.project, { command: "reset-proposed", args: { enclosure: boxId("B4") } })).toEqual({
      code: "would-break",
      message: "B4 cannot be as found again by itself. In proposed, S9 would be in two places. Change that first.",
    });
  });
});

const word = (state: "as-found" | "proposed", said = "B1 is overfull."): CommandArgs["acknowledge-finding"] => ({
  finding: "box-overfull|enclosure:box-B1",
  state,
  by: " J. Doe ",
  reason: " The box is changed next week. ",
  at: "2026-05-04T10:20:30Z",
  said,
  severity: "violation",
});

describe("discarding", () => {
  test("takes proposed, its acknowledgements and its places away; readings and the rest stay", () => {
    const noted = new Drawing(reworked().box("B9").run("acknowledge-finding", word("proposed")).project, "as-found");
    const plan = noted.run("acknowledge-finding", word("as-found"));
    expect(plan.project.acknowledgements.map(({ state }) => state)).toEqual(["proposed", "as-found"]);
    expect(titleOf(plan.project, "discard-proposed", {})).toBe("Discard proposed");
    const { project } = plan.run("discard-proposed", {});
    expect(project).not.toHaveProperty("proposed");
    expect(project.acknowledgements.map(({ state }) => state)).toEqual(["as-found"]);
    expect(project.layout).toEqual(asFound().project.layout);
    expect(project.asFound).toEqual(asFound().project.asFound);
  });
});

describe("acknowledging a finding", () => {
  const finding: Pick<Finding, "key" | "state" | "message" | "severity"> = {
    key: "box-overfull|enclosure:box-B1",
    state: "as-found",
    message: "B1 is overfull.",
    severity: "violation",
  };

  test("keeps who, why, when and what was said; a second word takes the place of the first", () => {
    const once = asFound().run("acknowledge-finding", word("as-found"));
    expect(once.project.acknowledgements).toEqual([
      { ...word("as-found"), by: "J. Doe", reason: "The box is changed next week." },
    ]);
    const twice = once.run("acknowledge-finding", { ...word("as-found"), by: "R. Roe" });
    expect(twice.project.acknowledgements.map(({ by }) => by)).toEqual(["R. Roe"]);
  });

  test("is found by finding and state, and does not cover what the finding says now", () => {
    const { project } = asFound().run("acknowledge-finding", word("as-found"));
    expect(acknowledgementOf(project, finding)).toMatchObject({ acknowledgement: { by: "J. Doe" }, covers: true });
    expect(acknowledgementOf(project, { ...finding, message: "B1 is overfull by more." })?.covers).toBe(false);
    expect(acknowledgementOf(project, { ...finding, severity: "caution" })?.covers).toBe(true);
    expect(acknowledgementOf(project, { ...finding, severity: "danger" })?.covers, "graver now").toBe(false);
    expect(acknowledgementOf(project, { ...finding, state: "proposed" })).toBeUndefined();
    const { said: _, ...old } = word("as-found");
    expect(acknowledgementOf({ acknowledgements: [old] }, { ...finding, message: "else" })?.covers).toBe(true);
  });

  test("needs a name, a reason, and a time that there is", () => {
    const { project } = asFound();
    expect(refused(project, "acknowledge-finding", { ...word("as-found"), by: "  " })).toBe("name-required");
    expect(refused(project, "acknowledge-finding", { ...word("as-found"), reason: "" })).toBe("reason-required");
    expect(refused(project, "acknowledge-finding", word("proposed"))).toBe("no-proposed-state");
    for (const at of ["yesterday", "2026-02-30T10:00:00Z", "2026-13-01T10:00:00Z", "2026-05-04", "2026-05-04T25:00Z"])
      expect(refused(project, "acknowledge-finding", { ...word("as-found"), at })).toBe("malformed-arguments");
    for (const at of ["2026-05-04T10:20:30.123Z", "2024-02-29T00:00Z", "2026-05-04T10:20:30+02:00"])
      expect(refusalOf(project, { command: "acknowledge-finding", args: { ...word("as-found"), at } })).toBeUndefined();
    const longName = { ...word("as-found"), by: "x".repeat(101) };
    expect(refused(project, "acknowledge-finding", longName)).toBe("malformed-arguments");
  });

  test("can be withdrawn, once", () => {
    const given = asFound().run("acknowledge-finding", word("as-found"));
    const call = { finding: finding.key, state: "as-found" } as const;
    const done = runCommand(given.project, { command: "withdraw-acknowledgement", args: call });
    expect(done.ok && done.project.acknowledgements).toEqual([]);
    expect(refused(asFound().project, "withdraw-acknowledgement", call)).toBe("unknown-item");
  });
});

describe("running together", () => {
  const start = drawing().box("B1").project;
  const rename = (name: string): CommandCall => ({
    command: "rename-item",
    args: { state: "as-found", item: { kind: "enclosure", id: boxId("B1") }, name },
  });
  const together = (...calls: readonly CommandCall[]): CommandCall => ({
    command: "run-together",
    args: { title: "Both", calls },
  });
  const code = (call: CommandCall): string => {
    const refusal = refusalOf(start, call);
    if (refusal !== undefined) expect(runCommand(start, call)).toEqual({ ok: false, refusal });
    return refusal?.code ?? "ran";
  };

  test("is one step under its own title", () => {
    const done = runCommand(start, together(rename("L1"), rename("L2")));
    if (!done.ok) throw new Error(done.refusal.message);
    expect(done.title).toBe("Both");
    expect(done.project.asFound.enclosures[boxId("B1")]?.name).toBe("L2");
    expect(canonicalText(applyPatches(done.project, done.inverse))).toBe(canonicalText(start));
    expect(canonicalText(applyPatches(start, structuredClone(done.patches)))).toBe(canonicalText(done.project));
  });

  test("each call works on what the one before made", () => {
    const place = {
      command: "place-device",
      args: { state: "as-found", enclosure: boxId("B1"), id: deviceId("R"), type: "receptacle-15", name: "R" },
    };
    const item = { state: "as-found", items: [{ kind: "device", id: deviceId("R") }] };
    const done = runCommand(start, together(place, { command: "remove-items", args: item }));
    expect(done.ok && canonicalText(done.project)).toBe(canonicalText(start));
    expect(code(together({ command: "remove-items", args: item }, place))).toBe("unknown-item");
  });

  test("all or none: the refusal is that of the first call that is refused", () => {
    expect(code(together(rename("L1"), rename(" "), { command: "explode", args: {} }))).toBe("malformed-arguments");
    expect(code(together(rename("L1"), { command: "explode", args: {} }))).toBe("unknown-command");
    expect(start.asFound.enclosures[boxId("B1")]?.name).toBe("B1");
  });

  test("is not nested, not empty, and at most 200 calls", () => {
    expect(code(together(together(rename("L1"))))).toBe("nested");
    expect(code(together())).toBe("malformed-arguments");
    expect(code(together(...Array.from({ length: 201 }, () => rename("L1"))))).toBe("malformed-arguments");
    expect(code(together(...Array.from({ length: 200 }, () => rename("L1"))))).toBe("ran");
  });
});
