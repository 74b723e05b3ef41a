import { catalogue, type Part } from "../lib/catalogue.ts";
import { ROOM_KINDS } from "../model/room.ts";
import { nextOrder } from "../queries/in-order.ts";
import { idText, listOf, nameText, oneOf, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { idsInUse } from "./fresh-ids.ts";

type Args = CommandArgs["add-room"];

const wording = catalogue({
  add: (room: Part) => `Add room ${room}`,
});

/** Adds a room. What it is decides which outlets in it must be protected. */
export const addRoom = defineCommand<Args>({
  id: "add-room",
  args: record<Args>({ id: idText, name: nameText, kinds: listOf(oneOf(ROOM_KINDS)) }),
  label: (_project, { name }) => wording.add(name),
  refuse: (project, { id }) => idsInUse(project, id),
  apply(draft, { id, name, kinds }, before) {
    draft.rooms[id] = { id, name, kinds: [...new Set(kinds)], order: nextOrder(before.rooms) };
  },
});
