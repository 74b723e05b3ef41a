import type { Draft } from "immer";
import { type EnclosureItem, findEnclosureItem } from "../catalog/enclosure-items.ts";
import { STORED_WORDS } from "../catalog/stored-words.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Box, Enclosure } from "../model/enclosure.ts";
import { nextOrder } from "../queries/in-order.ts";
import { catalogText, idText, nameText, optional, record, sheetPoint, stateName, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { installationOr } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { gone, notInStock } from "./item-words.ts";
import { assumed, deviceOfType } from "./make-device.ts";
import { draftInstallation } from "./move-ends.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["place-enclosure"];

const wording = catalogue({
  box: (name: Part) => `Place box ${name}`,
  noBars: "A panel needs identities for its neutral bar and its ground bar.",
  onlyPanel: "Only a panel has bars. Place the box without them.",
  panel: (name: Part) => `Place panel ${name}`,
});

/** Places a box or panel of the stock; a panel comes with its neutral and ground bars. */
export const placeEnclosure = defineCommand<Args>({
  id: "place-enclosure",
  args: record<Args>({
    state: stateName,
    id: idText,
    item: catalogText,
    name: nameText,
    at: sheetPoint,
    roomId: optional(idText),
    note: optional(textUpTo(200)),
    bars: optional(record({ neutral: idText, ground: idText })),
  }),
  label: (_project, { item, name }) => wording[findEnclosureItem(item)?.make.kind ?? "box"](name),
  refuse(project, args) {
    const { no } = installationOr(project, args.state);
    if (no !== undefined) return no;
    const item = findEnclosureItem(args.item);
    if (item === undefined) return refusal("unknown-catalog-item", notInStock.box(args.item));
    const noBars = wrongBars(item, args);
    if (noBars !== undefined) return noBars;
    if (args.roomId !== undefined && !(args.roomId in project.rooms)) return refusal("unknown-room", gone.roomChosen);
    return idsInUse(project, args.id, ...(args.bars === undefined ? [] : [args.bars.neutral, args.bars.ground]));
  },
  apply(draft, args, before) {
    const item = findEnclosureItem(args.item);
    if (item === undefined) throw new Error(`No enclosure item ${args.item}.`);
    const installation = draftInstallation(draft, args.state);
    const source = args.state === "as-found" ? before.asFound : before.proposed;
    const enclosure = make(item, args, nextOrder(source?.enclosures ?? {}));
    installation.enclosures[args.id] = enclosure as Draft<Enclosure>;
    draft.layout.enclosures[args.id] = { ...args.at };
  },
});

function wrongBars({ make: { kind } }: EnclosureItem, { bars }: Args): Refusal | undefined {
  if (kind === "panel" && bars === undefined) return refusal("panel-without-bars", wording.noBars);
  if (kind === "box" && bars !== undefined) return refusal("box-with-bars", wording.onlyPanel);
  return undefined;
}

function make(item: EnclosureItem, args: Args, order: number): Enclosure {
  const common = {
    id: args.id,
    name: args.name,
    item: item.id,
    entries: {},
    splices: {},
    jumpers: {},
    passThroughs: {},
    places: {},
    order,
    ...(args.roomId !== undefined && { roomId: args.roomId }),
    ...(args.note !== undefined && args.note !== "" && { note: args.note }),
  };
  if (item.make.kind === "box") {
    const { facts } = item.make;
    const box: Omit<Box, keyof typeof common> = {
      kind: "box",
      devices: {},
      rings: {},
      supports: [],
      ...copyOf(facts),
      evidence: assumed(Object.keys(facts)),
    };
    return { ...common, ...box };
  }
  const { bars } = args;
  if (bars === undefined) throw new Error("A panel without bars.");
  return {
    ...common,
    kind: "panel",
    spaces: item.make.spaces,
    supply: "service",
    mainBond: "unknown",
    devices: {
      [bars.neutral]: deviceOfType(bars.neutral, "neutral-bar", STORED_WORDS.neutralBar, 0),
      [bars.ground]: deviceOfType(bars.ground, "ground-bar", STORED_WORDS.groundBar, 1),
    },
    evidence: assumed(["spaces", "supply"]),
  };
}
