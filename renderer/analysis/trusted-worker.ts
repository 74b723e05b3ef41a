import { workerName } from "../../shared-model/lib/language.ts";

/** The part of the Trusted Types interface that is used here; TypeScript's window types do not know it. */
interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): unknown;
}

/**
 * Where the page demands trusted script addresses, a plain address of a worker is refused. This default policy lets
 * those pass that the window was built with, and nothing from elsewhere.
 */
export function allowOwnWorkers(): void {
  const { trustedTypes } = globalThis as { readonly trustedTypes?: TrustedTypes };
  trustedTypes?.createPolicy("default", {
    createScriptURL(url) {
      if (new URL(url, location.href).origin !== location.origin)
        throw new TypeError(`Not a script of this window: ${url}`);
      return url;
    },
  });
}

/** The checking worker. Its address must stand here as written: the builder looks for this shape. */
export const createCheckingWorker = (): Worker =>
  new Worker(new URL("../../shared-model/hosts/worker.ts", import.meta.url), {
    type: "module",
    name: workerName("checks"),
  });

/** The paper worker, written the same way. */
export const createPaperWorker = (): Worker =>
  new Worker(new URL("../../shared-model/hosts/paper-worker.ts", import.meta.url), {
    type: "module",
    name: workerName("paper"),
  });
