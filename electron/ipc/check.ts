import * as v from "valibot";
import type { EventName, RequestName } from "./channels.ts";
import { type Answer, type EventOf, events, type ReplyOf, type RequestOf, requests } from "./contract.ts";

/**
 * Runs a request whose shape is right, and lets its reply out when that is right as well. Never throws: what went wrong
 * inside is told to `report` and not to the window.
 */
export async function answerRequest<N extends RequestName>(
  name: N,
  payload: unknown,
  run: (request: RequestOf<N>) => Promise<ReplyOf<N>> | ReplyOf<N>,
  report: (error: unknown) => void,
): Promise<Answer<ReplyOf<N>>> {
  const request = read<RequestOf<N>>(requests[name].request, payload);
  if (request === undefined) return { ok: false, message: "The window asked for something that does not exist." };
  try {
    const reply = read<ReplyOf<N>>(requests[name].reply, await run(request.value));
    if (reply !== undefined) return { ok: true, value: reply.value };
    report(new Error(`The reply to ${name} has not the shape of its contract.`));
  } catch (error) {
    report(error);
  }
  return { ok: false, message: "That did not work. The drawing is still here: try again." };
}

/** @throws {Error} The event has not the shape of its contract: a bug of the main process. */
export function checkedEvent<N extends EventName>(name: N, event: EventOf<N>): EventOf<N> {
  const read = v.safeParse(events[name], event);
  if (!read.success) throw new Error(`The event ${name} has not the shape of its contract.`);
  return event;
}

/** In a box of its own, because "nothing" is a right value too. Schemas of the contract change nothing they read. */
function read<T>(schema: v.GenericSchema, value: unknown): { readonly value: T } | undefined {
  try {
    const outcome = v.safeParse(schema as v.GenericSchema<unknown, T>, value);
    return outcome.success ? { value: outcome.output } : undefined;
  } catch {
    // A getter of a hostile object may throw; nothing that crosses processes has one.
    return undefined;
  }
}
