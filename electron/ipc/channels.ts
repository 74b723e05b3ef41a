/** Names of everything that crosses between window and main process. Plain text, so that preload holds no library. */

/** What the window asks, each with one answer. */
export const REQUESTS = [
  "chooseFile",
  "takeWaitingFile",
  "openDropped",
  "saveFile",
  "saveFileAs",
  "saveCopyAs",
  "recentFiles",
  "openRecent",
  "forgetRecent",
  "showDocument",
  "answerClose",
  "showKeys",
] as const;

export type RequestName = (typeof REQUESTS)[number];

/** What the main process tells the window. */
export const EVENTS = ["runCommand", "fileWaiting", "closeRequested"] as const;

export type EventName = (typeof EVENTS)[number];

/** The channel of a request or an event. */
export const channelOf = <N extends RequestName | EventName>(name: N): `loadside:${N}` => `loadside:${name}`;
