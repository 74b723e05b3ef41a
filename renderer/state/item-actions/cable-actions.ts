import type { EntryTarget } from "../../../shared-model/commands/command-args.ts";
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { ConductorKey, EntryId, PassThroughId, Side } from "../../../shared-model/model/ids.ts";
import { outsideWords, UNNAMED_SIDE } from "../../../shared-model/queries/far-side.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { colourCode } from "../../../shared-model/units/colour.ts";
import { conductorKeys } from "../conductor-keys.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { drawPanelOf, leadsOut } from "../draw-panel.ts";
import { mintId } from "../mint-id.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import { freeSide } from "../placing.ts";
import { bendActions } from "./bend-actions.ts";
import { titled } from "./enclosure-actions.ts";
import { writeLabel } from "./label-action.ts";
import type { ItemAction } from "./subject.ts";
import { wording } from "./words.ts";

/** Everything that can be done with a cable. */
export function cableActions(cable: Cable): readonly ItemAction[] {
  const { id, name } = cable;
  return [
    ...(["a", "b"] as const).map((side) => ({
      title: wording.moveTheEndOfFrom(name, sideName(cable, side)),
      run: () => moveSide(cable, side),
    })),
    ...(leadsOut(cable) ? [{ title: wording.drawThePanelOf(name), run: () => void drawPanelOf(cable) }] : []),
    ...bendActions(cable),
    { title: wording.runThroughABoxUnbroken(name), run: () => passThrough(cable) },
    { title: wording.writeALabelOn(name), run: () => writeLabel(name, { cable: id }) },
  ];
}

function sideName({ sides }: Cable, side: Side): string {
  const where = sides[side];
  return "outside" in where
    ? outsideWords(where.outside)
    : (shownInstallation().enclosures[where.enclosure]?.name ?? "");
}

function moveSide(cable: Cable, side: Side): void {
  const where = cable.sides[side];
  openPick({
    title: wording.moveTheEndOfFrom2(cable.name, sideName(cable, side)),
    hint: wording.itsConductorsArriveThereCapped,
    lines() {
      const { state } = documentStore.get();
      const installation = shownInstallation();
      const boxes = inOrder<Enclosure>(installation.enclosures).filter(
        ({ id }) => "outside" in where || id !== where.enclosure,
      );
      const lines = boxes.map(
        (to): PickLine =>
          lineFor(
            wording.to(to.name),
            { command: "move-cable-side", args: { state, cable: cable.id, side, to: freeSide(installation, to) } },
            titled(to).note,
          ),
      );
      if ("outside" in where) return lines;
      const outside = { outside: UNNAMED_SIDE };
      return [
        ...lines,
        lineFor(
          wording.leavesThisDrawing,
          { command: "move-cable-side", args: { state, cable: cable.id, side, to: outside } },
          wording.itsFarEndIsNotDrawn,
        ),
      ];
    },
  });
}

function passThrough(cable: Cable): void {
  openPick({
    title: wording.runThroughABoxUnbroken2(cable.name),
    hint: wording.firstWhichBox,
    lines: () =>
      inOrder<Enclosure>(shownInstallation().enclosures).map((box) => ({
        ...titled(box),
        run: () => chooseConductors(cable, box),
      })),
  });
}

function chooseConductors(cable: Cable, box: Enclosure): void {
  const keys = conductorKeys(cable);
  const codes = (chosen: readonly ConductorKey[]): string =>
    chosen.map((key) => colourCode(cable.conductors[key]?.colour ?? "black")).join(", ");
  openPick({
    title: wording.through(cable.name, box.name),
    hint: wording.whichConductorsRunThroughIt,
    lines: () => {
      const { state } = documentStore.get();
      const { first, second } = entriesOf(box);
      const line = (title: string, conductors: readonly ConductorKey[], loopLengthIn?: number): PickLine =>
        lineFor(
          title,
          {
            command: "add-pass-through",
            args: {
              state,
              enclosure: box.id,
              id: mintId<PassThroughId>("x"),
              cable: cable.id,
              conductors,
              entryIn: first,
              entryOut: second,
              ...(loopLengthIn !== undefined && { loopLengthIn }),
            },
          },
          codes(conductors),
        );
      return [
        line(wording.allOfThemStraight, keys),
        line(wording.allOfThemWithALoop, keys, 12),
        ...(keys.length > 1 ? keys.map((key) => line(wording.onlyStraight(codes([key])), [key])) : []),
      ];
    },
  });
}

/** Two new entries, held as the clamps of the box allow. */
function entriesOf(box: Enclosure): { readonly first: EntryTarget; readonly second: EntryTarget } {
  const side = freeSide(shownInstallation(), box);
  const means = "newEntry" in side ? side.means : "entry" in side ? (box.entries[side.entry]?.means ?? "none") : "none";
  return {
    first: { newEntry: mintId<EntryId>("e"), means },
    second: { newEntry: mintId<EntryId>("e"), means },
  };
}
