import { writeFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { answersAbout, answersBySubject } from "../../../renderer/sheet/finding-marks.ts";
import { protectsText } from "../../../renderer/sheet/protection.ts";
import { openSession, type Session } from "../../../shared-model/analysis/session.ts";
import type { Finding, Subject } from "../../../shared-model/answers/finding.ts";
import type {
  ExampleBox,
  ExampleSide,
  PackedExample,
  RuleExamples,
} from "../../../shared-model/answers/rule-examples.ts";
import type { Difference } from "../../../shared-model/lib/differences.ts";
import { asId, type EnclosureId } from "../../../shared-model/model/ids.ts";
import { emptyProject, type Project } from "../../../shared-model/model/project.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { boxRoles } from "../../../shared-model/solver/circuit/section-answers.ts";
import { allSections } from "../../../shared-model/solver/sections.ts";
import type { Drawn, Example } from "./example.ts";

type Report = ReturnType<Session["report"]>;

/** The state that is looked at, as found and by itself, with its boxes in a row. */
function alone(drawn: Drawn): Project {
  const project = drawn.project();
  const installation = getInstallation(project, drawn.state ?? "as-found");
  const places = inOrder(installation.enclosures).map(({ id }, index) => [id, { x: index * 1300, y: 0 }] as const);
  const bare = emptyProject("Example", project.edition);
  return {
    ...bare,
    rooms: project.rooms,
    asFound: installation,
    layout: { ...bare.layout, enclosures: Object.fromEntries(places) },
  };
}

/** A sign stands at what a finding names first: of what it names, that comes first which is in one of these boxes. */
function seenFirst(finding: Finding, boxes: readonly ExampleBox[], project: Project, sign: Subject | undefined) {
  const isSeen = (subject: Subject): boolean => {
    const index = answersBySubject([{ ...finding, subjects: [subject] }], []);
    return boxes.some(({ id }) => {
      const enclosure = project.asFound.enclosures[id];
      return enclosure !== undefined && answersAbout(enclosure, index).length > 0;
    });
  };
  const seen = [...finding.subjects, ...(sign === undefined ? [] : [sign])].find(isSeen);
  return seen === undefined ? finding.subjects : [seen, ...finding.subjects.filter((one) => one !== seen)];
}

function sideOf(rule: string, { sign }: Example, drawn: Drawn, show: readonly string[], project: Project): ExampleSide {
  const report: Report = openSession(structuredClone(drawn.project())).report(drawn.state);
  const sections = allSections(project.asFound);
  const boxes = show.map((name): ExampleBox => {
    const id = asId<EnclosureId>(name);
    const enclosure = project.asFound.enclosures[id];
    if (enclosure === undefined) throw new Error(`${rule} shows no ${name}.`);
    const ledger = report.ledgers[id];
    const section = sections.find(({ enclosures }) => enclosures.some((one) => one.id === id));
    return {
      id,
      ...(ledger !== undefined && enclosure.kind === "box" && { ledger }),
      ...(section !== undefined && { roles: boxRoles(section, id) }),
      protects: protectsText(enclosure, { [id]: report.outlets }),
    };
  });
  const findings = report.findings
    .filter((finding) => finding.rule === rule)
    .map((finding) => ({ severity: finding.severity, subjects: seenFirst(finding, boxes, project, sign) }));
  return { boxes, findings };
}

/** What turns one piece of plain data into another. Lists are one value. */
function differences(from: unknown, to: unknown, path: readonly string[] = []): readonly Difference[] {
  if (isDeepStrictEqual(from, to)) return [];
  if (!isTree(from) || !isTree(to)) return [[path, to]];
  const gone = Object.keys(from).filter((key) => !(key in to));
  return [
    ...gone.map((key): Difference => [[...path, key]]),
    ...Object.keys(to).flatMap((key) =>
      key in from ? differences(from[key], to[key], [...path, key]) : [[[...path, key], to[key]] as const],
    ),
  ];
}

const isTree = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** All examples in one; right drawings that are the same are kept once. */
export function packExamples(all: Readonly<Record<string, Example>>): RuleExamples {
  const drawings: Project[] = [];
  const packed = Object.entries(all).map(([rule, told]) => {
    const { wrong, right, show, showRight = show } = told;
    const [wrongDrawn, rightDrawn] = [wrong(), right()];
    const [isWrong, isRight] = [alone(wrongDrawn), alone(rightDrawn)];
    const known = drawings.findIndex((one) => isDeepStrictEqual(one, isRight));
    if (known < 0) drawings.push(isRight);
    const example: PackedExample = {
      drawing: known < 0 ? drawings.length - 1 : known,
      changes: differences(isRight, isWrong),
      wrong: sideOf(rule, told, wrongDrawn, show, isWrong),
      right: sideOf(rule, told, rightDrawn, showRight, isRight),
    };
    return [rule, example] as const;
  });
  return JSON.parse(JSON.stringify({ drawings, examples: Object.fromEntries(packed) })) as RuleExamples;
}

export const EXAMPLES_FILE = new URL("../../../assets/rule-examples.json", import.meta.url);

/** An example a line, so that a change of one is seen as one. */
export function examplesText({ drawings, examples }: RuleExamples): string {
  const lines = (texts: readonly string[]) => `\n${texts.join(",\n")}\n`;
  const drawn = lines(drawings.map((drawing) => JSON.stringify(drawing)));
  const told = lines(Object.entries(examples).map(([rule, one]) => `${JSON.stringify(rule)}:${JSON.stringify(one)}`));
  return `{"drawings":[${drawn}],"examples":{${told}}}\n`;
}

export const writeExamples = (all: RuleExamples): void => writeFileSync(EXAMPLES_FILE, examplesText(all));
