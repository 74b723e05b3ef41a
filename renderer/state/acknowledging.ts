import type { Finding } from "../../shared-model/answers/finding.ts";
import { type Dispatched, dispatch } from "./document-store.ts";
import { preferencesStore } from "./preferences-store.ts";

/** Writes down that a person knows a finding and accepts it. The name is remembered for the next time. */
export function acknowledge({ key, state, message, severity }: Finding, by: string, reason: string): Dispatched {
  const at = new Date().toISOString();
  const done = dispatch({
    command: "acknowledge-finding",
    args: { finding: key, state, by: by.trim(), reason: reason.trim(), at, said: message, severity },
  });
  if (done.ok) preferencesStore.merge({ name: by.trim() });
  return done;
}

export const withdrawAcknowledgement = ({ key, state }: Finding): Dispatched =>
  dispatch({ command: "withdraw-acknowledgement", args: { finding: key, state } });

/** The day of an ISO time as the person's own clock has it: "3 May 2026". */
export function dayOf(time: string): string {
  const date = new Date(time);
  return Number.isNaN(date.getTime()) ? time : new Intl.DateTimeFormat("en", { dateStyle: "medium" }).format(date);
}
