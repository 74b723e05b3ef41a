/**
 * What must change no finding, over every sample and golden drawing; together they make every rule speak, so that every
 * rule takes part.
 */
import { describe, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { openSession } from "../../shared-model/analysis/session.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Project, StateName } from "../../shared-model/model/project.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { goldenDrawings } from "./index.ts";

const drawings: ReadonlyMap<string, Project> = new Map([
  ...[...goldenDrawings].map(([name, draw]) => [name, draw()] as const),
  ...samples.map(({ name }) => [`sample ${name}`, openSample(name)] as const),
]);

const statesOf = ({ proposed }: Project): readonly StateName[] =>
  proposed === undefined ? ["as-found"] : ["as-found", "proposed"];

const reportOf = (project: Project, state: StateName) => {
  const { findings, couldNotTell } = openSession(project).report(state);
  return { findings, couldNotTell };
};

const kept = new Map<string, ReturnType<typeof reportOf>>();

/** What is said of a drawing as it is: each law holds something against it. */
function saidBefore(name: string, project: Project, state: StateName): ReturnType<typeof reportOf> {
  const key = `${name} ${state}`;
  const known = kept.get(key) ?? reportOf(project, state);
  kept.set(key, known);
  return known;
}

const keysIn = ({ findings, couldNotTell }: ReturnType<typeof reportOf>): readonly string[] =>
  [...findings, ...couldNotTell].map(({ key }) => key).sort();

test("every rule speaks in one of them", () => {
  const speaking = [...drawings].flatMap(([name, project]) =>
    statesOf(project).flatMap((state) => saidBefore(name, project, state).findings.map(({ rule }) => rule)),
  );
  const silent = rules.map(({ id }) => id).filter((id) => !speaking.includes(id));
  expect(silent).toEqual([]);
});

function run(project: Project, command: string, args: object): Project {
  const done = runCommand(project, { command, args });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.project;
}

describe.each([...drawings])("%s", (name, project) => {
  test("a plan that changes nothing introduces nothing and leaves nothing out", () => {
    const { proposed: _plan, ...rest } = project;
    const same = run(rest, "start-proposed", {});
    const planned = reportOf(same, "proposed");
    expect(planned.findings.filter(({ standing }) => standing !== "inherited")).toEqual([]);
    expect(keysIn(planned)).toEqual(keysIn(saidBefore(name, project, "as-found")));
    expect(reportOf(same, "as-found").findings.filter(({ standing }) => standing !== "stays")).toEqual([]);
  });

  test("where boxes are put on the sheet changes nothing", () => {
    const boxes = Object.keys(project.layout.enclosures).toReversed() as EnclosureId[];
    const moves = boxes.map((id, index) => ({ id, to: { x: index * 1248, y: -2016 } }));
    const moved = run(project, "move-enclosures", { moves });
    for (const state of statesOf(project)) expect(reportOf(moved, state)).toEqual(saidBefore(name, project, state));
  });

  test("a box and a receptacle elsewhere change nothing here", () => {
    for (const state of statesOf(project)) {
      const more = new Drawing(project, state)
        .box("FAR", "plastic-new-1", { at: { x: -9984, y: -9984 } })
        .device("FAR1", "receptacle-tr-15", "FAR")
        .outside("FARC", "FAR").project;
      const { findings, couldNotTell } = reportOf(more, state);
      const isHere = ({ subjects }: { readonly subjects: readonly { readonly name: string }[] }): boolean =>
        !subjects.some(({ name }) => name.startsWith("FAR"));
      expect({ findings: findings.filter(isHere), couldNotTell: couldNotTell.filter(isHere) }).toEqual(
        saidBefore(name, project, state),
      );
    }
  });

  test("what things are called changes the words alone", () => {
    for (const state of statesOf(project)) {
      const called = renamed(project, state);
      expect(keysIn(reportOf(called, state))).toEqual(keysIn(saidBefore(name, project, state)));
    }
  });
});

type Named = { readonly name: string };
const callAll = <T extends Named>(table: Readonly<Record<string, T>>): Record<string, T> =>
  Object.fromEntries(Object.entries(table).map(([key, one]) => [key, { ...one, name: `the ${one.name}` }]));

/** Every box, device, joint, jumper and cable under another name; words of the directory are still in it. */
function renamed(project: Project, state: StateName): Project {
  const installation = getInstallation(project, state);
  const enclosures = callAll(installation.enclosures) as Record<string, Enclosure>;
  for (const [key, box] of Object.entries(enclosures))
    enclosures[key] = {
      ...box,
      devices: callAll(box.devices),
      splices: callAll(box.splices),
      jumpers: callAll(box.jumpers),
    };
  const called: Installation = { ...installation, enclosures, cables: callAll(installation.cables) };
  return state === "as-found" ? { ...project, asFound: called } : { ...project, proposed: called };
}
