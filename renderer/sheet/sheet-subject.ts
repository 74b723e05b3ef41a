import type {
  CableId,
  DeviceId,
  EnclosureId,
  EndKey,
  JumperId,
  RoomId,
  SpliceId,
} from "../../shared-model/model/ids.ts";
import type { Selected } from "../state/selection.ts";

/** Something on the sheet that can be focused, pressed and acted on, and the box it is in. */
export type Subject =
  | { readonly kind: "box"; readonly enclosure: EnclosureId }
  | { readonly kind: "device"; readonly enclosure: EnclosureId; readonly id: DeviceId }
  | { readonly kind: "splice"; readonly enclosure: EnclosureId; readonly id: SpliceId }
  | { readonly kind: "cable"; readonly enclosure: EnclosureId | undefined; readonly id: CableId }
  | { readonly kind: "end"; readonly enclosure: EnclosureId; readonly id: EndKey }
  /** The selected boxes: how they stand to each other. */
  | { readonly kind: "arrange" }
  | { readonly kind: "jumper"; readonly enclosure: EnclosureId; readonly id: JumperId }
  /** The empty sheet, in the area of a room where there is one. */
  | {
      readonly kind: "sheet";
      readonly at: { readonly x: number; readonly y: number };
      readonly room?: RoomId | undefined;
    };

/** What a press on it selects. */
export function selectedOf(subject: Subject): Selected | undefined {
  switch (subject.kind) {
    case "box":
      return { kind: "enclosure", id: subject.enclosure };
    case "device":
    case "splice":
    case "cable":
    case "jumper":
      return { kind: subject.kind, id: subject.id } as Selected;
    case "end":
      return { kind: "end", enclosure: subject.enclosure, id: subject.id };
    case "arrange":
    case "sheet":
      return undefined;
  }
}
