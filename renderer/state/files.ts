import { parseText } from "../analysis/checks.ts";
import { browserFileHost } from "../platform/browser-file-host.ts";
import { createFileActions } from "./file-actions.ts";

/** Opening and saving in this window. */
export const files = createFileActions({ host: browserFileHost, parse: parseText });
