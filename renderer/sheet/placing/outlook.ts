import { findCableItem } from "../../../shared-model/catalog/cable-items.ts";
import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import { findEnclosureItem } from "../../../shared-model/catalog/enclosure-items.ts";
import { findLoadItem } from "../../../shared-model/catalog/load-items.ts";
import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import type { Gap } from "../../../shared-model/geometry/even-gaps.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import type { Guide } from "../../../shared-model/geometry/snap.ts";
import type { DeviceId, EnclosureId, LoadId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { type DocumentState, installationOf, refusalOf, tryCall } from "../../state/document-store.ts";
import { nextDeviceName, nextEnclosureName } from "../../state/naming.ts";
import type { PickAim } from "../../state/pick-store.ts";
import { outletFor } from "../../state/placing.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { knownDrawingOf } from "../drawings.ts";
import { laterWording } from "../later-words.ts";
import { wording } from "../words.ts";
import type { Aim } from "./aim.ts";
import { newBox, spotOf } from "./spot.ts";

/** What putting down would do now. */
export interface Outlook {
  readonly legal: boolean;
  readonly words: string;
  /** Where the words stand, in drawing units of the sheet. */
  readonly at: Point;
  /** What it would be part of. */
  readonly into?: Rect;
  /** What would be new. */
  readonly part?: Rect;
  /** A cable that would be drawn, from box to box. */
  readonly line?: { readonly from: Point; readonly to: Point };
  readonly guides: readonly Guide[];
  readonly gaps: readonly Gap[];
}

const NO_LINES = { guides: [], gaps: [] } as const;
const no = ({ at }: Aim, words: string, into?: Rect): Outlook => ({
  legal: false,
  words,
  at,
  ...(into && { into }),
  ...NO_LINES,
});

/** What would follow if what is in the hand were put down where it is aimed at: legal or not, and why not. */
export function outlookOf(document: DocumentState, aim: Aim): Outlook | undefined {
  switch (aim.tool.kind) {
    case "enclosure":
      return outlookOfBox(document, aim);
    case "device":
      return outlookOfDevice(document, aim);
    case "load":
      return outlookOfLoad(document, aim);
    default:
      return outlookOfCable(document, aim);
  }
}

/** As if a pointer were at the foot of the box that a line of a list means; undefined while that is not drawn. */
export function aimOfListed(document: DocumentState, { tool, enclosure, device, from }: PickAim): Aim | undefined {
  const area = areaOf(document, enclosure);
  if (area === undefined) return undefined;
  const at = { x: area.x, y: area.y + area.height };
  return { tool, at, enclosure, device, ...(from && { from }), by: "keys" };
}

function outlookOfBox(document: DocumentState, { tool, at }: Aim): Outlook | undefined {
  const drawing = newBox(tool.id);
  const item = findEnclosureItem(tool.id);
  if (drawing === undefined || item === undefined) return undefined;
  const spot = spotOf(document, tool.id, at);
  const name = nextEnclosureName(installationOf(document), item.make.kind);
  const words = spot.aside ? laterWording.goesBesideWhatIsThere(name) : laterWording.goesHere(name, item.title);
  const part = { ...spot.at, width: drawing.width, height: drawing.height };
  return { legal: true, words, at, part, guides: spot.guides, gaps: spot.gaps };
}

function outlookOfDevice(document: DocumentState, aim: Aim): Outlook {
  const { tool, enclosure, at } = aim;
  const type = findDeviceType(tool.id);
  if (enclosure === undefined)
    return no(aim, type?.where === "panel" ? laterWording.overNoPanelYet : wording.aDeviceGoesIntoABox);
  const into = areaOf(document, enclosure);
  const installation = installationOf(document);
  const name = nextDeviceName(installation, tool.id);
  const id = `new-${tool.id}` as DeviceId;
  const tried = tryCall({
    command: "place-device",
    args: { state: document.state, enclosure, id, type: tool.id, name },
  });
  if (!tried.ok) return no(aim, tried.refusal.message, into);
  const drawing = boxDrawing(tried.project, getInstallation(tried.project, document.state), enclosure);
  const plate = drawing.devices.find(({ device }) => device === id)?.body;
  const origin = placesOf(document)[enclosure];
  const words = laterWording.into(name, installation.enclosures[enclosure]?.name ?? "");
  if (plate === undefined || origin === undefined) return { legal: true, words, at, ...NO_LINES };
  // The box grows with what is in it.
  const { width, height } = drawing;
  const part = { ...plate, x: origin.x + plate.x, y: origin.y + plate.y };
  return { legal: true, words, at, into: walled({ ...origin, width, height }), part, ...NO_LINES };
}

function outlookOfLoad(document: DocumentState, aim: Aim): Outlook {
  const { tool, enclosure, device, at } = aim;
  const into = enclosure && areaOf(document, enclosure);
  const outlet = outletFor(installationOf(document), enclosure, device);
  if (outlet === undefined) return no(aim, wording.aLoadIsPluggedIntoA, into);
  const name = findLoadItem(tool.id)?.title ?? "";
  const call = {
    command: "place-load",
    args: { state: document.state, id: "new" as LoadId, item: tool.id, name, plug: outlet.key },
  } as const;
  const refused = refusalOf(call);
  if (refused !== undefined) return no(aim, refused.message, into);
  return { legal: true, words: laterWording.pluggedInto(name, outlet.name), at, ...(into && { into }), ...NO_LINES };
}

/** Before its first end is placed; after that, the line to the pointer shows it, or the box that a list has come to. */
function outlookOfCable(document: DocumentState, aim: Aim): Outlook {
  const { tool, enclosure, from, at } = aim;
  if (enclosure === undefined) return no(aim, wording.aCableStartsAtABox);
  const into = areaOf(document, enclosure);
  const name = installationOf(document).enclosures[enclosure]?.name ?? "";
  const size = findCableItem(tool.id)?.sizeText ?? "";
  if (from !== undefined) {
    const start = areaOf(document, from);
    const words = laterWording.cableFromTo(size, installationOf(document).enclosures[from]?.name ?? "", name).trim();
    const line = start && into && { from: middleOf(start), to: middleOf(into) };
    return { legal: true, words, at, ...(into && { into }), ...(line && { line }), ...NO_LINES };
  }
  const words = `${size} ${laterWording.startsAt(name)}`.trim();
  return { legal: true, words, at, ...(into && { into }), ...NO_LINES };
}

const middleOf = ({ x, y, width, height }: Rect): Point => ({ x: x + width / 2, y: y + height / 2 });

function areaOf(document: DocumentState, id: EnclosureId): Rect | undefined {
  const at = placesOf(document)[id];
  const drawing = knownDrawingOf(document, id);
  if (at === undefined || drawing === undefined) return undefined;
  return walled({ ...at, width: drawing.width, height: drawing.height });
}

const walled = ({ x, y, width, height }: Rect): Rect => ({
  x: x - WALL,
  y: y - WALL,
  width: width + 2 * WALL,
  height: height + 2 * WALL,
});
