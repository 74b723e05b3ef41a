import type {
  DeviceId,
  EnclosureId,
  PassThroughId,
  ReadingId,
  RingId,
  TerminalName,
} from "../../../shared-model/model/ids.ts";
import { keyOf, type Selected } from "../selection.ts";

/** Anything that something can be done with: what can be selected, and the parts of it that cannot. */
export type ActionSubject =
  | Selected
  | {
      readonly kind: "terminal";
      readonly enclosure: EnclosureId;
      readonly device: DeviceId;
      readonly id: TerminalName;
    }
  | { readonly kind: "ring"; readonly enclosure: EnclosureId; readonly id: RingId }
  | { readonly kind: "pass-through"; readonly enclosure: EnclosureId; readonly id: PassThroughId }
  | { readonly kind: "bond"; readonly enclosure: EnclosureId }
  | { readonly kind: "reading"; readonly id: ReadingId }
  | { readonly kind: "rooms" }
  | { readonly kind: "readings" }
  | { readonly kind: "drawing" };

/** Something that can be done, named by what it does. A title that ends in "…" asks for more. */
export interface ItemAction {
  readonly title: string;
  readonly keys?: string;
  readonly run: () => void;
}

const UNSELECTABLE: ReadonlySet<ActionSubject["kind"]> = new Set([
  "terminal",
  "ring",
  "pass-through",
  "bond",
  "reading",
  "rooms",
  "readings",
  "drawing",
]);

/** The thing to select for a subject; undefined for a part that cannot be selected. */
export const selectable = (subject: ActionSubject): Selected | undefined =>
  UNSELECTABLE.has(subject.kind) ? undefined : (subject as Selected);

/** Whether two selectable things are the same. */
export const isSame = (a: Selected, b: Selected): boolean => keyOf(a) === keyOf(b);
