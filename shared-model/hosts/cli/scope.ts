import type { Command } from "commander";
import { scopeAnswer } from "../../analysis/scope-answer.ts";
import { openSession } from "../../analysis/session.ts";
import type { ScopeAnswer, ScopeBox } from "../../answers/scope.ts";
import { onOneLine } from "../../format/json-path.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Project } from "../../model/project.ts";
import { isSerious } from "../../model/severity.ts";
import { complainAbout, print, printJson } from "./console.ts";
import { openState } from "./open-state.ts";
import { inputName } from "./read-input.ts";
import { nothingProposedAsJson, scopeAsJson, scopeAsText } from "./scope-forms.ts";
import { STATUS, type Status } from "./status.ts";

interface ScopeOptions {
  readonly box?: string;
  readonly json?: true;
}

export function addScope(program: Command, end: (status: Status) => void): void {
  program
    .command("scope")
    .description("The difference of as found and proposed, what it takes, and the work step by step.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .option("--box <box>", "of one box or panel only, by id or name")
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: ScopeOptions) => end(await scope(file, options)));
}

const HELP = `
Told by box: what is kept, moved, removed, new, replaced, relabelled or otherwise changed, each conductor end where it was
and where it goes. A move is one end taken off or put on by hand. Then materials, labels, and the work instructions with
hold points HP1 to HP6; the readings of the tests at the end are computed from proposed.
  --json: {boxes, changes, totals, findings, breakers, materials, removed, labels, steps, signOffs, cautions, assumptions}
With --box, changes, materials and labels of that box, and the steps that are done in it.
A drawing in which nothing is proposed has no scope: one line says so, and that is no fault.

Exit status: 0 nothing at danger or violation in proposed, or nothing is proposed, 1 something at danger or violation,
2 bad input, 3 a fault of the program.`;

async function scope(file: string, { box, json }: ScopeOptions): Promise<Status> {
  const opened = await openState(file, undefined);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const { project } = opened.value;
  const only = box === undefined ? ok(undefined) : findEnclosure(project, box);
  if (!only.ok) {
    complainAbout(inputName(file), only.problems);
    return STATUS.badInput;
  }
  const answer = scopeAnswer(openSession(project));
  if (answer === undefined) {
    if (json) await printJson(nothingProposedAsJson(file));
    else await print(`${onOneLine(inputName(file))}: nothing is proposed in it, so there is no scope.\n`);
    return STATUS.good;
  }
  const shown = only.value === undefined ? answer : ofBox(answer, only.value);
  if (json) await printJson(scopeAsJson(file, shown));
  else await print(scopeAsText(file, project, shown, only.value !== undefined));
  const { introduced, inherited, inheritedTouched } = answer.findings;
  return [...introduced, ...inherited, ...inheritedTouched].some(isSerious) ? STATUS.findings : STATUS.good;
}

/** A box or panel of either account by id, or by a name that only one has. */
function findEnclosure({ asFound, proposed }: Project, text: string): Result<EnclosureId> {
  const all = new Map<EnclosureId, Enclosure>();
  for (const { enclosures } of proposed === undefined ? [asFound] : [asFound, proposed])
    for (const one of Object.values<Enclosure>(enclosures)) all.set(one.id, one);
  const byId = [...all.keys()].find((id) => id === text);
  const named = [...all.values()].filter(({ name }) => name === text);
  const asked = onOneLine(JSON.stringify(text));
  if (byId !== undefined) return ok(byId);
  if (named.length > 1)
    return failed(problem("not-unique", "", `Several boxes are named ${asked}. Give an id to --box.`));
  const [only] = named;
  return only === undefined
    ? failed(problem("no-such-box", "", `It has no box ${asked}. Name one of its boxes in --box.`))
    : ok(only.id);
}

function ofBox(answer: ScopeAnswer, id: EnclosureId): ScopeAnswer {
  const boxes = answer.boxes.filter(({ enclosure }) => enclosure === id);
  const none: ScopeBox["counts"] = { detach: 0, attach: 0, newJoints: 0, devices: 0, newJumpers: 0, newCables: 0 };
  const names = new Set(boxes.map(({ name }) => name));
  const isHere = (where: readonly string[]): boolean =>
    where.some((one) => names.has(one) || [...names].some((name) => one.endsWith(` in ${name}`)));
  return {
    ...answer,
    boxes,
    elsewhere: [],
    elsewhereLines: [],
    totals: { ...(boxes[0]?.counts ?? none), boxes: boxes.length },
    breakers: boxes.flatMap(({ breakers }) => breakers),
    labels: answer.labels.filter(({ box }) => box?.id === id),
    materials: answer.materials.filter(({ where }) => isHere(where)),
    removed: answer.removed.filter(({ where }) => isHere(where)),
    steps: answer.steps.filter(({ box }) => box?.id === id),
    signOffs: answer.signOffs.filter(({ step }) => answer.steps.some((one) => one.id === step && one.box?.id === id)),
  };
}
