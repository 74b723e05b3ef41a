import type { ExampleSide, RuleExamples } from "../../shared-model/answers/rule-examples.ts";
import { withDifferences } from "../../shared-model/lib/differences.ts";
import type { Project } from "../../shared-model/model/project.ts";

export interface ShownSide extends ExampleSide {
  readonly project: Project;
}

/** The drawing that breaks a rule and the one that keeps it. */
export interface RuleExample {
  readonly wrong: ShownSide;
  readonly right: ShownSide;
}

let all: Promise<RuleExamples> | undefined;

/** All of them are one file, fetched when the first is asked for. Where that fails, it is fetched again the next time. */
function loadAll(): Promise<RuleExamples> {
  all ??= import("../../assets/rule-examples.json?raw").then(
    ({ default: text }) => JSON.parse(text) as RuleExamples,
    (why: unknown) => {
      all = undefined;
      loaded.clear();
      throw why;
    },
  );
  return all;
}

const loaded = new Map<string, Promise<RuleExample | undefined>>();

/** The same drawings every time, so that they are laid out once; undefined for a rule without any. */
export function loadRuleExample(rule: string): Promise<RuleExample | undefined> {
  const known = loaded.get(rule);
  if (known !== undefined) return known;
  const example = loadAll().then(({ drawings, examples }) => {
    const packed = examples[rule];
    const right = packed && drawings[packed.drawing];
    if (packed === undefined || right === undefined) return undefined;
    const wrong = withDifferences(right, packed.changes);
    return { wrong: { ...packed.wrong, project: wrong }, right: { ...packed.right, project: right } };
  });
  loaded.set(rule, example);
  return example;
}
