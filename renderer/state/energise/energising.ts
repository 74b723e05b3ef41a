import type { Act, Energised, Operated } from "../../../shared-model/answers/energised.ts";
import { documentStore, followDocument, shownInstallation } from "../document-store.ts";
import { notify, sessionStore, showPane } from "../session-store.ts";
import { askEnergised } from "./ask-energised.ts";
import { energiseStore, resetEnergise } from "./energise-store.ts";
import { actWords } from "./energise-words.ts";

/** Key that energises, and ends it, anywhere in the window. */
export const ENERGISE_KEY = "F9";

/** An answer that does not come is asked for again so often: a worker may be starting. */
const TRIES = 20;
const AGAIN_AFTER_MS = 150;

let asking = false;
let wanted = false;
const acts: Act[] = [];
let stopFollowing: (() => void) | undefined;
let serial = 0;

export const nextLogSerial = (): number => ++serial;

/** Energises the drawing that is shown, or ends that. */
export function toggleEnergise(): void {
  if (energiseStore.get().on) leaveEnergise();
  else begin();
}

function begin(): void {
  if (Object.keys(shownInstallation().enclosures).length === 0) {
    notify("note", "Nothing to energise", ["Draw a panel and a circuit first, or open a sample."]);
    return;
  }
  energiseStore.merge({ on: true, trouble: undefined });
  showPane("energise");
  let { state } = documentStore.get();
  const stopState = documentStore.subscribe(() => {
    const now = documentStore.get().state;
    if (now === state) return;
    state = now;
    // The two accounts of the wiring are two circuits: nothing that was done in one holds in the other.
    energiseStore.merge({ answer: undefined, last: undefined });
    compute();
  });
  const stopDocument = followDocument(({ patches }) => {
    if (patches === undefined) {
      stop();
      resetEnergise();
    } else compute();
  });
  stopFollowing = () => {
    stopState();
    stopDocument();
  };
  compute();
}

/** Ends it; what was set and the log stay for the next time. */
export function leaveEnergise(): void {
  const { on, setting, log, outlet } = energiseStore.get();
  if (!on) return;
  stop();
  resetEnergise({ setting, log, outlet });
}

function stop(): void {
  stopFollowing?.();
  stopFollowing = undefined;
  acts.length = 0;
  if (sessionStore.get().pane === "energise") showPane("details");
}

/** Changes what is operated, and computes it. */
export function setOperated(part: Partial<Operated>): void {
  energiseStore.merge({ setting: { ...energiseStore.get().setting, ...part }, last: undefined });
  compute();
}

/** Does something for a moment: TEST, a leak, the button of a plug-in tester. */
export function doNow(act: Act): void {
  acts.push(act);
  compute();
}

/** Computes what is set now. Of what is asked while an answer is on its way only the last is asked, and every act. */
export function compute(): void {
  wanted = true;
  if (!asking) void askAll();
}

async function askAll(): Promise<void> {
  asking = true;
  energiseStore.merge({ busy: true });
  try {
    for (let tries = 0; wanted && energiseStore.get().on; ) {
      wanted = false;
      const [act] = acts;
      const { setting, leads, outlet } = energiseStore.get();
      const { state } = documentStore.get();
      const meter = leads.V && leads.COM && { from: leads.V, to: leads.COM };
      const said = await askEnergised(state, setting, {
        ...(meter && { meter }),
        ...(outlet !== undefined && { outlet }),
        ...(act && { act }),
      });
      if (said === undefined) {
        if (++tries > TRIES) {
          energiseStore.merge({
            trouble: "The circuit cannot be computed now. Change something, or end it and energise again.",
          });
          break;
        }
        await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
        wanted = true;
        continue;
      }
      tries = 0;
      if (!energiseStore.get().on) break;
      // Of another account of the wiring: it was switched meanwhile.
      if (documentStore.get().state !== state) {
        wanted = true;
        continue;
      }
      if (act) acts.shift();
      take(said.answer, said.revision, act);
      if (acts.length > 0) wanted = true;
    }
  } finally {
    asking = false;
    energiseStore.merge({ busy: false });
  }
}

/** What opened stays open until it is reset. */
function take(answer: Energised, revision: number, act: Act | undefined): void {
  const { setting, log, last } = energiseStore.get();
  const opened = answer.opened.flat();
  const tripped = [...new Set([...setting.tripped, ...opened.map(({ device }) => device)])];
  energiseStore.merge({
    answer,
    revision,
    trouble: undefined,
    ...(tripped.length > setting.tripped.length && { setting: { ...setting, tripped } }),
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
      log: [{ serial: nextLogSerial(), at, title: words.title, value: words.value }, ...log],
    });
  } else if (opened.length > 0) {
    const lines = opened.map(({ name, why }) => ({
      serial: nextLogSerial(),
      at,
      title: `${name} opened`,
      value: why,
    }));
    energiseStore.merge({ log: [...lines, ...log], last });
    notify(
      "note",
      `${opened.map(({ name }) => name).join(", ")} opened`,
      opened.map(({ name, why }) => `${name}: ${why}`),
    );
  }
}
