import { type IpcMainInvokeEvent, ipcMain } from "electron";
import { channelOf, type EventName, REQUESTS, type RequestName } from "../ipc/channels.ts";
import { answerRequest, checkedEvent } from "../ipc/check.ts";
import type { EventOf, ReplyOf, RequestOf } from "../ipc/contract.ts";
import type { DocumentWindow } from "./document-window.ts";
import { isTrusted } from "./policies/senders.ts";

/** What the main process does for each request of a window. */
export type Handlers = {
  readonly [N in RequestName]: (request: RequestOf<N>, window: DocumentWindow) => Promise<ReplyOf<N>> | ReplyOf<N>;
};

/** Opens every channel of the contract, each behind the same check of who asks and of what is asked. */
export function serveRequests(
  handlers: Handlers,
  windowOf: (contentsId: number) => DocumentWindow | undefined,
  report: (error: unknown) => void,
): void {
  for (const name of REQUESTS) serve(name, handlers[name], windowOf, report);
}

function serve<N extends RequestName>(
  name: N,
  handler: Handlers[N],
  windowOf: (contentsId: number) => DocumentWindow | undefined,
  report: (error: unknown) => void,
): void {
  ipcMain.handle(channelOf(name), (event, ...args: unknown[]) => {
    const window = windowOf(event.sender.id);
    if (window === undefined || args.length > 1 || !isFromPage(event))
      return { ok: false, message: "This page may not ask for that." };
    return answerRequest(name, args[0], (request) => handler(request, window), report);
  });
}

const isFromPage = ({ sender, senderFrame }: IpcMainInvokeEvent): boolean =>
  isTrusted({ isKnown: true, address: senderFrame?.url, isTopFrame: senderFrame === sender.mainFrame });

/** Tells the page of a window something; nothing where the page is gone. */
export function tell<N extends EventName>({ browser }: DocumentWindow, name: N, event: EventOf<N>): void {
  if (!browser.isDestroyed()) browser.webContents.send(channelOf(name), checkedEvent(name, event));
}
