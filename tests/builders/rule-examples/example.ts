import type { Subject, SubjectKind } from "../../../shared-model/answers/finding.ts";
import type { Project, StateName } from "../../../shared-model/model/project.ts";
import type { Drawing } from "../../rules/drawing.ts";

/** A drawing, or two states of one of which `state` is looked at. */
export interface Drawn {
  project(): Project;
  readonly state?: StateName;
}

/** A rule broken and kept, in two drawings that differ as little as they can; what is said beside them is product text. */
export interface Example {
  /** Names of the boxes and panels that are shown. */
  readonly show: readonly string[];
  /** Where the right drawing shows others. */
  readonly showRight?: readonly string[];
  /** Where the sign of the finding stands, where no thing that it names is in these boxes: an end, a splice. */
  readonly sign?: Subject;
  readonly wrong: () => Drawn;
  readonly right: () => Drawn;
}

export type Examples = Readonly<Record<string, Example>>;

/** One slip in a drawing that is right. */
export const slip = (show: string, base: () => Drawing, change: (drawing: Drawing) => Drawn): Example => ({
  show: show.split(" "),
  wrong: () => change(base()),
  right: base,
});

/** The same with the sign at something: "end C2.bk.a", "splice n1". */
export function signedAt(where: string, example: Example): Example {
  const [kind = "", id = ""] = where.split(" ");
  return { ...example, sign: { kind: kind as SubjectKind, id, name: id } };
}
