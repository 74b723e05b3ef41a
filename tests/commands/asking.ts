import { expect } from "vitest";
import type { CommandArgs, CommandId } from "../../shared-model/commands/command-args.ts";
import { refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

/** Code of a refusal, after making sure that it says in sentences what to do. */
export function refused<I extends CommandId>(project: Project, command: I, args: CommandArgs[I]): string {
  const refusal = refusalOf(project, { command, args });
  expect(runCommand(project, { command, args })).toEqual({ ok: false, refusal });
  if (refusal === undefined) throw new Error(`${command} is not refused.`);
  expect(refusal.message).toMatch(/^\P{Ll}.*[.]$/u);
  return refusal.code;
}

/** Name of the step, as undo shows it. */
export function titleOf<I extends CommandId>(project: Project, command: I, args: CommandArgs[I]): string {
  const done = runCommand(project, { command, args });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.title;
}

export function enclosureIn(project: Project, name: string): Enclosure {
  const enclosure = project.asFound.enclosures[boxId(name)];
  if (enclosure === undefined) throw new Error(`No enclosure ${name}.`);
  return enclosure;
}

/** Where "C1.bk@B1" or "p.a" is, and what is known of it. */
export function placeOf(house: Drawing, end: string): Place {
  const { enclosure, key } = house.end(end);
  const place = house.project.asFound.enclosures[enclosure]?.places[key];
  if (place === undefined) throw new Error(`No place for ${end}.`);
  return place;
}
