/**
 * `npm run -s loadside -- VERB ...`: starts the command line, built anew when its sources have changed. The program runs
 * in this very process, so standard input and the exit status are its own. Status 3: it cannot be built or loaded.
 */
import { buildWhenStale } from "./build.mjs";

/** @param {string} what @param {unknown} error */
function giveUp(what, error) {
  console.error(`${what}: ${error instanceof Error ? error.message : error}`);
  process.exit(3);
}

await buildWhenStale("cli").catch((error) => giveUp("loadside could not be built", error));
// npm runs scripts in the project's folder; names of files are meant from where the person stands.
if (process.env.npm_lifecycle_event === "loadside" && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
await import(new URL("../../dist/cli/loadside.mjs", import.meta.url).href).catch((error) =>
  giveUp("loadside could not be started", error),
);
