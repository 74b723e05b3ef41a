/** A ground-fault device asked for at the receptacles of samples that ship, right and wrong: fitted or refused, never worse. */
import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { isSerious } from "../../shared-model/model/severity.ts";
import { type FitProposal, fitDevice } from "../../shared-model/planning/fit-device.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { outletsOf } from "../../shared-model/queries/outlets-of.ts";
import { outlet } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const EVERY = LONG ? 1 : 4;

function proposedOf(project: Project): Project {
  if (project.proposed !== undefined) return project;
  const done = runCommand(project, { command: "start-proposed", args: {} });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.project;
}

describe("every receptacle", () => {
  test.each(["laundry-box", "kitchen-multiwire", "two-wire-bedroom", "house-twelve-circuits", "wrong-on-purpose"])(
    "of %s",
    (name) => {
      const project = proposedOf(openSample(name));
      const session = openSession(project);
      const receptacles = inOrder(project.proposed?.enclosures ?? {})
        .flatMap(({ devices }) => inOrder(devices))
        .filter((device) => outletsOf(device).some(({ receptacle }) => receptacle));
      const chosen = receptacles.length < 12 ? receptacles : receptacles.filter((_, index) => index % EVERY === 0);
      const refusals: string[] = [];
      for (const { id, name: called } of chosen) {
        const done = fitDevice(project, { outlet: id as string as ReturnType<typeof outlet> });
        if (!done.ok) {
          refusals.push(done.refusal.code);
          continue;
        }
        const tried = session.tryCall("proposed", done.value.call);
        if (!tried.done) throw new Error(`${called}: ${tried.refused}`);
        expect([called, tried.brings.introduces.filter(isSerious), tried.brings.unprotects]).toEqual([called, [], []]);
        expect(invariantProblems(tried.edit.project)).toEqual([]);
        expectProtected(done.value);
      }
      const known = [
        "is-one-already",
        "protected-already",
        "split",
        "not-fed",
        "joined-already",
        "introduces",
        "not-proved",
        "no-type",
      ];
      expect(refusals.filter((code) => !known.includes(code))).toEqual([]);
      expect(refusals.length).toBeLessThan(chosen.length + 1);
    },
  );

  /** Its own face and everything that was brought to its LOAD. */
  function expectProtected({ device, sides, protection }: FitProposal): void {
    const behind = sides
      .filter(({ side }) => side === "LOAD")
      .flatMap(({ outlets }) => outlets.map(({ outlet: one }) => one.name));
    for (const one of [device.name, ...behind])
      expect(protection.after.find(({ name }) => name === one)?.by).not.toEqual([]);
  }
});

describe("a device that fed on through its screws", () => {
  const done = fitDevice(openSample("laundry-box"), { outlet: outlet("R2") });

  test("every end comes off; supply on LINE, what it fed on LOAD, straight on the terminals", () => {
    if (!done.ok) throw new Error(done.refusal.message);
    const { plan, sides, device } = done.value;
    // Two hots, two neutrals and the ground pigtail: five off, five on, no joint.
    expect(plan.moves).toEqual({ detach: 5, attach: 5, newSplices: 0 });
    expect(plan.landings.map(({ group, landing }) => `${group.name} ${landing.kind}`)).toEqual([
      "HL direct",
      "NL direct",
      "HD direct",
      "ND direct",
      "E splice",
    ]);
    expect(sides.find(({ side }) => side === "LOAD")?.outlets.map((one) => one.outlet.name)).toEqual(["R3"]);
    const calls = (done.value.call.args as { readonly calls: readonly CommandCall[] }).calls;
    expect(calls.map(({ command }) => command)).toContain("replace-device");
    expect(device.type).toBe("dual-function-receptacle-15");
  });
});
