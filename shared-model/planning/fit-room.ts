import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import type { RoomWay } from "../answers/make-up.ts";
import { runCommand } from "../commands/run-command.ts";
import type { Box } from "../model/enclosure.ts";
import type { Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { fillLedger } from "../rules/fill/fill-ledger.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import { checkBox } from "../rules/run-rules.ts";

const ROOM_RULES: ReadonlySet<string> = new Set(["box-overfull", "device-deeper-than-room"]);

/** What is done to a box so that it holds what is in it. */
interface RoomFix {
  readonly calls: readonly CommandCall[];
  /** What is done, in words; absent where nothing is. */
  readonly words?: string;
  /** All ways to begin with, the least work first. */
  readonly ways: readonly RoomWay[];
}

const NO_FIX: RoomFix = { calls: [], ways: [] };

/**
 * The least work by which a box, once other calls were run, holds what is in it: as the rules offer it. Work is planned in
 * proposed only: as found is what is there.
 * @param wanted Title of another way; false leaves the box as it is, with the ways told all the same.
 */
export function roomFix(
  project: Project,
  state: StateName,
  { id }: Box,
  calls: readonly CommandCall[],
  wanted?: string | false,
): RoomFix {
  if (state !== "proposed") return NO_FIX;
  const edition = fillEdition(project);
  const words: string[] = [];
  const ways: { readonly title: string; readonly fill: RoomWay["fill"] }[] = [];
  const fixes: CommandCall[] = [];
  let first: string | undefined;
  for (let round = 0; round < ROOM_RULES.size; round += 1) {
    const now = runAll(project, [...calls, ...fixes]);
    const enclosure = now && getInstallation(now, state).enclosures[id];
    if (now === undefined || enclosure === undefined) break;
    const { reports } = checkBox({ project: now, installation: getInstallation(now, state), state, enclosure });
    const all = reports
      .filter(({ rule }) => ROOM_RULES.has(rule.id))
      .flatMap(({ report: { offers = [], fix } }) => [...offers, ...(fix === undefined ? [] : [fix])]);
    if (round === 0)
      for (const way of all) {
        const then = runAll(project, [...calls, ...callsOf(way)]);
        const box = then && getInstallation(then, state).enclosures[id];
        if (then === undefined || box === undefined) continue;
        ways.push({ title: way.title, fill: fillLedger(getInstallation(then, state), box, edition) });
      }
    const offer = all.find(({ title }) => title === wanted) ?? all[0];
    if (offer === undefined || wanted === false) break;
    first ??= offer.title;
    words.push(offer.title);
    fixes.push(...callsOf(offer));
  }
  return {
    calls: fixes,
    ...(words.length > 0 && { words: words.join("; ") }),
    ways: ways.map((way) => ({ ...way, taken: way.title === first })),
  };
}

const callsOf = ({ call }: Fix): readonly CommandCall[] =>
  call.command === "run-together" ? (call.args as { readonly calls: readonly CommandCall[] }).calls : [call];

/** The document with calls run on it; undefined where they do not run. */
function runAll(project: Project, calls: readonly CommandCall[]): Project | undefined {
  if (calls.length === 0) return project;
  const done = runCommand(project, { command: "run-together", args: { title: "Look", calls } });
  return done.ok ? done.project : undefined;
}
