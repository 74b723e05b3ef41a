import type {
  Caution,
  ScopeBox,
  ScopeBreaker,
  ScopeDifference,
  ScopeLabel,
  SignOff,
  WorkStep,
} from "../../answers/scope.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { listed } from "../../rules/rule-parts.ts";
import type { Section } from "../../solver/section.ts";
import { sectionKey, sectionOf } from "../../solver/sections.ts";
import { beforeSteps, breakerWords } from "./before-steps.ts";
import { boxSteps } from "./box-steps.ts";
import { cautionsOf } from "./cautions.ts";
import { closeSteps } from "./close-steps.ts";
import { commissioningSteps } from "./commissioning.ts";
import { deadTests } from "./dead-tests.ts";
import { numbered, type StepDraft } from "./step-draft.ts";

export interface WorkInstructions {
  readonly steps: readonly WorkStep[];
  readonly signOffs: readonly SignOff[];
  readonly cautions: readonly Caution[];
  readonly assumptions: readonly string[];
}

const NO_WORK: WorkInstructions = { steps: [], signOffs: [], cautions: [], assumptions: [] };

/**
 * The work instructions for a difference, in the order of the work: the whole job up to the breakers, each box from dead to
 * folded, then dead tests, covers, tests under power, labels. One instruction is at most one conductor end. None where
 * nothing is opened, labelled or written.
 */
export function workSteps(
  project: Project,
  proposed: Installation,
  difference: ScopeDifference,
  labels: readonly ScopeLabel[],
): WorkInstructions {
  const opened = difference.boxes.filter(({ work }) => work !== "not-opened");
  const close = closeSteps(difference, labels);
  if (opened.length === 0) return { ...NO_WORK, steps: numbered(close) };
  const breakers = breakersOf(opened);
  const isNew = newDevices(project.asFound);
  const before = sectionsOf(project.asFound, opened);
  const after = sectionsOf(proposed, opened);
  const tests = after.map((section) => {
    const own = new Set(section.breakers().map(({ device }) => device.id));
    return commissioningSteps({
      section,
      supply: project.supply,
      opened: new Set(opened.map(({ enclosure }) => enclosure)),
      breakers: breakers.filter(({ device }) => own.has(device)),
      isNew,
    });
  });
  const drafts: readonly StepDraft[] = [
    ...beforeSteps(project, before, breakers),
    ...opened.flatMap((box) => boxSteps(project, proposed, box)),
    ...opened.flatMap((box) => deadTests(proposed, project.supply, box, isNew)),
    ...energise(opened, breakers),
    ...tests.flatMap(({ steps }) => steps),
    ...close,
  ];
  const steps = numbered(drafts);
  const used = new Set(steps.flatMap(({ cautions }) => cautions));
  used.add("SIM1");
  return {
    steps,
    signOffs: signOffsOf(steps),
    cautions: cautionsOf(used),
    assumptions: [...new Set(tests.flatMap(({ assumptions }) => assumptions))],
  };
}

/** Every breaker that is opened for some box, once. */
export function breakersOf(boxes: readonly ScopeBox[]): readonly ScopeBreaker[] {
  const all = new Map<DeviceId, ScopeBreaker>();
  for (const { breakers } of boxes) for (const one of breakers) if (!all.has(one.device)) all.set(one.device, one);
  return [...all.values()];
}

function newDevices({ enclosures }: Installation): (id: DeviceId) => boolean {
  const there = new Set(Object.values(enclosures).flatMap(({ devices }) => Object.keys(devices)));
  return (id) => !there.has(id);
}

function sectionsOf(installation: Installation, boxes: readonly ScopeBox[]): readonly Section[] {
  const found = new Map<string, Section>();
  for (const { enclosure } of boxes) {
    const section = sectionOf(installation, enclosure);
    if (section !== undefined) found.set(sectionKey(section), section);
  }
  return [...found.values()];
}

/** HP6 and the breakers. */
function energise(boxes: readonly ScopeBox[], breakers: readonly ScopeBreaker[]): readonly StepDraft[] {
  const names = boxes.filter(({ work }) => work !== "removed").map(({ name }) => name);
  return [
    {
      id: "HP6",
      stage: 13,
      kind: "hold",
      hold: "HP6",
      items: boxes.map(({ enclosure, name }) => ({ kind: "enclosure", id: enclosure, name })),
      text: `Covers on ${listed(names)}; nobody in contact, everyone told.`,
      cautions: ["WRK6"],
    },
    ...breakers.map(
      (breaker): StepDraft => ({
        id: `energise:${breaker.device}`,
        stage: 14,
        kind: "energise",
        box: breaker.panel,
        items: [{ kind: "device", id: breaker.device, name: breaker.name }],
        text: `Take the lock off and close ${breakerWords(breaker)}.`,
        ifNot: "It opens at once: leave it open and go back to the dead tests.",
      }),
    ),
  ];
}

/** Each hold point is signed for itself. */
const signOffsOf = (steps: readonly WorkStep[]): readonly SignOff[] =>
  steps.flatMap(({ id, text, hold, sign }): readonly SignOff[] => {
    if (!sign) return [];
    const measured = hold === "HP1" || hold === "HP2" || hold === "HP3" || hold === "HP5";
    return [
      {
        step: id,
        what: hold === undefined ? text : `${hold}: ${text}`,
        fields: measured ? ["name", "date", "time", "instrument", "signature"] : ["name", "date", "time", "signature"],
      },
    ];
  });
