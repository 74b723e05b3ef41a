const isMac = /Mac|iPhone|iPad/.test(navigator.platform);

/** Name of the key that goes with a letter in a shortcut on this computer. */
export const modKey = isMac ? "Cmd" : "Ctrl";

/** Whether that key, and no other but Shift, is down. */
export const hasModKey = (event: KeyboardEvent): boolean =>
  (isMac ? event.metaKey && !event.ctrlKey : event.ctrlKey && !event.metaKey) && !event.altKey;
