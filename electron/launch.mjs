/**
 * `npm start [-- FILE]`: sets up, builds, and opens the window. Plain Node without a package, because it runs before
 * any is installed; the rest is imported only once this Node is known to be new enough to read it.
 */
import { nodeIsTooOld } from "./node-version.mjs";

const tooOld = nodeIsTooOld();
if (tooOld === undefined) {
  import("./start.mjs")
    .then(({ start }) => start(process.argv.slice(2)))
    .then((status) => {
      process.exitCode = status;
    });
} else {
  console.error(tooOld);
  process.exitCode = 1;
}
