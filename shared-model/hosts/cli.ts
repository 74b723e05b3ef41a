/** The command line: `npm run -s loadside -- VERB ...`. */
import { runCommandLine } from "./cli/run-command-line.ts";

// Set, not exited with: what was printed may still be on its way through a pipe.
process.exitCode = await runCommandLine(process.argv.slice(2));
