/** Written without newer syntax, so that an old Node can still read it and say what is wrong. */

/** @returns {string | undefined} What to tell the person if this Node is too old. */
export function nodeIsTooOld() {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return undefined;
  return `Loadside needs Node.js 20.19 or newer; this is ${process.versions.node}. See https://nodejs.org/`;
}
