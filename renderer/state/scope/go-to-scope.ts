import type { Subject } from "../../../shared-model/answers/finding.ts";
import type { ScopeItem } from "../../../shared-model/answers/scope.ts";
import type { EnclosureId, LabelId } from "../../../shared-model/model/ids.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import type { Selected } from "../selection.ts";
import { goTo, select } from "../session-store.ts";
import { findSubject } from "../subject-target.ts";
import { scopeStore } from "./scope-store.ts";

/** A line of the list: what it stands for, and the box it stands under. */
export interface ScopePress {
  readonly key: string;
  readonly items: readonly ScopeItem[];
  readonly box?: EnclosureId | undefined;
}

/**
 * Goes to what a line stands for and selects it; what is taken out is shown where it is laid aside, and facts of a box are
 * the box.
 */
export function goToScope({ key, items, box }: ScopePress): void {
  scopeStore.merge({ pressed: { key, items: items.flatMap(laidAsideAs) } });
  const found = distinct(items.flatMap((item) => targetOf(item) ?? []));
  const [first, ...others] = found.length > 0 || box === undefined ? found : boxAt(box);
  if (first === undefined) return;
  goTo(first);
  if (others.length > 0) select(first, ...others);
}

/** What the sheet calls a thing that is laid aside; a replaced device by its old id. */
const laidAsideAs = ({ kind, id, was }: ScopeItem): readonly string[] => {
  const as = kind === "ring" || kind === "entry" ? "part" : kind;
  return was === undefined ? [`${as} ${id}`] : [`${as} ${id}`, `${as} ${was}`];
};

const boxAt = (id: EnclosureId): readonly Selected[] =>
  id in shownInstallation().enclosures ? [{ kind: "enclosure", id }] : [];

const SUBJECTS: ReadonlySet<string> = new Set<Subject["kind"]>([
  "enclosure",
  "cable",
  "device",
  "splice",
  "jumper",
  "end",
  "entry",
  "load",
]);

function targetOf({ kind, id, name }: ScopeItem): Selected | undefined {
  const installation = shownInstallation();
  if (kind === "part") return boxAt(id.split(":")[0] as EnclosureId)[0];
  if (kind === "label") return id in installation.labels ? { kind: "label", id: id as LabelId } : undefined;
  if (!SUBJECTS.has(kind)) return undefined;
  return findSubject(documentStore.get().project, installation, { kind, id, name } as Subject);
}

const distinct = (items: readonly Selected[]): readonly Selected[] => [
  ...new Map(items.map((item) => [`${item.kind} ${item.id}`, item])).values(),
];
