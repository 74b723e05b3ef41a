import type { ScopeAnswer, ScopeBreaker, SignOff, StepReading, WorkStep } from "../../answers/scope.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Page } from "../display-list.ts";
import type { Flow } from "../page/flow.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import type { ListTable } from "../tables/table.ts";
import { holdBox } from "./hold-box.ts";
import { headed, isShown, nothingWords, sayNothing } from "./list-parts.ts";
import { LIST } from "./list-words.ts";
import { type ReadingLine, readingBlocks } from "./reading-blocks.ts";
import { FIELD_WORDS, STEP_TABLES, STEPS, stageTitle, USUAL_FIELDS } from "./steps-words.ts";
import { type TickLine, tickBlocks, tickRows } from "./tick-lines.ts";

/** @returns Why there is no work; undefined where there is. */
export function noSteps(input: SheetInput): string | undefined {
  if (input.scope === undefined) return nothingWords(input, LIST.nothingProposed);
  return shownSteps(input).length > 0 ? undefined : nothingWords(input, STEPS.none);
}

/** The work in order: one line to tick for each thing done by hand, hold points in frames that are signed. */
export function stepPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, { kind: "steps", title: STEPS.title, difference: true });
  const { scope } = input;
  const nothing = noSteps(input);
  if (scope === undefined || nothing !== undefined) {
    sayNothing(flow, nothing ?? LIST.nothingProposed);
    return pages();
  }
  flow.paragraph(STEPS.how, { weight: 600 });
  if (scope.breakers.length > 0) writeBreakers(flow, scope.breakers);
  const writer = new StepWriter(flow, scope);
  for (const step of shownSteps(input)) writer.write(step);
  writer.end();
  if (scope.assumptions.length > 0) {
    flow.heading(STEPS.restsOn);
    for (const each of scope.assumptions) flow.paragraph(each, { size: TYPE.small });
  }
  return pages();
}

/** What concerns one box, and what concerns the whole job. */
const shownSteps = (input: SheetInput): readonly WorkStep[] =>
  (input.scope?.steps ?? []).filter(({ box }) => box === undefined || isShown(input, box.id));

function writeBreakers(flow: Flow, breakers: readonly ScopeBreaker[]): void {
  flow.keepTogether((kept) => {
    kept.heading(STEPS.circuits);
    kept.table({
      columns: [
        { head: STEPS.breaker, width: 30, weight: 700 },
        { head: STEPS.in, width: 30 },
        { head: STEPS.rating, width: 20 },
        { head: STEPS.with },
        { head: STEPS.offLocked, width: 24 },
      ],
      rows: breakers.map(({ name, panel, ratingA, withPoles, multiwire }) => ({
        cells: [
          name,
          panel.name,
          ratingA === undefined ? "" : STEPS.ampere(ratingA),
          [withPoles.map((pole) => pole.name).join(", "), multiwire ? STEPS.multiwire : ""].filter(Boolean).join("; "),
          { text: "", check: true },
        ],
      })),
    });
  });
}

/** Stages of the whole job, and those that have one heading though they go on from panel to box. */
const OF_JOB: ReadonlySet<number> = new Set([1, 14, 15]);
const ONE_HEADING: ReadonlySet<number> = new Set([...OF_JOB, 2]);
const INDENT = 14;

class StepWriter {
  private readonly flow: Flow;
  private readonly texts: ReadonlyMap<string, string>;
  private readonly panels: ReadonlySet<string>;
  private readonly signOffs: ReadonlyMap<string, SignOff>;
  private group = "";
  /** Cautions that were said under this heading already. */
  private said = new Set<string>();
  /** What was said last to be done if a test comes out otherwise. */
  private otherwise = "";
  /** Instructions in a row that need no more than their words. */
  private plain: TickLine[] = [];

  constructor(flow: Flow, { cautions, signOffs, breakers }: ScopeAnswer) {
    this.flow = flow;
    this.panels = new Set(breakers.map(({ panel }) => panel.id));
    this.texts = new Map(cautions.map(({ id, text }) => [id, text]));
    this.signOffs = new Map(signOffs.map((one) => [one.step, one]));
  }

  write(step: WorkStep): void {
    const { stage, box } = step;
    const group = ONE_HEADING.has(stage) ? `${stage}` : `${stage} ${box?.id ?? ""}`;
    if (group !== this.group) {
      this.end();
      this.group = group;
      this.said = new Set();
      this.otherwise = "";
      const isNamed = !OF_JOB.has(stage) && box !== undefined && !this.panels.has(box.id);
      headed(this.flow, stageTitle(stage), isNamed ? box.name : undefined);
    }
    if (step.hold !== undefined) {
      this.end();
      this.writeHold(step, step.hold);
      return;
    }
    const { number, text, test, details, readings, sign } = step;
    const line = {
      number: String(number),
      words: test === undefined ? text : STEPS.tested(test, text),
      more: details.join(" "),
    };
    const after = [...this.ifNot(step), ...this.cautionsFor(step)];
    if (readings.length + after.length === 0 && !sign) this.plain.push(line);
    else {
      this.end();
      this.flow.keepTogether((kept) => this.writeStep(kept, step, line, after));
    }
  }

