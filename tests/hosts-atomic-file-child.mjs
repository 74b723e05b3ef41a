/**
 * Saves one version after the other over the same file until it is killed, and names each on standard output once the
 * save is acknowledged. `tests/hosts-atomic-file-kill.test.ts` starts it, because what a kill leaves behind can only be
 * seen from another process.
 *
 *   node hosts-atomic-file-child.mjs MODULE FILE BYTES
 */
import { writeSync } from "node:fs";

const [module = "", file = "", bytes = "0"] = process.argv.slice(2);
const { replaceFile } = await import(module);

// With a listener, a write beyond the limit that the parent set fails instead of ending the process.
process.on("SIGXFSZ", () => undefined);

for (let version = 1; ; version++) {
  const result = await replaceFile(file, Buffer.alloc(Number(bytes), `${version} `));
  if (!result.saved) {
    writeSync(1, `${JSON.stringify(result)}\n`);
    break;
  }
  writeSync(1, `${version}\n`);
}
