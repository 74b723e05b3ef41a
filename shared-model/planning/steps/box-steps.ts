import type { ScopeBox, ScopeChange } from "../../answers/scope.ts";
import { COLOUR_WORDS } from "../../catalog/wire-words.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { EntryId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { fillLedger } from "../../rules/fill/fill-ledger.ts";
import { fillEdition } from "../../rules/fill-edition.ts";
import { formatVolume } from "../../units/volume.ts";
import { proveDead } from "./before-steps.ts";
import { BOX_WORDS as wording } from "./box-step-words.ts";
import { finish } from "./finish-steps.ts";
import { jointSteps } from "./joint-steps.ts";
import { inBox, type StepDraft } from "./step-draft.ts";
import { survey, takeApart } from "./take-apart.ts";
import { endsOf, WIRE_CLASSES } from "./wire-classes.ts";

/** Stages 2 to 11 of one box: from proving it dead to folding it back. */
export function boxSteps(project: Project, proposed: Installation, box: ScopeBox): readonly StepDraft[] {
  const after = proposed.enclosures[box.enclosure];
  const before = project.asFound.enclosures[box.enclosure];
  return [
    ...(before === undefined ? [] : proveDead(project.asFound, box)),
    ...(before === undefined ? [] : takeApart(project.asFound, before, box)),
    ...(before === undefined ? [] : survey(project.asFound, before, box)),
    ...boxWork(project, proposed, box),
    ...(after === undefined ? [] : WIRE_CLASSES.flatMap((wire) => jointSteps(proposed, after, box, wire))),
    ...marks(box),
    ...(after === undefined ? [] : finish(proposed, after, box)),
  ];
}

/** Stage 6: the box, what it is fitted with, and new cables. */
function boxWork(project: Project, proposed: Installation, box: ScopeBox): readonly StepDraft[] {
  const where = inBox(box);
  const after = proposed.enclosures[box.enclosure];
  const parts = box.lines.filter(
    ({ items, kind }) =>
      kind !== "kept" &&
      items.some((item) => ["enclosure", "part", "entry", "ring", "pass-through"].includes(item.kind)),
  );
  const cables = after === undefined ? [] : newCables(project, proposed, after);
  const steps = [
    ...parts.map(
      ({ key, kind, title, was, will, items }): StepDraft => ({
        ...where,
        id: `box:${box.enclosure}:${key}`,
        stage: 6,
        kind: "box",
        items,
        text: items.some((item) => item.kind === "enclosure")
          ? enclosureText(box.name, kind, was ?? "", will)
          : partText(box.name, kind, title, was ?? "", will),
      }),
    ),
    ...cables,
    ...repairs(box),
  ];
  const fill = after === undefined || after.kind === "panel" ? undefined : fillWords(project, proposed, after);
  if (steps.length + box.counts.attach === 0 || fill === undefined) return steps;
  return [
    ...steps,
    {
      ...where,
      id: `fill:${box.enclosure}`,
      stage: 6,
      kind: "box",
      items: [{ kind: "enclosure", id: box.enclosure, name: box.name }],
      text: wording.confirm(box.name),
      details: [fill],
      cautions: ["WRK8"],
    },
  ];
}

function partText(box: string, kind: ScopeChange["kind"], title: string, was: string, will: string): string {
  switch (kind) {
    case "removed":
      return wording.takeOutPart(box, title);
    case "new":
      return wording.fit(box, title, will);
    case "replaced":
      return wording.exchangePart(box, title, was, will);
    case "relabelled":
      return wording.rename(box, was, will);
    default:
      return wording.becomes(box, title, was, will);
  }
}

function enclosureText(box: string, kind: ScopeChange["kind"], was: string, will: string): string {
  switch (kind) {
    case "removed":
      return wording.takeOut(box, was);
    case "new":
      return wording.set(box, will);
    case "replaced":
      return wording.exchange(box, was, will);
    default:
      return wording.rename(box, was, will);
  }
}

function newCables(project: Project, proposed: Installation, box: Enclosure): readonly StepDraft[] {
  return cablesInto(proposed.cables, box.id).flatMap(({ cable, entry }): readonly StepDraft[] =>
    project.asFound.cables[cable.id] !== undefined
      ? []
      : [
          {
            box: { id: box.id, name: box.name },
            id: `cable:${box.id}:${cable.id}:${entry satisfies EntryId}`,
            stage: 6,
            kind: "cable",
            items: [{ kind: "cable", id: cable.id, name: cable.name }],
            text: wording.bring(cable.name, box.name),
          },
        ],
  );
}

/** Ends that stay and are not as they were: a joint made good, an end cut back. */
function repairs(box: ScopeBox): readonly StepDraft[] {
  return endsOf(box).flatMap((change): readonly StepDraft[] =>
    change.kind !== "changed"
      ? []
      : [
          {
            ...inBox(box),
            id: `repair:${box.enclosure}:${change.item.id}`,
            stage: 6,
            kind: "box",
            items: [change.item],
            text: wording.makeGood(change.item.name, change.will?.words ?? box.name),
            cautions: ["WRK8"],
          },
        ],
  );
}

/** "Fill 29.8125 of 30.3 in³: 22.5 + 4.5 + 2.8125, 0.4875 left." */
function fillWords(project: Project, proposed: Installation, box: Box): string | undefined {
  const ledger = fillLedger(proposed, box, fillEdition(project));
  if (ledger.verdict === "not-applicable") return undefined;
  const parts = ledger.lines.map(({ volume }) => formatVolume(volume)).join(" + ");
  const total = formatVolume(ledger.total);
  if (ledger.available === undefined) return wording.fillUnknown(total, parts);
  const spare = ledger.available - ledger.total;
  const left =
    spare >= 0
      ? wording.left(formatVolume(spare as typeof ledger.total))
      : wording.tooMuch(formatVolume(-spare as typeof ledger.total));
  return wording.fill(total, formatVolume(ledger.available), parts, left);
}

/** Whites that carry a hot are marked at this end. */
function marks(box: ScopeBox): readonly StepDraft[] {
  return endsOf(box).flatMap((change): readonly StepDraft[] => {
    const marked = change.conductor?.markedAs;
    if (marked === undefined || !(change.kind === "new" || change.fields?.includes("markedAs"))) return [];
    return [
      {
        ...inBox(box),
        id: `mark:${box.enclosure}:${change.item.id}`,
        stage: 9,
        kind: "mark",
        items: [change.item],
        text: wording.mark(change.item.name, COLOUR_WORDS[marked]),
      },
    ];
  });
}
