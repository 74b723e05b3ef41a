import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import { cableEnds } from "../../../shared-model/geometry/roads/cable-ends.ts";
import { type CableId, type EnclosureId, otherSide, type Side } from "../../../shared-model/model/ids.ts";
import { END_WORDS } from "../../state/arrange-words.ts";
import { dispatch, documentStore, refusalOf, shownInstallation } from "../../state/document-store.ts";
import { freeSide } from "../../state/placing.ts";
import { notify, select } from "../../state/session-store.ts";
import { nodeAt } from "../cable-drag.ts";
import { paintedBoxAt } from "../far/painted.ts";
import { say } from "../gesture-store.ts";
import { toSheet } from "../sheet-view.ts";
import { bendStore } from "./bend-store.ts";
import { followDrag } from "./follow-drag.ts";

/**
 * Follows a press on the stub of a cable: dragged to another box, that side of the cable goes there and its conductors
 * arrive capped. Over a box that cannot take it the reason is shown; let go there, or over the empty sheet, nothing
 * changes.
 */
export function beginEndDrag(pressed: PointerEvent, cable: CableId, side: Side): void {
  const start = toSheet(pressed);
  const { project } = documentStore.get();
  const ends = cableEnds(project, shownInstallation(), cable);
  const from = (side === "a" ? ends?.b : ends?.a)?.at ?? start;
  const name = shownInstallation().cables[cable]?.name ?? "";
  followDrag(pressed, {
    move(event) {
      const over = boxUnder(event);
      const { words, possible } = verdictOn(cable, side, over);
      bendStore.merge({ ending: { cable, side, from, pointer: toSheet(event), over, words, possible } });
    },
    drop(event) {
      bendStore.merge({ ending: undefined });
      const over = boxUnder(event);
      if (over === undefined || over === homeOf(cable, side)) {
        say(END_WORDS.back(name));
        return;
      }
      const done = dispatch(callTo(cable, side, over));
      if (!done.ok) {
        say(done.refusal.message);
        notify("problem", END_WORDS.notMoved(name), [done.refusal.message]);
        return;
      }
      select({ kind: "cable", id: cable });
      say(END_WORDS.moved(name, nameOf(over)));
    },
    leave() {
      bendStore.merge({ ending: undefined });
      say(END_WORDS.back(name));
    },
  });
}

const nameOf = (id: EnclosureId): string => shownInstallation().enclosures[id]?.name ?? "";

function homeOf(cable: CableId, side: Side): EnclosureId | undefined {
  const where = shownInstallation().cables[cable]?.sides[side];
  return where && "enclosure" in where ? where.enclosure : undefined;
}

function boxUnder(event: PointerEvent): EnclosureId | undefined {
  const under = document.elementFromPoint(event.clientX, event.clientY);
  return under?.closest(".sheet-flow") == null ? undefined : (nodeAt(under) ?? paintedBoxAt(event));
}

function callTo(cable: CableId, side: Side, over: EnclosureId): TypedCall {
  const installation = shownInstallation();
  const box = installation.enclosures[over];
  const { state } = documentStore.get();
  const to = box === undefined ? { outside: "" } : freeSide(installation, box);
  return { command: "move-cable-side", args: { state, cable, side, to } };
}

/** What letting go over a box would do, in words. */
export function verdictOn(
  cable: CableId,
  side: Side,
  over: EnclosureId | undefined,
): { readonly words: string; readonly possible: boolean } {
  const wire = shownInstallation().cables[cable];
  if (over === undefined || wire === undefined) return { words: END_WORDS.nothing, possible: false };
  if (over === homeOf(cable, side)) return { words: END_WORDS.home(nameOf(over)), possible: false };
  const other = wire.sides[otherSide(side)];
  if ("enclosure" in other && other.enclosure === over)
    return { words: END_WORDS.otherEnd(wire.name, nameOf(over)), possible: false };
  const refusal = refusalOf(callTo(cable, side, over));
  if (refusal !== undefined) return { words: END_WORDS.not(refusal.message), possible: false };
  return { words: END_WORDS.to(nameOf(over)), possible: true };
}
