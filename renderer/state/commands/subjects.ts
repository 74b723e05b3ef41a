import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId, EndKey } from "../../../shared-model/model/ids.ts";
import type { Attachment, Installation, Project } from "../../../shared-model/model/project.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import type { ActionSubject } from "../item-actions/subject.ts";
import type { Selected } from "../selection.ts";
import { endLines } from "./end-lines.ts";
import { KIND_WORDS } from "./group-words.ts";
import { laterWording } from "./later-words.ts";

/** Kinds of things that a command may be about. */
export type SubjectKind =
  | "enclosure"
  | "box"
  | "device"
  | "cable"
  | "splice"
  | "load"
  | "end"
  | "ring"
  | "pass-through"
  | "photo"
  | "any";

/** A thing that a command may be about, as the field lists it. */
export interface SubjectLine {
  readonly key: string;
  readonly title: string;
  readonly note: string;
  readonly subject: ActionSubject;
  /** What is selected when it is chosen. */
  readonly select: Selected;
}

export const SUBJECT_WORDS: Readonly<Record<SubjectKind, string>> = {
  enclosure: laterWording.boxOrPanel,
  box: laterWording.box,
  device: laterWording.device,
  cable: laterWording.cable,
  splice: laterWording.spliceWord,
  load: laterWording.load,
  end: laterWording.conductorEnd,
  ring: laterWording.ringOrExtension,
  "pass-through": laterWording.cableThatRunsThroughABox,
  photo: laterWording.photo,
  any: laterWording.thing,
};

/** Ends are many: until something is typed, the first of them. */
const FIRST_ENDS = 40;

/** Everything of a kind in the drawing; of ends, those that are called what was typed. */
export function subjectsOf(
  kind: SubjectKind,
  project: Project,
  installation: Installation,
  typed: string,
): readonly SubjectLine[] {
  const boxes = inOrder<Enclosure>(installation.enclosures);
  switch (kind) {
    case "enclosure":
      return boxes.map(ofEnclosure);
    case "box":
      return boxes.filter((one) => one.kind === "box").map(ofEnclosure);
    case "device":
      return boxes.flatMap(({ devices, name: box }) =>
        Object.values(devices).map(({ id, name, type }) =>
          line({ kind: "device", id }, name, laterWording.inWord(findDeviceType(type)?.caption ?? "device", box)),
        ),
      );
    case "cable":
      return inOrder(installation.cables).map(({ id, name }) => line({ kind: "cable", id }, name, laterWording.cable));
    case "splice":
      return boxes.flatMap(({ splices, name: box }) =>
        Object.values(splices).map(({ id, name }) => line({ kind: "splice", id }, name, laterWording.spliceIn(box))),
      );
    case "load":
      return inOrder(installation.loads).map(({ id, name }) => line({ kind: "load", id }, name, laterWording.load));
    case "end":
      return typed.trim() === "" ? firstEnds(installation, boxes) : typedEnds(installation, typed);
    case "ring":
      return boxes.flatMap((box) =>
        box.kind === "box"
          ? Object.values(box.rings).map(({ id, kind: ring }) => ({
              ...line({ kind: "enclosure", id: box.id }, ring.replace("-", " "), laterWording.on(box.name)),
              key: `ring ${id}`,
              subject: { kind: "ring" as const, enclosure: box.id, id },
            }))
          : [],
      );
    case "pass-through":
      return boxes.flatMap((box) =>
        Object.values(box.passThroughs).map(({ id, cable }) => ({
          ...line(
            { kind: "enclosure", id: box.id },
            installation.cables[cable]?.name ?? "cable",
            laterWording.through(box.name),
          ),
          key: `pass-through ${id}`,
          subject: { kind: "pass-through" as const, enclosure: box.id, id },
        })),
      );
    case "photo":
      return inOrder<Attachment>(project.attachments).flatMap(({ id, name, caption, enclosure }) => {
        const box = enclosure && installation.enclosures[enclosure];
        if (box === undefined) return [];
        return [
          {
            ...line({ kind: "enclosure", id: box.id }, caption ?? name, laterWording.photoOf(box.name)),
            key: `photo ${id}`,
          },
        ];
      });
    case "any":
      return (["enclosure", "device", "cable", "splice", "load"] as const).flatMap((one) =>
        subjectsOf(one, project, installation, typed),
      );
  }
}

/** Whether there is anything of a kind; looks no farther than the first. */
export function hasSubject(kind: SubjectKind, project: Project, installation: Installation): boolean {
  const { enclosures, cables, loads } = installation;
  const some = (table: object): boolean => {
    for (const _ in table) return true;
    return false;
  };
  const inSome = (part: (box: Enclosure) => object): boolean => {
    for (const id in enclosures) {
      const box = enclosures[id as EnclosureId];
      if (box !== undefined && some(part(box))) return true;
    }
    return false;
  };
  switch (kind) {
    case "enclosure":
    case "any":
      return some(enclosures);
    case "box":
      return inSome((box) => (box.kind === "box" ? { box } : {}));
    case "cable":
      return some(cables);
    case "load":
      return some(loads);
    case "device":
      return inSome(({ devices }) => devices);
    case "splice":
      return inSome(({ splices }) => splices);
    case "end":
      return inSome(({ places }) => places);
    case "ring":
      return inSome((box) => (box.kind === "box" ? box.rings : {}));
    case "pass-through":
      return inSome(({ passThroughs }) => passThroughs);
    case "photo":
      return some(project.attachments);
  }
}

const line = (select: Selected & ActionSubject, title: string, note: string): SubjectLine => ({
  key: `${select.kind} ${select.id}`,
  title,
  note,
  subject: select,
  select,
});

const ofEnclosure = ({ id, name, note, kind }: Enclosure): SubjectLine =>
  line({ kind: "enclosure", id }, name, note ?? KIND_WORDS[kind]);

function firstEnds(installation: Installation, boxes: readonly Enclosure[]): readonly SubjectLine[] {
  const lines: SubjectLine[] = [];
  for (const box of boxes) {
    for (const end of Object.keys(box.places) as EndKey[]) {
      if (lines.length >= FIRST_ENDS) return lines;
      lines.push(
        line(
          { kind: "end", enclosure: box.id, id: end },
          nameOfEnd(installation, box, end),
          laterWording.endIn3(box.name),
        ),
      );
    }
  }
  return lines;
}

const typedEnds = (installation: Installation, typed: string): readonly SubjectLine[] =>
  endLines(installation, typed).map(({ title, note, target }) => line(target, title, note));
