/** Which addresses belong to the window. Everything else is kept out: no page, no frame and no request. */

/** A scheme of our own: `file:` would let a page read whatever the person can read. */
export const SCHEME = "app";
const HOST = "window";
export const WINDOW_ADDRESS: string = `${SCHEME}://${HOST}/index.html`;

/** Schemes that lead nowhere: their contents were made in the window itself. */
const MADE_HERE: ReadonlySet<string> = new Set(["blob:", "data:"]);

/** True for an address under the window's own origin: parsed, never compared by its beginning. */
export function isOwnAddress(address: string): boolean {
  const url = parsed(address);
  return (
    url !== undefined &&
    url.protocol === `${SCHEME}:` &&
    url.hostname === HOST &&
    url.port === "" &&
    url.username === "" &&
    url.password === ""
  );
}

/** True for the page of the window, as at a reload; it goes nowhere else. */
export function mayNavigate(address: string): boolean {
  const path = isOwnAddress(address) ? parsed(address)?.pathname : undefined;
  return path === "/" || path === "/index.html";
}

/** True for what the window may load. The tools for developers load themselves from an address of their own. */
export function mayRequest(address: string, withTools: boolean): boolean {
  if (isOwnAddress(address)) return true;
  const protocol = parsed(address)?.protocol ?? "";
  return MADE_HERE.has(protocol) || (withTools && protocol === "devtools:");
}

function parsed(address: string): URL | undefined {
  // A reader of addresses drops these silently, and then reads another one.
  if (/[\s\p{Cc}]/u.test(address)) return undefined;
  try {
    return new URL(address);
  } catch {
    return undefined;
  }
}
