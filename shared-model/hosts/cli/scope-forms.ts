import type { Finding } from "../../answers/finding.ts";
import type {
  ScopeAnswer,
  ScopeBox,
  ScopeBreaker,
  ScopeCounts,
  ScopeKind,
  ScopeLine,
  ScopeMaterial,
  StepReading,
  WorkStep,
} from "../../answers/scope.ts";
import { onOneLine } from "../../format/json-path.ts";
import type { Project } from "../../model/project.ts";
import { inputName } from "./read-input.ts";

const findingAsJson = ({ rule, severity, subjects, message, standing }: Finding): object => ({
  rule,
  severity,
  subjects,
  message,
  standing: standing ?? null,
});

/** As scripts read it. `changes` has every thing once; `boxes` says how they are counted and read. */
export function scopeAsJson(file: string, answer: ScopeAnswer): object {
  const { boxes, elsewhere, elsewhereLines, findings, ...rest } = answer;
  return {
    file,
    ...rest,
    boxes: boxes.map(({ changes: _changes, ...box }) => box),
    elsewhereLines,
    changes: [
      ...boxes.flatMap(({ enclosure, name, changes }) =>
        changes.map((change) => ({ box: { id: enclosure, name }, ...change })),
      ),
      ...elsewhere.map((change) => ({ box: null, ...change })),
    ],
    findings: {
      repaired: findings.repaired.map(findingAsJson),
      inherited: findings.inherited.map(findingAsJson),
      inheritedTouched: findings.inheritedTouched.map(findingAsJson),
      introduced: findings.introduced.map(findingAsJson),
    },
  };
}

/** The same keys with nothing in them, so that a script need not ask first. */
export const nothingProposedAsJson = (file: string): object => ({
  file,
  nothingProposed: true,
  boxes: [],
  changes: [],
  steps: [],
  materials: [],
  labels: [],
});

/** As a person reads it: by box, then materials, labels, steps. */
export function scopeAsText(file: string, { edition }: Project, answer: ScopeAnswer, isPart: boolean): string {
  const { boxes, elsewhereLines, totals, breakers, materials, removed, labels, steps, cautions, assumptions } = answer;
  const blocks: readonly (readonly string[])[] = [
    [
      `${inputName(file)}: edition ${edition}, as found to proposed`,
      ...(boxes.length + elsewhereLines.length === 0
        ? ["Nothing is other than as found."]
        : [`Work: ${countsWords(totals)}`]),
      ...(breakers.length === 0 ? [] : [`Open: ${breakers.map(breakerWords).join("; ")}`]),
    ],
    ...boxes.map(boxBlock),
    titled("Cables, loads, labels, directory", elsewhereLines.map(lineWords)),
    ...(isPart ? [] : findingBlocks(answer)),
    titled("Materials", materials.map(materialWords)),
    titled(
      "Comes out",
      removed.map(({ what, quantity, where }) => `  ${quantity} x ${what}: ${where.join(", ")}`),
    ),
    titled(
      "Labels and slips",
      labels.map(({ wording, on, because }) => `  ${on.name}: “${wording}” ${because}`),
    ),
    titled("Steps", steps.flatMap(stepWords)),
    titled(
      "Cautions",
      cautions.map(({ id, text }) => `  ${id} ${text}`),
    ),
    titled(
      "Assumed for the computed readings",
      assumptions.map((one) => `  ${one}`),
    ),
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => `${block.map(onOneLine).join("\n")}\n`)
    .join("\n");
}

const titled = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [title, ...lines];

const some = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

function countsWords({ detach, attach, newJoints, devices, newJumpers, newCables }: ScopeCounts): string {
  return [
    `${detach} detach`,
    `${attach} attach`,
    some(newJoints, "new joint"),
    some(devices, "device"),
    ...(newJumpers === 0 ? [] : [some(newJumpers, "new jumper")]),
    ...(newCables === 0 ? [] : [some(newCables, "new cable")]),
  ].join(", ");
}

const breakerWords = ({ name, ratingA, panel, withPoles }: ScopeBreaker): string =>
  `${name}${ratingA === undefined ? "" : ` ${ratingA} A`} in ${panel.name}${withPoles.length === 0 ? "" : ` with ${withPoles.map((pole) => pole.name).join(", ")}`}`;

function boxBlock({ name, note, work, counts, lines }: ScopeBox): readonly string[] {
  const called = note === undefined ? name : `${name}, ${note}`;
  const done = work === "opened" || work === "not-opened" ? "" : ` (${work})`;
  return [`${called}${done}: ${work === "not-opened" ? "not opened" : countsWords(counts)}`, ...lines.map(lineWords)];
}

const SIGNS: Readonly<Record<ScopeKind, string>> = {
  kept: "K",
  moved: "M",
  removed: "R",
  new: "N",
  replaced: "X",
  relabelled: "L",
  changed: "C",
};

const lineWords = ({ kind, title, was, will }: ScopeLine): string =>
  `  ${SIGNS[kind]}  ${title}: ${was === undefined ? will : `${was} -> ${will}`}`;

function findingBlocks({ findings }: ScopeAnswer): readonly (readonly string[])[] {
  const words = ({ severity, rule, subjects }: Finding): string =>
    `  ${severity}  ${rule}  ${subjects.map(({ name }) => name).join(", ")}`;
  return [
    titled("Introduced by the plan", findings.introduced.map(words)),
    titled("Inherited, at boxes that the work opens", findings.inheritedTouched.map(words)),
    titled("Inherited, not touched", findings.inherited.map(words)),
    titled("Repaired by the plan", findings.repaired.map(words)),
  ];
}

const materialWords = ({ what, quantity, unit, where, note }: ScopeMaterial): string =>
  `  ${quantity} ${unit === "piece" ? "x" : unit} ${what}: ${where.join(", ")}${note === undefined ? "" : ` (${note})`}`;

function stepWords({ number, hold, test, text, details, readings, ifNot }: WorkStep): readonly string[] {
  const mark = hold ?? test;
  return [
    `  ${number}. ${mark === undefined ? "" : `${mark} `}${text}`,
    ...details.map((one) => `       ${one}`),
    ...readings.map(readingWords),
    ...(ifNot === undefined || readings.length === 0 ? [] : [`       If not: ${ifNot}`]),
  ];
}

const readingWords = ({ what, expect }: StepReading): string => `       [ ] ${what}: ${expect}`;
