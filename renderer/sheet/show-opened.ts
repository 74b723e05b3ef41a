import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { openBox } from "./open-boxes.ts";
import { bringIntoView } from "./sheet-view.ts";

/** Opens a box, in view as a whole. @param then Called with its element once it is drawn. */
export function showOpened(box: EnclosureId, then: (element: Element) => void = () => {}): void {
  openBox(box);
  requestAnimationFrame(() => {
    const node = document.querySelector(`.react-flow__node[data-id="${CSS.escape(box)}"]`);
    if (node === null) return;
    then(node);
    bringIntoView(node.querySelector(".sheet-open-plate") ?? node);
  });
}
