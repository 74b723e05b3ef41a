import { fillIfDone } from "../../analysis/blank-document.ts";
import type { FromWorker } from "../../analysis/protocol.ts";
import type { Session } from "../../analysis/session.ts";
import { freePlace } from "../../geometry/free-place.ts";
import type { Project } from "../../model/project.ts";
import { findInstallation } from "../../queries/installation-of.ts";
import { blankDocument, type Checking, checkedAt } from "./document.ts";
import { heldRevision, type Message, post, whileFetching } from "./line.ts";

// Questions of the window that are answered in one go, each about the revision that is held and about no other.

/** What would follow from commands; in a document that holds nothing, the box fill alone. */
export function preview({ request, base, state, calls, mends, fillOf }: Message<"preview">): void {
  const blank = blankDocument();
  if (blank !== undefined && fillOf !== undefined) {
    const results = calls.map((call) => fillIfDone(blank, state, call, fillOf));
    post({ type: "previewed", request, base: base === heldRevision() ? base : -1, results });
    return;
  }
  const session = checkedAt(base)?.session;
  const known = session?.states.includes(state) === true ? session : undefined;
  post({
    type: "previewed",
    request,
    base: known === undefined ? -1 : base,
    results: known?.preview(state, calls, mends, fillOf) ?? [],
  });
}

/** What the circuit does when it is energised. */
export function energise({ request, base, state, setting, ask }: Message<"energise">): void {
  reply({ type: "energised", request, base }, (none) => {
    const held = checkedAt(base);
    const project = held?.session.project;
    const installation = project && findInstallation(project, state);
    const answer = installation && project && held?.energiser.answer(state, installation, project.supply, setting, ask);
    return answer && { ...none, answer };
  });
}

/** Voltage drop at the outlets of a device. */
export function outletDrops(
  { request, base, state, device }: Message<"outlet-drops">,
  checking: Checking | undefined,
): void {
  reply({ type: "outlet-drops", request, base }, (none) => {
    const project = projectAt(base);
    const drops = project && checking?.deviceDrops(project, state, device);
    return drops && { ...none, drops };
  });
}

/** What the document leads to expect of tests. */
export function expectedTests(
  { request, base, wanted }: Message<"expected-tests">,
  checking: Checking | undefined,
): void {
  reply({ type: "expected-tests", request, base }, (none) => {
    const project = projectAt(base);
    const answers = project && checking?.expectedTests(project, wanted);
    return answers && { ...none, answers };
  });
}

/** The rules that run by an edition, whatever document is held. */
export function ruleBook({ request, edition }: Message<"rule-book">, checking: Checking | undefined): void {
  post({ type: "rule-book", request, rules: checking?.ruleBook(edition) ?? [] });
}

/** The make-up of a box. */
export async function makeUp({ request, base, ask }: Message<"make-up">): Promise<void> {
  const project = copyAt(base);
  const planning = await fetchPlanning();
  reply({ type: "made-up", request, base }, (none) => {
    const answer = project && planning?.answerMakeUp(project, ask);
    return answer && { ...none, answer };
  });
}

/** A ground-fault device in the place of a receptacle. */
export async function fit({ request, base, ask }: Message<"fit">): Promise<void> {
  const project = copyAt(base);
  const planning = await fetchPlanning();
  reply({ type: "fitted", request, base }, (none) => {
    const answer = project && planning?.answerFit(project, ask);
    return answer && { ...none, answer };
  });
}

/** A panel for a cable that leads out of the drawing. */
export async function supply({ request, base, ask }: Message<"supply">): Promise<void> {
  const project = copyAt(base);
  const drawing = await whileFetching(() => import("../../planning/supply/draw-supply.ts")).catch(console.error);
  reply({ type: "supplied", request, base }, (none) => {
    const answer = project && drawing?.drawSupply(project, ask, freePlace);
    return answer && { ...none, answer };
  });
}

/** What a survey tells. */
export async function survey({ request, base, ask }: Message<"survey">): Promise<void> {
  const project = projectAt(base);
  const surveying = await whileFetching(() => import("../../analysis/answer-survey.ts")).catch(console.error);
  reply({ type: "surveyed", request, base }, (none) => {
    const told = project && surveying?.answerSurvey(project, ask);
    return told && { ...none, reply: told };
  });
}

/** What plans a make-up is fetched when one is asked for first. */
const fetchPlanning = () => whileFetching(() => import("../../planning/answer-make-up.ts")).catch(console.error);

/**
 * Posts an answer, or that there is none. The checks go on without it: a fault in the work must not cost the drawing its
 * findings.
 * @param none The message that says so; the work adds the answer to it.
 */
function reply<M extends FromWorker>(none: M, work: (none: M) => M | undefined): void {
  try {
    post(work(none) ?? none);
  } catch (fault) {
    console.error(fault);
    post(none);
  }
}

const projectAt = (base: number): Project | undefined => checkedAt(base)?.session.project;

/** A copy of one revision to plan on: the same for the questions that follow each other while a form is filled in. */
let toPlanOn: { readonly session: Session; readonly revision: number; readonly project: Project } | undefined;

function copyAt(base: number): Project | undefined {
  const session = checkedAt(base)?.session;
  if (session === undefined) return undefined;
  if (toPlanOn?.session !== session || toPlanOn.revision !== base)
    toPlanOn = { session, revision: base, project: session.copy() };
  return toPlanOn.project;
}
