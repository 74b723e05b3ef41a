import { catalogue, type Part } from "../lib/catalogue.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { idText, listOf, orNull, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { gone, unnamed } from "./item-words.ts";
import { draftInstallation, forgetEvidence, written } from "./move-ends.ts";

type Args = CommandArgs["assign-room"];

const wording = catalogue({
  out: (boxes: Part) => `Take ${boxes} out of its room`,
  put: (boxes: Part, room: Part) => `Put ${boxes} in ${room}`,
});

/** Puts boxes and panels into a room, or takes them out of theirs. */
export const assignRoom = defineCommand<Args>({
  id: "assign-room",
  args: record<Args>({ state: stateName, enclosures: listOf(idText, 1), room: orNull(idText) }),
  label(project, { state, enclosures, room }) {
    const [first] = enclosures;
    const name = first === undefined ? undefined : getInstallation(project, state).enclosures[first]?.name;
    const what = enclosures.length > 1 || name === undefined ? unnamed.boxes(enclosures.length) : name;
    return room === null ? wording.out(what) : wording.put(what, project.rooms[room]?.name ?? unnamed.room);
  },
  refuse(project, { state, enclosures, room }) {
    for (const id of enclosures) {
      const { no } = enclosureOr(project, state, id);
      if (no !== undefined) return no;
    }
    if (room === null || room in project.rooms) return undefined;
    return refusal("unknown-room", gone.roomChosen);
  },
  apply(draft, { state, enclosures, room }, before) {
    for (const id of enclosures) {
      const was = getInstallation(before, state).enclosures[id]?.roomId;
      if (was === (room ?? undefined)) continue;
      const box = written(draftInstallation(draft, state).enclosures[id]);
      if (room === null) delete box.roomId;
      else box.roomId = room;
      forgetEvidence(box, "roomId");
    }
  },
});
