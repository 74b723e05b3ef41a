import { expect, test } from "vitest";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { fold } from "../../shared-model/rules/fold.ts";
import { checkProject, NOT_CARRIED_OVER } from "../../shared-model/rules/run-rules.ts";
import { cableId, laundryDrawing } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";

/** C5 removed as found, after proposed moved one of its ends. */
const held = (): Project =>
  new Drawing(laundryDrawing().propose().land("C5.bk@B6", "capped").project, "as-found").remove({
    kind: "cable",
    id: cableId("C5"),
  }).project;

const findingsOf = (project: Project, state: StateName) => {
  const installation = state === "as-found" ? project.asFound : (project.proposed ?? project.asFound);
  const parts = [checkProject({ project, installation, state })];
  return fold(state, project.edition, parts).findings.filter((one) => one.rule === NOT_CARRIED_OVER);
};

test("an as-found edit that is not in proposed is a caution there, with what, why and what to do", () => {
  const project = held();
  const [finding, ...more] = findingsOf(project, "proposed");
  expect(more).toEqual([]);
  expect(finding).toMatchObject({
    severity: "caution",
    subjects: [
      { kind: "project", id: "1", name: "Remove C5" },
      { kind: "cable", id: "cable-C5", name: "C5" },
      { kind: "enclosure", id: "box-B1", name: "B1" },
      { kind: "enclosure", id: "box-B6", name: "B6" },
    ],
    message:
      "“Remove C5” was done as found and not carried over into proposed. Proposed says something of its own about C5 BK in B6, which would no longer end there. Look at both, make proposed agree where it should, then settle this.",
  });
  expect(findingsOf(project, "as-found")).toEqual([]);
});

test("its offer settles it", () => {
  const project = held();
  const offer = findingsOf(project, "proposed")[0]?.offers?.[0];
  if (offer === undefined) throw new Error("Nothing is offered.");
  expect(offer.title).toBe("I have looked");
  const done = runCommand(project, offer.call);
  if (!done.ok) throw new Error(done.refusal.message);
  expect(findingsOf(done.project, "proposed")).toEqual([]);
  expect(done.project.asFound).toBe(project.asFound);
});
