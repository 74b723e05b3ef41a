import { getDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { Rect } from "../../../shared-model/geometry/box-drawing.ts";
import { roomOf } from "../../../shared-model/geometry/free-place.ts";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import type { SignKind } from "../../../shared-model/geometry/sign-shapes.ts";
import { symbolOf } from "../../../shared-model/geometry/symbols/find-symbol.ts";
import type { SymbolKind } from "../../../shared-model/geometry/symbols/plan-symbol.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import type { EnclosureChange } from "../../../shared-model/queries/changed-between-states.ts";
import { toDecimal } from "../../../shared-model/units/volume.ts";
import { installationOf } from "../../state/document-store.ts";
import type { FindingsState } from "../../state/findings-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { shownDifference } from "../difference.ts";
import { answersAbout, answersBySubject, findingMarks, worstOf } from "../finding-marks.ts";
import type { SheetDrawings } from "../sheet-drawings.ts";
import { sideRooms } from "./side-rooms.ts";

/** A box as it is painted from afar. */
export interface FarItem {
  readonly id: EnclosureId;
  /** Outside of its walls, in drawing units of the sheet. */
  readonly rect: Rect;
  readonly name: string;
  readonly symbols: readonly SymbolKind[];
  /** How full it is; undefined where that is not known. */
  readonly ratio: number | undefined;
  readonly sign: SignKind | undefined;
  readonly change: EnclosureChange | undefined;
  /** How far away the next box beside it stands, in drawing units. */
  readonly aside: number;
}

const kept = new WeakMap<
  Enclosure,
  { readonly answers: readonly unknown[]; readonly sign: SignKind | undefined; readonly symbols: readonly SymbolKind[] }
>();

/**
 * All boxes of the shown wiring, or some of them, with what the checks say of them now. Some are as if no other stood
 * beside them.
 */
export function farItems(
  shown: SheetDrawings,
  found: FindingsState,
  some?: ReadonlySet<EnclosureId>,
): readonly FarItem[] {
  const { document, drawings } = shown;
  const { enclosures } = installationOf(document);
  const places = placesOf(document);
  const changes = shownDifference(document)?.enclosures;
  const index = answersBySubject(found.findings, found.couldNotTell);
  const items: Omit<FarItem, "aside">[] = [];
  const ids = some ?? (Object.keys(enclosures) as EnclosureId[]);
  for (const id of ids) {
    const enclosure = enclosures[id];
    if (enclosure === undefined) continue;
    const drawing = drawings.get(id);
    const at = places[id];
    if (at === undefined) continue;
    if (drawing === undefined) {
      if (shown.missing > 0) items.push(undrawn(enclosure, at));
      continue;
    }
    const answers = answersAbout(enclosure, index);
    let known = kept.get(enclosure);
    if (known === undefined || !sameAnswers(known.answers, answers)) {
      const sign = answers.length === 0 ? undefined : worstOf(findingMarks(drawing, answers));
      const devices = drawing.devices.filter(({ family }) => family !== "neutral-bar" && family !== "ground-bar");
      known = { answers, sign, symbols: symbolsIn(enclosure, devices) };
      kept.set(enclosure, known);
    }
    const ledger = found.ledgers[id];
    items.push({
      id,
      rect: {
        x: at.x - WALL,
        y: at.y - WALL,
        width: drawing.width + 2 * WALL,
        height: drawing.height + 2 * WALL,
      },
      name: drawing.header.name,
      symbols: known.symbols,
      ratio:
        ledger?.available === undefined
          ? undefined
          : toDecimal(ledger.total) / Math.max(toDecimal(ledger.available), 0.0001),
      sign: known.sign,
      change: changes?.get(id),
    });
  }
  const rooms = sideRooms(items.map(({ rect }) => rect));
  return items.map((item, i) => ({ ...item, aside: rooms[i] ?? 0 }));
}

/** A box that waits to be drawn: where it stands and what is in it are known, its size about. */
function undrawn(enclosure: Enclosure, at: Point): Omit<FarItem, "aside"> {
  const { width, height } = roomOf(enclosure.kind, at);
  const devices = Object.values(enclosure.devices).map(({ type }) => ({ type, glyph: getDeviceType(type).glyph }));
  return {
    id: enclosure.id,
    rect: { x: at.x, y: at.y, width: width / 2, height: height / 2 },
    name: enclosure.name,
    symbols: symbolsIn(enclosure, devices),
    ratio: undefined,
    sign: undefined,
    change: undefined,
  };
}

const sameAnswers = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((each, i) => each === b[i]);

function symbolsIn(
  enclosure: Enclosure,
  devices: readonly { readonly type: string; readonly glyph: string }[],
): readonly SymbolKind[] {
  if (enclosure.kind === "panel") return ["panel"];
  if (devices.length === 0) return ["junction"];
  return devices.flatMap((device) => symbolOf(device) ?? []);
}
