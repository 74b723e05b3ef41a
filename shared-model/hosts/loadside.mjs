/** `npm run -s loadside -- VERB ...`: starts the command line, built anew when its sources have changed. */
import { buildWhenStale } from "./build.mjs";

try {
  await buildWhenStale("cli");
} catch (error) {
  console.error(`loadside could not be built: ${error instanceof Error ? error.message : error}`);
  process.exit(3);
}
// npm runs scripts in the project's folder; names of files are meant from where the person stands.
if (process.env.npm_lifecycle_event === "loadside" && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
await import(new URL("../../dist/cli/loadside.mjs", import.meta.url).href);
