import { systemClipboard } from "../../platform/system-clipboard.ts";
import { documentStore } from "../document-store.ts";
import { notify } from "../session-store.ts";
import { STATE_WORDS } from "../shown-state.ts";
import { energiseStore, type LogLine } from "./energise-store.ts";
import { wording } from "./words.ts";

/** What stands over every computed reading that leaves the window. */
export const COMPUTED_STATEMENT = wording.computedCircuitNothingWasMeasuredNothing;

/** The log as text, in the order of time, with the statement that it is computed before the first line. */
export function logText(log: readonly LogLine[]): string {
  const { project } = documentStore.get();
  const lines = [...log]
    .sort((p, q) => p.serial - q.serial)
    .map(({ at, title, value, reading, setting }) => {
      const where = reading?.state === undefined ? "" : `${STATE_WORDS[reading.state].toLowerCase()}, `;
      const result = reading === undefined ? value : [reading.value, reading.unit].filter(Boolean).join(" ");
      const when = new Date(at).toISOString().replace("T", " ").slice(0, 19);
      return `${when} UTC\t${title}\t${result}\t${where}${setting ?? wording.settingNotNoted}`;
    });
  return [COMPUTED_STATEMENT, project.title, "", wording.whenWhatResultSetting, ...lines, ""].join("\n");
}

/** Puts the log on the clipboard of the computer. */
export async function copyLog(): Promise<void> {
  const done = await systemClipboard.write(logText(energiseStore.get().log));
  if (done) notify("note", wording.theLogIsOnTheClipboard, [wording.withTheWordsThatItIs]);
  else notify("problem", wording.theClipboardWasNotReached, [wording.theLogIsNotCopied]);
}
