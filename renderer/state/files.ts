import { parseStartText, parseText } from "../analysis/checks.ts";
import { browserFileHost } from "../platform/browser-file-host.ts";
import { desktopBridge } from "../platform/desktop-bridge.ts";
import { desktopFileHost } from "../platform/desktop-file-host.ts";
import type { FileHost } from "../platform/file-host.ts";
import { createFileActions } from "./file-actions.ts";

/** How this window reaches files. */
export const fileHost: FileHost = desktopBridge === undefined ? browserFileHost : desktopFileHost(desktopBridge);

/** Opening and saving in this window. */
export const files = createFileActions({
  host: fileHost,
  parse: (text, atStart) => (atStart ? parseStartText(text) : parseText(text)),
});
