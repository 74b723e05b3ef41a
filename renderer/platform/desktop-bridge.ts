import type { Answer, Bridge } from "../../electron/ipc/contract.ts";

export type { Answer, Bridge };

/** What the desktop program puts into the window before its script runs; undefined in a browser. */
export const desktopBridge: Bridge | undefined = (globalThis as { readonly loadside?: Bridge }).loadside;

/** @throws {Error} The desktop program refused or failed; its sentence is for a person. */
export async function answerOf<T>(asked: Promise<Answer<T>>): Promise<T> {
  const answer = await asked;
  if (!answer.ok) throw new Error(answer.message);
  return answer.value;
}
