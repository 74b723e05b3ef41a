import { failed, ok, problem, type Result } from "../../shared-model/lib/result.ts";
import { type Answer, answerOf, type Bridge } from "./desktop-bridge.ts";
import type { ChosenFile, FileHost, FileTarget, SaveOutcome } from "./file-host.ts";
import { wording } from "./words.ts";

type Opened = Extract<Awaited<ReturnType<Bridge["openDropped"]>>, { ok: true }>["value"];

/** What the desktop program tells of a file that this window holds. */
interface Held {
  readonly file: string;
  readonly name: string;
  readonly recent: string;
}

/** Opening and saving through the desktop program, which keeps the paths and writes the files. */
export function desktopFileHost(bridge: Bridge): FileHost {
  const targetOf = ({ file, name, recent }: Held): FileTarget => ({
    name,
    token: file,
    recent: async () => recent,
    write: (text, overwrite) => saveOutcome(name, answerOf(bridge.saveFile({ file, text, overwrite }))),
  });

  /** What went wrong on the way is an outcome as well: the window says it. */
  async function chosen(asking: Promise<Answer<Opened>>): Promise<Result<ChosenFile> | undefined> {
    const answer = await asking;
    if (!answer.ok) return unreadable(answer.message);
    const opened = answer.value;
    if (opened === null) return undefined;
    if (!opened.ok) return unreadable(opened.message);
    return ok({ name: opened.name, text: opened.text, target: targetOf(opened) });
  }

  return {
    chooseFile: () => chosen(bridge.chooseFile()),
    async saveAs(name, text) {
      const saved = await answerOf(bridge.saveFileAs({ name: name.slice(0, 255), text }));
      if (saved === null) return undefined;
      const outcome = withoutUndefined(saved.outcome);
      return saved.file === null ? { outcome } : { outcome, target: targetOf(saved.file) };
    },
    async saveCopy(name, kind, bytes) {
      const shownAs = `${name}.${kind}`;
      try {
        const saved = await answerOf(bridge.saveCopyAs({ name: name.slice(0, 200), kind, bytes }));
        if (saved === null) return undefined;
        if (saved.kind === "failed") return saved;
        return { kind: "saved", name: saved.name, ...(saved.note !== undefined && { note: saved.note }) };
      } catch (error) {
        return { kind: "failed", message: notSaved(shownAs, error) };
      }
    },
    startFile: () => chosen(bridge.takeWaitingFile({ wanted: true })),
    refuseStartFile: async () => {
      await answerOf(bridge.takeWaitingFile({ wanted: false }));
    },
    takeDropped(dropped) {
      const file = dropped.files[0];
      return file === undefined ? undefined : () => chosen(bridge.openDropped(file));
    },
    recent: {
      list: () => answerOf(bridge.recentFiles()),
      open: (id) => chosen(bridge.openRecent({ id })),
      async forget(id) {
        await answerOf(bridge.forgetRecent({ id }));
      },
    },
  };
}

const unreadable = (message: string) => failed(problem("file-unreadable", "", message));

type Saved = Extract<Awaited<ReturnType<Bridge["saveFile"]>>, { ok: true }>["value"];

/** The desktop program may be gone in the middle of a save; that is an outcome too. */
async function saveOutcome(name: string, saving: Promise<Saved>): Promise<SaveOutcome> {
  try {
    return withoutUndefined(await saving);
  } catch (error) {
    return { kind: "failed", message: notSaved(name, error) };
  }
}

const notSaved = (name: string, error: unknown): string =>
  wording.wasNotSaved(name, error instanceof Error ? error.message : "").trim();

function withoutUndefined(saved: Saved): SaveOutcome {
  if (saved.kind !== "saved") return saved;
  return saved.note === undefined ? { kind: "saved" } : { kind: "saved", note: saved.note };
}
