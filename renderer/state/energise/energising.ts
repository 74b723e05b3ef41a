import type { Act, Energised, Operated } from "../../../shared-model/answers/energised.ts";
import { documentStore, followDocument, shownInstallation } from "../document-store.ts";
import { notify, sessionStore, showPane, turnTo } from "../session-store.ts";
import { askEnergised } from "./ask-energised.ts";
import { endsBy } from "./ending.ts";
import { ALL_ON, type AnswerAbout, energiseStore, resetEnergise } from "./energise-store.ts";
import { actWords } from "./energise-words.ts";
import { evidenceLine, nextLogSerial, readOfAct } from "./evidence.ts";
import { wording } from "./words.ts";

/** An answer that does not come is asked for again so often: a worker may be starting. */
const TRIES = 20;
const AGAIN_AFTER_MS = 150;

const TROUBLE = wording.theCircuitCannotBeComputedNow;

let asking = false;
let wanted = false;
const acts: Act[] = [];
let stopState: (() => void) | undefined;
let stopDocument: (() => void) | undefined;
/** Counts how often it was ended: an answer from before that is about something else. */
let round = 0;
/** Energises the drawing that is shown, or ends that. */
export function toggleEnergise(): void {
  if (energiseStore.get().on) leaveEnergise();
  else begin();
}

function begin(): void {
  endsBy(leaveEnergise);
  if (Object.keys(shownInstallation().enclosures).length === 0) {
    notify("note", wording.nothingToEnergise, [wording.drawAPanelAndACircuit]);
    return;
  }
  energiseStore.merge({ on: true, trouble: undefined });
  showPane("energise");
  let { state } = documentStore.get();
  stopState = documentStore.subscribe(() => {
    const now = documentStore.get().state;
    if (now === state) return;
    state = now;
    // The two accounts of the wiring are two circuits: what is set holds in both, but what was found in one, or was still
    // to be done there, says nothing of the other.
    acts.length = 0;
    energiseStore.merge({ answer: undefined, about: undefined, last: undefined });
    compute();
  });
  // It is followed after it is ended, too: what is kept for the next time belongs to this document.
  stopDocument ??= followDocument(({ patches }) => {
    if (patches === undefined) {
      stop();
      stopDocument?.();
      stopDocument = undefined;
      resetEnergise();
    } else if (energiseStore.get().on) compute();
  });
  compute();
}

/** Ends it; what was set and the log stay for the next time, as long as the document does. */
export function leaveEnergise(): void {
  const { on, setting, log, outlet } = energiseStore.get();
  if (!on) return;
  stop();
  resetEnergise({ setting, log, outlet });
}

function stop(): void {
  stopState?.();
  stopState = undefined;
  round += 1;
  acts.length = 0;
  if (sessionStore.get().pane === "energise") turnTo("details");
}

/** Changes what is operated, and computes it. */
export function setOperated(part: Partial<Operated>): void {
  energiseStore.merge({ setting: { ...energiseStore.get().setting, ...part }, last: undefined });
  compute();
}

/** Everything on, reset, in use and as drawn: what is still to be done for a moment is left, too. */
export function setAllOn(): void {
  acts.length = 0;
  setOperated(ALL_ON);
}

/** Does something: TEST, RESET, a leak, the button of a plug-in tester. */
export function doNow(act: Act): void {
  acts.push(act);
  compute();
}

/** Computes what is set now. Of what is asked while an answer is on its way only the last is asked, and every act. */
export function compute(): void {
  wanted = true;
  energiseStore.merge({ busy: true });
  if (!asking) void askAll();
}

async function askAll(): Promise<void> {
  asking = true;
  try {
    for (let tries = 0; wanted && energiseStore.get().on; ) {
      wanted = false;
      const [act] = acts;
      const { setting, leads, outlet } = energiseStore.get();
      const { state, revision } = documentStore.get();
      const asked = round;
      const meter = leads.V && leads.COM && { from: leads.V, to: leads.COM };
      const said = await askEnergised(state, setting, {
        ...(meter && { meter }),
        ...(outlet !== undefined && { outlet }),
        ...(act && { act }),
      });
      // A worker that has not seen this drawing yet answers of the one before.
      if (said === undefined || said.revision < revision) {
        if (++tries > TRIES) {
          // Nobody wants them done whenever it can be computed again.
          acts.length = 0;
          // What was found before says nothing of the drawing and the setting as they are now.
          energiseStore.merge({ answer: undefined, about: undefined, last: undefined, trouble: TROUBLE });
          break;
        }
        await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
        wanted = true;
        continue;
      }
      tries = 0;
      if (!energiseStore.get().on) break;
      // Meanwhile the account of the wiring was switched, it was ended and begun again, everything was reset, which would
      // open again by what is from before, or what was to be done was given up.
      const { tripped } = energiseStore.get().setting;
      if (
        documentStore.get().state !== state ||
        asked !== round ||
        tripped !== setting.tripped ||
        (act && acts[0] !== act)
      ) {
        wanted = true;
        continue;
      }
      if (act) acts.shift();
      take(said.answer, { state, revision: said.revision, setting, leads }, act);
      if (acts.length > 0) wanted = true;
    }
  } finally {
    asking = false;
    energiseStore.merge({ busy: false });
  }
}

/** What opened stays open until it is reset. */
function take(answer: Energised, about: AnswerAbout, act: Act | undefined): void {
  const { setting, log, last } = energiseStore.get();
  const opened = answer.opened.flat();
  const { tripped } = answer;
  const after = isSameList(tripped, about.setting.tripped) ? about.setting : { ...about.setting, tripped };
  energiseStore.merge({
    answer,
    about: { ...about, setting: after },
    trouble: undefined,
    // Something else may have been operated meanwhile, but nothing was put back on.
    setting: setting === about.setting ? after : { ...setting, tripped: after.tripped },
  });
  const at = Date.now();
  if (act !== undefined && answer.act !== undefined) {
    const words = actWords(act, answer);
    energiseStore.merge({
      last: {
        act,
        title: words.title,
        at,
        done: answer.act,
        opened,
        mayOpen: answer.mayOpen,
        otherwise: answer.otherwise,
      },
      log: [evidenceLine(words.title, words.value, readOfAct(act, words.value, answer), answer, about), ...log],
    });
  } else if (opened.length > 0) {
    const lines = opened.map(({ name, why }) => ({
      serial: nextLogSerial(),
      at,
      title: wording.opened2(name),
      value: why,
    }));
    energiseStore.merge({ log: [...lines, ...log], last });
    notify(
      "note",
      wording.opened(opened.map(({ name }) => name).join(", ")),
      opened.map(({ name, why }) => `${name}: ${why}`),
    );
  }
}

const isSameList = <T>(one: readonly T[], other: readonly T[]): boolean =>
  one.length === other.length && one.every((item) => other.includes(item));
