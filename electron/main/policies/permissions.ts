/** Everything is refused but what copying and pasting by a menu needs; Electron by itself would allow it all. */
const ALLOWED: ReadonlySet<string> = new Set(["clipboard-sanitized-write", "clipboard-read"]);

/** @param ownPage Whether the window's own page asks, and not something inside it. */
export const mayUse = (permission: string, ownPage: boolean): boolean => ownPage && ALLOWED.has(permission);
