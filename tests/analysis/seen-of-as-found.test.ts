import type { Patch } from "immer";
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import type { DeviceId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId, cableId, deviceId, drawing, laundryDrawing } from "../builders/drawing.ts";

/**
 * A document followed edit by edit: after each, what the rules say of proposed is what they say of a copy from nothing.
 * @returns What is said then, "rule subject".
 */
class FollowedProposed {
  private project: Project;
  private readonly session: ReturnType<typeof openSession>;

  constructor(start: Project) {
    this.project = start;
    this.session = openSession(structuredClone(start));
  }

  run(call: CommandCall): readonly string[] {
    const done = runCommand(this.project, call);
    if (!done.ok) throw new Error(done.refusal.message);
    return this.follow(done.patches);
  }

  /** An edit of as found that proposed does not follow. */
  apart(call: CommandCall): readonly string[] {
    const { proposed: _proposed, ...asFound } = this.project;
    const done = runCommand(asFound, call);
    if (!done.ok) throw new Error(done.refusal.message);
    return this.follow(done.patches);
  }

  said(): readonly string[] {
    return this.session
      .report("proposed")
      .findings.map(({ rule, subjects }) => `${rule} ${subjects[0]?.name}`)
      .sort();
  }

  severityOf(wanted: string): string | undefined {
    return this.session.report("proposed").findings.find(({ rule }) => rule === wanted)?.severity;
  }

  private follow(patches: readonly Patch[]): readonly string[] {
    this.project = applyPatches(this.project, patches);
    this.session.applyPatches(structuredClone(patches), 1);
    const fresh = openSession(structuredClone(this.project));
    expect(this.session.report("proposed")).toEqual(fresh.report("proposed"));
    return this.said();
  }
}

const asFound = { state: "as-found" };
const proposed = { state: "proposed" };

describe("rules about new work are run again when as found says something else", () => {
  test("a device that the work replaces was not there after all, and is again", () => {
    const plan = laundryDrawing().propose();
    const document = new FollowedProposed(plan.project);
    const replaced = document.run({
      command: "replace-device",
      args: { ...proposed, device: deviceId("R1"), id: "R1c", type: "receptacle-tr-15", name: "R1c" },
    });
    expect(replaced).toContain("replace-needs-gfci R1c");
    const gone = document.apart({
      command: "remove-items",
      args: { ...asFound, items: [{ kind: "device", id: deviceId("R1") }] },
    });
    expect(gone).not.toContain("replace-needs-gfci R1c");
    expect(gone).toContain("outlet-not-protected R1c");
  });

  test("a cable that proposed kept is gone as found: there it is new", () => {
    const document = new FollowedProposed(laundryDrawing().propose().project);
    expect(document.said()).not.toContain("extension-needs-afci Q14");
    const gone = document.apart({
      command: "remove-items",
      args: { ...asFound, items: [{ kind: "cable", id: cableId("C5") }] },
    });
    expect(gone).toContain("extension-needs-afci Q14");
  });

  test("a box with its device that was never there as found", () => {
    const document = new FollowedProposed(laundryDrawing().propose().project);
    const gone = document.apart({
      command: "remove-items",
      args: { ...asFound, items: [{ kind: "enclosure", id: boxId("B6") }] },
    });
    expect(gone).toContain("tamper-resistant R5");
  });

  test("a breaker of another panel space: the laundry circuit is ours then", () => {
    const severity = (project: Project) =>
      openSession(project)
        .report("proposed")
        .findings.find(({ rule }) => rule === "laundry-circuit-mixed")?.severity;
    const start = laundryDrawing().propose().project;
    expect(severity(structuredClone(start))).toBe("caution");
    const document = new FollowedProposed(start);
    document.apart({
      command: "remove-items",
      args: { ...asFound, items: [{ kind: "device", id: deviceId("Q14") as DeviceId }] },
    });
    expect(document.severityOf("laundry-circuit-mixed")).toBe("violation");
  });
});

describe("what is fixed to things and what the directory says", () => {
  test("a label on a receptacle without a ground, and its words", () => {
    const house = drawing()
      .panel("P")
      .breaker("Q1", "P", { ratingA: 15 })
      .box("B1")
      .cable("C1", "P", "B1", { item: "nm-14-2" })
      .device("R1", "gfci-receptacle-15", "B1")
      .land("C1.bk@P", "Q1.OUT")
      .land("C1.wh@P", "P neutral.BAR")
      .land("C1.bk@B1", "R1.LINE_H")
      .land("C1.wh@B1", "R1.LINE_N");
    const document = new FollowedProposed(house.propose().project);
    expect(document.said()).toContain("no-ground-label R1");
    const on = { device: deviceId("R1") };
    const labelled = document.run({
      command: "add-label",
      args: { ...proposed, id: "l1", wording: "No Equipment Ground", on },
    });
    expect(labelled).not.toContain("no-ground-label R1");
    const target = { kind: "label", id: "l1" };
    const reworded = document.run({
      command: "set-property",
      args: { ...proposed, target, field: "wording", value: "Kitchen" },
    });
    expect(reworded).toContain("no-ground-label R1");
  });

  test("a line of the directory", () => {
    const document = new FollowedProposed(laundryDrawing().propose().project);
    const line = (text: string | null) =>
      document.run({ command: "set-directory-line", args: { ...proposed, device: deviceId("Q14"), text } });
    expect(line("Lights")).toContain("directory-mismatch Q14");
    expect(line("Laundry, sink, porch, freezer, stair light, hall")).not.toContain("directory-mismatch Q14");
    expect(line(null)).not.toContain("directory-mismatch Q14");
  });
});
