import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable } from "../model/cable.ts";
import { type ConductorKey, cableEnd, type EndKey, otherSide } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { sideTarget } from "./args-of-model.ts";
import { idText, oneOf, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { emptiedEntries } from "./entries.ts";
import { callItem, noSuchItem } from "./find-item-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation, moveEnds, written } from "./move-ends.ts";
import { capEnds, makeSide, noSuchSide, sidesMeet } from "./route-cable.ts";
import { forgetCables } from "./take-away.ts";

type Args = CommandArgs["move-cable-side"];

const wording = catalogue({
  leave: (cable: Part) => `Let ${cable} leave the drawing`,
  move: (cable: Part, box: Part) => `Move ${cable} to ${box}`,
  passes: (cable: Part, box: Part) =>
    `${cable} runs through ${box} unbroken. Remove the pass-through first, then end the cable there.`,
  sayWhere: (cable: Part) => `Say where ${cable} goes`,
});

/**
 * Takes one side of a cable to another enclosure, where its ends arrive capped, or to another entry of the same one,
 * where they stay as they are. The bends drawn along the cable are dropped: they led somewhere else.
 */
export const moveCableSide = defineCommand<Args>({
  id: "move-cable-side",
  args: record<Args>({ state: stateName, cable: idText, side: oneOf(["a", "b"]), to: sideTarget }),
  label(project, { state, cable, side, to }) {
    const name = callItem(project, state, { kind: "cable", id: cable });
    if ("outside" in to) {
      const from = getInstallation(project, state).cables[cable]?.sides[side];
      return from !== undefined && "outside" in from ? wording.sayWhere(name) : wording.leave(name);
    }
    return wording.move(name, getInstallation(project, state).enclosures[to.enclosure]?.name ?? unnamed.box);
  },
  refuse(project, { state, cable: id, side, to }) {
    const no = noSuchItem(project, state, { kind: "cable", id });
    if (no !== undefined) return no;
    const cable = getInstallation(project, state).cables[id];
    if (cable === undefined) return undefined;
    const wrong = noSuchSide(project, state, to) ?? sidesMeet(to, cable.sides[otherSide(side)]);
    if (wrong !== undefined || "outside" in to) return wrong;
    const enclosure = getInstallation(project, state).enclosures[to.enclosure];
    if (enclosure === undefined || !Object.values(enclosure.passThroughs).some((pass) => pass.cable === id))
      return undefined;
    return refusal("passes-through", wording.passes(cable.name, enclosure.name));
  },
  apply(draft, { state, cable: id, side, to }, before) {
    const cable = written(getInstallation(before, state).cables[id]);
    const target = draftInstallation(draft, state);
    const from = cable.sides[side];
    const stays = "enclosure" in from && "enclosure" in to && from.enclosure === to.enclosure;
    if (stays && "entry" in to && to.entry === from.entry) return;
    const moved: Cable = { ...cable, sides: { ...cable.sides, [side]: makeSide(target, to) } };
    if (!stays) leave(draft, state, cable, side, before);
    written(target.cables[id]).sides[side] = { ...moved.sides[side] };
    if (!stays) capEnds(target, moved, side);
    dropEmptyEntry(draft, state, cable, side, before);
    if (id in before.layout.cables) delete draft.layout.cables[id];
  },
});

/** Takes the ends of a side out of the box that it leaves, and what the box was meant to do with the cable. */
function leave(draft: Draft<Project>, state: StateName, cable: Cable, side: "a" | "b", before: Project): void {
  const from = cable.sides[side];
  if (!("enclosure" in from)) return;
  const ends = (Object.keys(cable.conductors) as ConductorKey[]).map((key) => cableEnd(cable.id, key, side));
  moveEnds(draft, state, from.enclosure, new Map<EndKey, At>(ends.map((end) => [end, { kind: "capped" }])), before);
  const target = draftInstallation(draft, state);
  const { places } = written(target.enclosures[from.enclosure]);
  for (const end of ends) delete places[end];
  forgetCables(target, from.enclosure, new Set([cable.id]));
}

function dropEmptyEntry(draft: Draft<Project>, state: StateName, cable: Cable, side: "a" | "b", before: Project): void {
  const from = cable.sides[side];
  if (!("enclosure" in from)) return;
  const installation = getInstallation(before, state);
  const enclosure = written(installation.enclosures[from.enclosure]);
  const isGone = { cable: (id: string) => id === cable.id, passThrough: () => false };
  const box = written(draftInstallation(draft, state).enclosures[from.enclosure]);
  for (const entry of emptiedEntries(installation, enclosure, [from.entry], isGone)) delete box.entries[entry];
}
