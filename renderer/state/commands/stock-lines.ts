import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import type { Tool } from "../selection.ts";
import { takeTool } from "../session-store.ts";
import type { CommandLine } from "./entry.ts";
import { laterWording } from "./later-words.ts";

const THEN_PRESS: Readonly<Record<Tool["kind"], string>> = {
  enclosure: laterWording.thenPressTheSheet,
  cable: laterWording.thenPressTwoBoxes,
  device: laterWording.thenPressABox,
  load: laterWording.thenPressAReceptacle,
};

/** Keys go on with what was taken where it is put down. */
function focusSheet(): void {
  if (document.activeElement?.closest(".sheet-flow") == null)
    document.querySelector<HTMLElement>("[data-sheet-stop]")?.focus({ preventScroll: true });
}

/** Everything of the stock, to be taken in the hand. */
export function stockLines(): readonly CommandLine[] {
  const line = (tool: Tool, verb: string, title: string, also?: string): CommandLine => ({
    key: `${tool.kind} ${tool.id}`,
    title: `${verb}: ${title}`,
    note: THEN_PRESS[tool.kind],
    ...(also !== undefined && { also }),
    run() {
      takeTool(tool);
      focusSheet();
    },
  });
  return [
    ...enclosureItems.map(({ id, title }) => line({ kind: "enclosure", id }, laterWording.place, title)),
    ...cableItems.map(({ id, title }) =>
      line({ kind: "cable", id }, laterWording.runACable, title, laterWording.addRouteDrawCable),
    ),
    ...deviceTypes.map(({ id, title }) => line({ kind: "device", id }, laterWording.place, title)),
    ...loadItems.map(({ id, title }) => line({ kind: "load", id }, laterWording.plugIn, title)),
  ];
}
