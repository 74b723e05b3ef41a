import { SECURITY_HEADERS } from "../security-headers.mjs";
import { readWindowFiles } from "../window-files.mjs";
import { isOwnAddress } from "./policies/own-address.ts";

/** Answers requests under the window's own scheme. */
export type ServeWindow = (request: { readonly url: string; readonly method: string }) => Response;

/** @param folder The built window. All of it is read now: an address is looked up, and never becomes a path. */
export async function serveWindow(folder: string): Promise<ServeWindow> {
  const files = await readWindowFiles(folder);
  return ({ url, method }) => {
    if (method !== "GET" && method !== "HEAD") return refused(405);
    const file = isOwnAddress(url) ? files.get(new URL(url).pathname) : undefined;
    if (file === undefined) return refused(404);
    const headers = { ...SECURITY_HEADERS, "Content-Type": file.type, "Cache-Control": "no-store" };
    return new Response(method === "HEAD" ? null : new Uint8Array(file.bytes), { status: 200, headers });
  };
}

const refused = (status: number): Response => new Response(null, { status, headers: SECURITY_HEADERS });
