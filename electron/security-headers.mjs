/**
 * What every answer that carries a part of the window says, in the browser host and in the desktop shell alike.
 * Nothing but the window's own files: no inline code, no address elsewhere, no frame around it, no text taken for code.
 */

/** The rules that a page can set for itself as well; `frame-ancestors` works in a header only. */
export const PAGE_POLICY =
  "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; img-src 'self' blob: data:; " +
  "font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; " +
  "object-src 'none'; require-trusted-types-for 'script'";

export const SECURITY_HEADERS = Object.freeze({
  "Content-Security-Policy": `${PAGE_POLICY}; frame-ancestors 'none'`,
  "X-Content-Type-Options": "nosniff",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Referrer-Policy": "no-referrer",
});
