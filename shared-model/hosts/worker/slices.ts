import type { ArrangedMove } from "../../analysis/protocol.ts";
import type { ScopePart, ScopeWork } from "../../answers/scope.ts";
import { inSlices } from "../../lib/in-slices.ts";
import { checkedAt } from "./document.ts";
import { giveSign, heldRevision, type Message, post, whileFetching } from "./line.ts";

// Questions whose work takes a while: it is done in slices, and other messages have their turn between them.

/** Milliseconds after which other messages have their turn. */
const SLICE_MS = 30;
/** Milliseconds in which the difference of an ordinary drawing is there with all its work. */
const SCOPE_AT_ONCE_MS = 300;

/**
 * The difference of the states; what works it out is fetched when it is asked for first. Where its work takes a while, the
 * difference goes first and the work is done in slices, until an edit comes.
 */
export async function scope({ request, base }: Message<"scope">): Promise<void> {
  const comparing = await whileFetching(() => import("../../analysis/scope-answer.ts")).catch(console.error);
  try {
    // Edits may have come meanwhile.
    const session = checkedAt(base)?.session;
    const begun = session && comparing?.beginScope(session);
    if (begun === undefined) post({ type: "scoped", request, base });
    else followScope(request, base, begun.part, begun.work());
  } catch (fault) {
    console.error(fault);
    post({ type: "scoped", request, base });
  }
}

function followScope(
  request: number,
  base: number,
  part: ScopePart,
  work: Iterator<undefined, ScopeWork, undefined>,
): void {
  let budget = SCOPE_AT_ONCE_MS;
  let told = false;
  const slice = (): void => {
    const until = performance.now() + budget;
    budget = SLICE_MS;
    try {
      if (heldRevision() !== base) {
        post({ type: "scope-work", request, base });
        return;
      }
      for (;;) {
        const step = work.next();
        if (step.done === true) {
          if (told) post({ type: "scope-work", request, base, work: step.value });
          else post({ type: "scoped", request, base, answer: { ...part, ...step.value } });
          return;
        }
        if (performance.now() >= until) break;
      }
    } catch (fault) {
      console.error(fault);
      post(told ? { type: "scope-work", request, base } : { type: "scoped", request, base });
      return;
    }
    if (!told) post({ type: "scope-part", request, base, part });
    else giveSign();
    told = true;
    setTimeout(slice);
  };
  slice();
}

let drop = (): void => {};

/** Leaves off the arranging that goes on, if any does. */
export const stopArranging = (): void => drop();

/** Where boxes go; what works it out is fetched when it is asked for first. Of two, the later counts. */
export async function arrange({ request, base, state, what }: Message<"arrange">): Promise<void> {
  stopArranging();
  const project = checkedAt(base)?.session.project;
  let dropped = false;
  const end = (moves?: readonly ArrangedMove[]): void => {
    drop = () => {};
    post({ type: "arranged", request, base, ...(moves && { moves }) });
  };
  const dropThis = (): void => {
    dropped = true;
    end();
  };
  drop = dropThis;
  try {
    const { arrangeSteps } = await import("../../geometry/house/arrange-steps.ts");
    const steps = project && arrangeSteps(project, state, what);
    if (dropped) return;
    if (steps === undefined) {
      end();
      return;
    }
    const stop = inSlices(steps, SLICE_MS, {
      now: () => performance.now(),
      later: (then) => void setTimeout(then),
      tell: (progress) => post({ type: "arranging", request, ...progress }),
      end,
    });
    if (drop === dropThis)
      drop = () => {
        stop();
        dropThis();
      };
  } catch (fault) {
    console.error(fault);
    if (!dropped) end();
  }
}
