import type { CommandCall } from "../answers/command-call.ts";
import { runCommand } from "../commands/run-command.ts";
import type { Box } from "../model/enclosure.ts";
import type { Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { checkBox } from "../rules/run-rules.ts";

const STATE: StateName = "proposed";
const ROOM_RULES: ReadonlySet<string> = new Set(["box-overfull", "device-deeper-than-room"]);

/** What is done to a box so that it holds what is in it. */
interface RoomFix {
  readonly calls: readonly CommandCall[];
  readonly words: string;
  /** Titles of all ways to begin with, the least work first. */
  readonly ways: readonly string[];
}

/** The least work by which the box, once the device is in, holds what is in it: as the rules offer it. `wanted` is the title of another way. */
export function roomFix(
  project: Project,
  { id }: Box,
  calls: readonly CommandCall[],
  wanted?: string,
): RoomFix | undefined {
  const words: string[] = [];
  let ways: readonly string[] = [];
  const fixes: CommandCall[] = [];
  for (let round = 0; round < ROOM_RULES.size; round += 1) {
    const done = runCommand(project, { command: "run-together", args: { title: "Look", calls: [...calls, ...fixes] } });
    const installation = done.ok ? getInstallation(done.project, STATE) : undefined;
    const enclosure = installation?.enclosures[id];
    if (!done.ok || installation === undefined || enclosure === undefined) break;
    const { reports } = checkBox({ project: done.project, installation, state: STATE, enclosure });
    const all = reports
      .filter(({ rule }) => ROOM_RULES.has(rule.id))
      .flatMap(({ report: { offers = [], fix } }) => [...offers, ...(fix === undefined ? [] : [fix])]);
    const offer = all.find(({ title }) => title === wanted) ?? all[0];
    if (round === 0) ways = all.map(({ title }) => title);
    if (offer === undefined) break;
    words.push(offer.title);
    const { command, args } = offer.call;
    fixes.push(...(command === "run-together" ? (args as { calls: readonly CommandCall[] }).calls : [offer.call]));
  }
  return fixes.length === 0 ? undefined : { calls: fixes, words: words.join("; "), ways };
}
