import { failed, ok, problem, type Result } from "../../shared-model/lib/result.ts";
import type { ChosenFile, FileTarget, SaveOutcome } from "./file-host.ts";
import { wording } from "./words.ts";

/** Whether the address names a file that the window was started with. */
export const isStartFileNamed = (): boolean => new URLSearchParams(location.search).has("open");

/** Reads the file that the window was started with from the program that serves it; the address names it by a token. */
export async function readStartFile(): Promise<Result<ChosenFile> | undefined> {
  const token = new URLSearchParams(location.search).get("open");
  if (token === null) return undefined;
  const address = `opened-file?token=${encodeURIComponent(token)}`;
  try {
    const answer = await fetch(address);
    const name = decodeURIComponent(answer.headers.get("Loadside-File-Name") ?? "");
    if (answer.ok && name !== "") {
      // Every byte is kept, a byte order mark too.
      const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(await answer.arrayBuffer());
      return ok({ name, text, target: servedTarget(name, address) });
    }
    const said = textOf(await answer.json(), "message");
    return failed(problem("file-unreadable", "", said ?? wording.theFileCouldNotBeRead));
  } catch {
    return failed(problem("host-gone", "", wording.theProgramThatOpenedThisWindow));
  }
}

function servedTarget(name: string, address: string): FileTarget {
  return {
    name,
    async write(text, overwrite): Promise<SaveOutcome> {
      try {
        const answer = await fetch(`${address}${overwrite ? "&overwrite=1" : ""}`, { method: "PUT", body: text });
        const body: unknown = await answer.json();
        const note = textOf(body, "note");
        if (answer.ok) return note === undefined ? { kind: "saved" } : { kind: "saved", note };
        const message = textOf(body, "message") ?? wording.wasNotSaved2(name);
        return answer.status === 409 ? { kind: "changed-elsewhere", message } : { kind: "failed", message };
      } catch {
        const remedy = wording.theDrawingIsStillHereUse;
        return {
          kind: "failed",
          message: wording.wasNotSavedTheProgramThat(name, remedy),
        };
      }
    },
  };
}

/** A text field of an answer whose shape nobody has promised. */
function textOf(body: unknown, field: string): string | undefined {
  if (typeof body !== "object" || body === null) return undefined;
  const value: unknown = Reflect.get(body, field);
  return typeof value === "string" ? value : undefined;
}
