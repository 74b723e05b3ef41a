/** Tests run where there is no browser. */
export const isMac = typeof navigator !== "undefined" && /Mac|iPhone|iPad/.test(navigator.platform);

/** Name of the key that goes with a letter in a shortcut on this computer. */
export const modKey = isMac ? "Cmd" : "Ctrl";