  /** Writes what waits to be set side by side. */
  end(): void {
    const lines = this.plain;
    this.plain = [];
    for (const block of tickRows(this.flow.width, INDENT, lines)) this.flow.block(block);
  }

  private writeHold(step: WorkStep, name: string): void {
    this.flow.keepTogether((kept) => {
      const blocks = holdBox(kept.width, {
        name,
        head: STEPS.hold(step.number),
        words: step.text,
        details: [...step.details, ...(step.ifNot === undefined ? [] : [STEPS.ifNot(step.ifNot)])],
        readings: readingLines(step.readings),
        cautions: this.cautionsFor(step),
        fields: this.fieldsOf(step),
      });
      for (const block of blocks) kept.block(block);
      kept.space(2);
    });
  }

  private writeStep(flow: Flow, step: WorkStep, line: TickLine, after: readonly string[]): void {
    const { readings, sign } = step;
    const blocks = tickBlocks(flow.width, INDENT, line);
    blocks.forEach((block, i) => {
      flow.block({ ...block, withNext: i < blocks.length - 1 ? i === 0 : true });
    });
    for (const block of readingBlocks(flow.width, readingLines(readings), INDENT)) flow.block(block);
    for (const words of after) flow.paragraph(words, { size: TYPE.small, indent: INDENT });
    if (sign) flow.signOff(this.fieldsOf(step));
  }

  private readonly fieldsOf = ({ id }: WorkStep): readonly string[] =>
    (this.signOffs.get(id)?.fields ?? USUAL_FIELDS).map((field) => FIELD_WORDS[field]);

  /** Said once for steps in a row that have the same. */
  private ifNot({ ifNot = "" }: WorkStep): readonly string[] {
    const isSaid = ifNot === this.otherwise;
    this.otherwise = ifNot;
    return isSaid || ifNot === "" ? [] : [STEPS.ifNot(ifNot)];
  }

  private cautionsFor({ cautions }: WorkStep): readonly string[] {
    return cautions.flatMap((id) => {
      const words = this.texts.get(id);
      if (words === undefined || this.said.has(id)) return [];
      this.said.add(id);
      return [STEPS.caution(words)];
    });
  }
}

/** Readings beneath their instruction, which need not repeat it. */
const readingLines = (readings: readonly StepReading[]): readonly ReadingLine[] =>
  readings.map(({ what, brief = what, expect }) => ({ what: brief, expect }));

/** One row an instruction, and one a reading. */
export function stepTables(input: SheetInput): readonly ListTable[] {
  const steps = shownSteps(input);
  return [
    {
      name: STEP_TABLES.steps,
      columns: [
        { head: STEP_TABLES.number, kind: "number", width: 8 },
        { head: STEP_TABLES.hold, kind: "text", width: 10 },
        { head: STEP_TABLES.test, kind: "text", width: 8 },
        { head: STEP_TABLES.stage, kind: "text", width: 22 },
        { head: STEP_TABLES.box, kind: "text", width: 10 },
        { head: STEP_TABLES.instruction, kind: "text", width: 70 },
        { head: STEP_TABLES.details, kind: "text", width: 60 },
        { head: STEP_TABLES.ifNot, kind: "text", width: 40 },
        { head: STEP_TABLES.doneBy, kind: "text", width: 16 },
        { head: STEP_TABLES.date, kind: "date", width: 12 },
      ],
      rows: steps.map(({ number, hold, test, stage, box, text, details, ifNot }) => [
        number,
        hold,
        test,
        stageTitle(stage),
        box?.name,
        text,
        details.join(" "),
        ifNot,
        undefined,
        undefined,
      ]),
    },
    {
      name: STEP_TABLES.readings,
      columns: [
        { head: STEP_TABLES.step, kind: "number", width: 8 },
        { head: STEP_TABLES.what, kind: "text", width: 40 },
        { head: STEP_TABLES.expected, kind: "text", width: 30 },
        { head: STEP_TABLES.value, kind: "number", width: 10 },
        { head: STEP_TABLES.within, kind: "number", width: 10 },
        { head: STEP_TABLES.unit, kind: "text", width: 8 },
        { head: STEP_TABLES.found, kind: "text", width: 16 },
      ],
      rows: steps.flatMap(({ number, readings }) =>
        readings.map(({ what, expect, expected }) => {
          const figure = expected?.kind === "figure" ? expected : undefined;
          return [number, what, expect, figure?.value, figure?.within, figure?.unit, undefined];
        }),
      ),
    },
  ];
}
