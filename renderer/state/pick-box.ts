import type { Box } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { openPick } from "./pick-store.ts";

/** Asks which of some boxes is meant. */
export function pickBox(title: string, boxes: readonly Box[], then: (box: EnclosureId) => void): void {
  openPick({
    title,
    lines: () => boxes.map(({ id, name, note }) => ({ key: id, title: name, note: note ?? "", run: () => then(id) })),
  });
}
