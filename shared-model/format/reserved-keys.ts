/** Keys that change what an object is, in some program that copies it carelessly. No file may hold them anywhere. */
export const RESERVED_KEYS: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);
