import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import { findLoadItem } from "../../../shared-model/catalog/load-items.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { parseOutlet } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { shownInstallation } from "../document-store.ts";
import { nextDeviceName } from "../naming.ts";
import { openPick } from "../pick-store.ts";
import { placeDevice, placeLoad, tryDevice } from "../placing.ts";
import type { Tool } from "../selection.ts";
import { takeTool } from "../session-store.ts";
import { receptacles } from "./device-actions.ts";
import { chooseFarSide, putEnclosure, tell, titled } from "./enclosure-actions.ts";
import { wording } from "./words.ts";

/** Puts down what was taken from the stock without the sheet: a box on a free place, anything else where a list says. */
export function placeTool(tool: Tool): void {
  takeTool(undefined);
  switch (tool.kind) {
    case "enclosure":
      putEnclosure(tool.id);
      return;
    case "device":
      chooseBox(tool.id);
      return;
    case "cable":
      chooseNearSide(tool.id);
      return;
    case "load":
      chooseOutlet(tool.id);
  }
}

function chooseBox(type: string): void {
  const found = findDeviceType(type);
  const tool: Tool = { kind: "device", id: type };
  openPick({
    title: wording.whereDoesItGo2(found?.title ?? type),
    lines: () => {
      const installation = shownInstallation();
      const name = nextDeviceName(installation, type);
      return inOrder<Enclosure>(installation.enclosures)
        .filter(({ kind }) => kind === found?.where)
        .map((box) => ({
          ...titled(box),
          call: tryDevice(type, box.id, name),
          aim: { tool, enclosure: box.id },
          run: () => tell(placeDevice(type, box.id)),
        }));
    },
  });
}

function chooseNearSide(item: string): void {
  const title = cableItems.find(({ id }) => id === item)?.title ?? item;
  openPick({
    title: wording.whereDoesItBegin(title),
    lines: () =>
      inOrder<Enclosure>(shownInstallation().enclosures).map((box) => ({
        ...titled(box),
        aim: { tool: { kind: "cable", id: item }, enclosure: box.id },
        run: () => chooseFarSide(item, title, box),
      })),
  });
}

function chooseOutlet(item: string): void {
  openPick({
    title: wording.plugIn(findLoadItem(item)?.title ?? item),
    lines: () =>
      receptacles().map(({ outlet, box }) => ({
        key: outlet.key,
        title: outlet.name,
        note: wording.inWord(box.name),
        aim: { tool: { kind: "load", id: item }, enclosure: box.id, device: parseOutlet(outlet.key).device },
        run: () => tell(placeLoad(item, outlet.key)),
      })),
  });
}
