/** What commands say: loaded anew for each language, since words are chosen when modules load. */
import { amendableRules } from "../../shared-model/catalog/amendable-rules.ts";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { documentCommands } from "../../shared-model/commands/catalog/document-commands.ts";
import { titleOfKey, whyNotChordWords } from "../../shared-model/commands/catalog/key-words.ts";
import { keyEntries } from "../../shared-model/commands/catalog/keys.ts";
import { properties } from "../../shared-model/commands/catalog/properties.ts";
import type { CommandId, PropertyTarget } from "../../shared-model/commands/command-args.ts";
import { wrongValue } from "../../shared-model/commands/property-value.ts";
import { commands, isCommandId } from "../../shared-model/commands/registry.ts";
import { refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { boxId, laundryAsFound } from "../builders/drawing.ts";
import { Picker } from "../builders/picker.ts";
import { callOf } from "../builders/random-commands.ts";

export interface Said {
  readonly command: CommandId;
  readonly what: "step" | "refusal";
  /** Of a refusal. */
  readonly code?: string;
  readonly text: string;
  /** Words of the drawing and of what was asked, which stay as they are. */
  names(): ReadonlySet<string>;
  /** Ids that the text may name. */
  ids(): readonly string[];
}

export const commandIds: readonly CommandId[] = Object.keys(commands).filter(isCommandId);

const NAMED = /^(name|title|wording|caption|spliceName|jumperName|text|by|reason|note)$/;
const IDS = /^(item|type|connector|field|rule|size|terminal)$/;
/** What a reading was taken at and what was read, as its author wrote it. */
const READ = /^(item|value|unit)$/;

/** Every text under keys of a form, and what stands by id under `names` or in the directory. */
function textsUnder(keys: RegExp, value: unknown, key = ""): readonly string[] {
  if (typeof value === "string") return keys.test(key) ? [value] : [];
  if (typeof value !== "object" || value === null) return [];
  const own = keys === NAMED && /^(names|directory)$/.test(key) ? Object.values(value).map(String) : [];
  return [...own, ...Object.entries(value).flatMap(([inner, one]) => textsUnder(keys, one, inner))];
}

const STRANGE = ["gone", "", " ", null, 7, 99, true, "nonmetallic", "unknown", "table"] as const;

/** Arguments of which one value is another. */
function changed(args: unknown, pick: Picker): unknown {
  if (typeof args !== "object" || args === null) return pick.from(STRANGE, null);
  if (Array.isArray(args)) return args.map((one, at) => (at === 0 ? changed(one, pick) : one));
  const keys = Object.keys(args);
  const chosen = pick.from(keys, undefined);
  return Object.fromEntries(
    Object.entries(args).map(([key, value]) => [key, key === chosen ? changed(value, pick) : value]),
  );
}

/** Walks through a drawing by every command in turn, and asks each for what it must refuse as well. */
export function walk(seed: number, rounds: number): readonly Said[] {
  const said: Said[] = [];
  const pick = new Picker(seed);
  let project: Project = laundryAsFound();
  const say = (command: CommandId, args: unknown): void => {
    const call = { command, args };
    const done = runCommand(project, call);
    // What is wrong with the form of arguments names their parts.
    if (!done.ok && done.refusal.code === "malformed-arguments") return;
    const drawn = project;
    const about = {
      command,
      names: () => new Set(textsUnder(NAMED, [drawn, args]).flatMap((text) => text.match(/[A-Za-z]{2,}/g) ?? [])),
      ids: () => [
        ...textsUnder(IDS, args),
        ...textsUnder(READ, [drawn.readings, (args as { reading?: unknown } | undefined)?.reading]),
        ...Object.keys(amendableRules),
        ...Object.values(amendableRules).flat(),
      ],
    };
    if (done.ok) said.push({ ...about, what: "step", text: done.title });
    else said.push({ ...about, what: "refusal", code: done.refusal.code, text: done.refusal.message });
    if (done.ok) project = done.project;
  };
  for (let round = 0; round < rounds; round++) {
    for (const [at, command] of commandIds.entries()) {
      const index = round * commandIds.length + at;
      const step = { command, seed: pick.below(0x7fff_ffff) };
      const { args } = callOf(project, step, index);
      for (let times = 0; times < 2; times++) say(command, changed(args, pick));
      say(command, callOf(project, step, index).args);
    }
    // The second state goes as often as it comes.
    if (project.proposed !== undefined && round % 5 === 4) say("discard-proposed", {});
  }
  return said;
}

/** What is wrong with arguments, in the words of each command. */
export const malformed: readonly string[] = commandIds.flatMap((command) =>
  [undefined, {}, { extra: 1 }].flatMap((args) => {
    const refusal = refusalOf(laundryAsFound(), { command, args });
    return refusal?.code === "malformed-arguments" ? [refusal.message.replace(command, "")] : [];
  }),
);

/** Commands that no random walk asks for in a way that is refused. */
export const nested = refusalOf(laundryAsFound(), {
  command: "run-together",
  args: { title: "T1", calls: [{ command: "run-together", args: { title: "T1", calls: [] } }] },
});

/** Titles of commands and keys, fields and what they take. */
export const listed: readonly (readonly [where: string, text: string])[] = [
  ...[...documentCommands, ...windowCommands].map(({ id, title }) => [id, title] as const),
  ...keyEntries.map(({ id }) => [`keys of ${id}`, titleOfKey(id)] as const),
  ...Object.entries(whyNotChordWords),
  ...(Object.keys(properties) as PropertyTarget["kind"][]).flatMap((kind) =>
    properties[kind].flatMap((property) => {
      const { field, label, takes } = property;
      const unit = takes.kind === "number" ? ` ${takes.unit}.` : "";
      const wrong = [[boxId("B1"), boxId("B1")], ...(property.optional ? [] : [null])];
      const refusals = wrong.map((value) => (wrongValue(property, value)?.message ?? "").replace(unit, ""));
      const choices = "choices" in takes ? takes.choices.map((one) => one.label) : [];
      return [label, ...choices, ...refusals].map((text) => [`${kind} ${field}`, text] as const);
    }),
  ),
];
