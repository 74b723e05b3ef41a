import type {
  ScopeBox,
  ScopeBreaker,
  ScopeDifference,
  ScopeLabel,
  ScopeWork,
  SignOff,
  WorkStep,
} from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { CableId, DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { listed } from "../../rules/rule-parts.ts";
import type { Section } from "../../solver/section.ts";
import { sectionKey, sectionOf } from "../../solver/sections.ts";
import { devicePlaces } from "../scope/device-places.ts";
import { breakerWords, isolate, recordBefore, tell } from "./before-steps.ts";
import { boxSteps } from "./box-steps.ts";
import { cautionsOf } from "./cautions.ts";
import { closeSteps } from "./close-steps.ts";
import { commissioningSteps } from "./commissioning.ts";
import { deadTests } from "./dead-tests.ts";
import { closeMains, openMains } from "./panel-steps.ts";
import { numbered, type StepDraft } from "./step-draft.ts";

const wording = catalogue({
  close: (breaker: Part) => `Take the lock off and close ${breaker}.`,
  covers: (boxes: Part) => `Covers on ${boxes}; nobody in contact, everyone told.`,
  putBack: (fuse: Part) => `Put back ${fuse}, of the same rating and no larger.`,
  opensAtOnce: "It opens at once: leave it open and go back to the dead tests.",
});

const NO_WORK: ScopeWork = { steps: [], signOffs: [], cautions: [], assumptions: [] };

/**
 * The work instructions for a difference, in the order of the work: the whole job up to the breakers, each box from dead to
 * folded, then dead tests, covers, tests under power, labels. One instruction is at most one conductor end. None where
 * nothing is opened, labelled or written. In steps, for a large building has thousands of figures: after each box and each
 * circuit it may be left off.
 */
export function* workInSteps(
  project: Project,
  proposed: Installation,
  difference: ScopeDifference,
  labels: readonly ScopeLabel[],
): Generator<undefined, ScopeWork, undefined> {
  const opened = difference.boxes.filter(({ work }) => work !== "not-opened");
  const close = closeSteps(difference, labels);
  if (opened.length === 0) return { ...NO_WORK, steps: numbered(close) };
  const breakers = breakersOf(opened);
  const inService = [...stillThere(breakers, proposed), ...newBreakersOf(opened)];
  const isNew = newDevices(project.asFound);
  const before = sectionsOf(project.asFound, opened);
  const after = sectionsOf(proposed, opened);
  const ids = new Set(opened.map(({ enclosure }) => enclosure));
  const tests = yield* eachOf(after, (section) => {
    const own = new Set(section.breakers().map(({ device }) => device.id));
    return commissioningSteps({
      section,
      supply: project.supply,
      opened: ids,
      breakers: inService.filter(({ device }) => own.has(device)),
      isNew,
    });
  });
  const records = yield* eachOf(before, (section) => recordBefore(project, section, breakers));
  const inBoxes = yield* eachOf(opened, (box) => boxSteps(project, proposed, box));
  const dead = yield* eachOf(opened, (box) => deadTests(proposed, project.supply, box, isNew));
  const drafts: readonly StepDraft[] = [
    tell(
      project.asFound,
      before,
      breakers,
      opened.filter(({ isPanel }) => isPanel).map(({ name }) => name),
    ),
    ...records.flat(),
    ...isolate(breakers),
    ...openMains(opened, project.asFound),
    ...inBoxes.flat(),
    ...dead.flat(),
    ...energise(opened, inService, closeMains(opened, project.asFound)),
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

function* eachOf<T, R>(all: readonly T[], work: (one: T) => R): Generator<undefined, readonly R[], undefined> {
  const done: R[] = [];
  for (const one of all) {
    done.push(work(one));
    yield;
  }
  return done;
}

/** Every breaker that is opened for some box, once. */
export const breakersOf = (boxes: readonly ScopeBox[]): readonly ScopeBreaker[] =>
  eachOnce(boxes.flatMap(({ breakers }) => breakers));

/** Those that come with the work. */
const newBreakersOf = (boxes: readonly ScopeBox[]): readonly ScopeBreaker[] =>
  eachOnce(boxes.flatMap(({ newBreakers }) => newBreakers ?? []));

/** What was taken out with the work is not closed after it. */
const stillThere = (breakers: readonly ScopeBreaker[], proposed: Installation): readonly ScopeBreaker[] =>
  breakers.filter(({ device }) => devicePlaces(proposed).has(device));

function eachOnce(breakers: readonly ScopeBreaker[]): readonly ScopeBreaker[] {
  const all = new Map<DeviceId, ScopeBreaker>();
  for (const one of breakers) if (!all.has(one.device)) all.set(one.device, one);
  return [...all.values()];
}

function newDevices(asFound: Installation): (id: DeviceId) => boolean {
  const there = devicePlaces(asFound);
  return (id) => !there.has(id);
}

function sectionsOf(installation: Installation, boxes: readonly ScopeBox[]): readonly Section[] {
  const found = new Map<string, Section>();
  for (const box of boxes) {
    for (const id of [box.enclosure, ...(box.isPanel ? fedFrom(installation, box) : [])]) {
      const section = sectionOf(installation, id);
      if (section !== undefined) found.set(sectionKey(section), section);
    }
  }
  return [...found.values()];
}

/** Where the cables lead whose ends are touched in a panel: what is changed there is measured and tested at the outlets. */
const fedFrom = ({ cables }: Installation, { changes }: ScopeBox): readonly EnclosureId[] =>
  changes.flatMap(({ owner, detach, attach }) => {
    const cable = owner?.kind === "cable" && detach + attach > 0 ? cables[owner.id as CableId] : undefined;
    return cable === undefined
      ? []
      : [cable.sides.a, cable.sides.b].flatMap((side) => ("enclosure" in side ? [side.enclosure] : []));
  });

/** HP6, what is ahead of panels, and the breakers. */
function energise(
  boxes: readonly ScopeBox[],
  breakers: readonly ScopeBreaker[],
  mains: readonly StepDraft[],
): readonly StepDraft[] {
  const names = boxes.filter(({ work }) => work !== "removed").map(({ name }) => name);
  return [
    {
      id: "HP6",
      stage: 13,
      kind: "hold",
      hold: "HP6",
      items: boxes.map(({ enclosure, name }) => ({ kind: "enclosure", id: enclosure, name })),
      text: wording.covers(listed(names)),
      cautions: ["WRK6"],
    },
    ...mains,
    ...breakers.map(
      (breaker): StepDraft => ({
        id: `energise:${breaker.device}`,
        stage: 14,
        kind: "energise",
        box: breaker.panel,
        items: [{ kind: "device", id: breaker.device, name: breaker.name }],
        text: (breaker.isFuse === true ? wording.putBack : wording.close)(breakerWords(breaker)),
        ifNot: wording.opensAtOnce,
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
