import type { ScopeBox, ScopeChange } from "../../answers/scope.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { EntryId } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { fillLedger } from "../../rules/fill/fill-ledger.ts";
import { fillEdition } from "../../rules/fill-edition.ts";
import { formatVolume } from "../../units/volume.ts";
import { proveDead } from "./before-steps.ts";
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
          ? enclosureText(box.name, kind, was, will)
          : partText(box.name, kind, title, was, will),
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
      text: `${box.name}: confirm its volume, free length of conductors, and insulation.`,
      details: [fill],
      cautions: ["WRK8"],
    },
  ];
}

function partText(
  box: string,
  kind: ScopeChange["kind"],
  title: string,
  was: string | undefined,
  will: string,
): string {
  switch (kind) {
    case "removed":
      return `${box}: take out the ${title}.`;
    case "new":
      return `${box}: fit ${title}, ${will}.`;
    case "replaced":
      return `${box}: ${title}: ${was} out, ${will} in.`;
    case "relabelled":
      return `${box}: write ${will} on it in place of ${was}.`;
    default:
      return `${box}: ${title}: ${was} becomes ${will}.`;
  }
}

function enclosureText(box: string, kind: ScopeChange["kind"], was: string | undefined, will: string): string {
  switch (kind) {
    case "removed":
      return `Take ${box} out (${was}), or leave it in reach under a blank cover.`;
    case "new":
      return `Set ${box}: ${will}.`;
    case "replaced":
      return `Exchange ${box}: ${was} out, ${will} in.`;
    default:
      return `${box}: write ${will} on it in place of ${was}.`;
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
            text: `Bring ${cable.name} into ${box.name} and strip its sheath.`,
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
            text: `Make ${change.item.name} good at ${change.will?.words ?? box.name}: cut back, strip and make it again.`,
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
  if (ledger.available === undefined)
    return `Fill ${total} in³: ${parts}. The volume of the box is not recorded: read its marking.`;
  const spare = ledger.available - ledger.total;
  const left =
    spare >= 0
      ? `${formatVolume(spare as typeof ledger.total)} left`
      : `${formatVolume(-spare as typeof ledger.total)} too much`;
  return `Fill ${total} of ${formatVolume(ledger.available)} in³: ${parts}, ${left}.`;
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
        text: `Mark ${change.item.name} ${marked} with tape or paint at this end.`,
      },
    ];
  });
}
