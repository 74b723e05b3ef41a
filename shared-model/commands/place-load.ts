import type { Draft } from "immer";
import { findLoadItem } from "../catalog/load-items.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { OutletKey } from "../model/ids.ts";
import type { Load } from "../model/load.ts";
import type { Project, StateName } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { outletsOf } from "../queries/outlets-of.ts";
import { milliamps, ohms, watts } from "../units/quantity.ts";
import { catalogText, idText, nameText, outletText, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { outletOr } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { notInStock, unnamed } from "./item-words.ts";
import { assumed } from "./make-device.ts";
import { draftInstallation } from "./move-ends.ts";

type Args = CommandArgs["place-load"];

const wording = catalogue({
  noSocket: (device: Part) => `Nothing can be plugged into ${device}. Pick a receptacle.`,
  plug: (load: Part, outlet: Part) => `Plug ${load} into ${outlet}`,
});

/** Plugs something of the stock into an outlet. */
export const placeLoad = defineCommand<Args>({
  id: "place-load",
  args: record<Args>({ state: stateName, id: idText, item: catalogText, name: nameText, plug: outletText }),
  label: (project, { state, name, plug }) => plugInto(project, state, name, plug),
  refuse(project, { state, id, item, plug }) {
    const no = noSocket(project, state, plug);
    if (no !== undefined) return no;
    if (findLoadItem(item) === undefined) return refusal("unknown-catalog-item", notInStock.load(item));
    return idsInUse(project, id);
  },
  apply(draft, { state, id, item: itemId, name, plug }, before) {
    const item = findLoadItem(itemId);
    if (item === undefined) throw new Error(`No load item ${itemId}.`);
    const facts = {
      loadW: watts(item.loadW),
      ...(item.loadOhm !== undefined && { loadOhm: ohms(item.loadOhm) }),
      ...(item.leakMa !== undefined && { leakMa: milliamps(item.leakMa) }),
      ...(item.priority !== undefined && { priority: item.priority }),
      ...(item.continuous !== undefined && { continuous: item.continuous }),
    };
    const order = nextOrder(getInstallation(before, state).loads);
    const load: Load = { id, name, item: itemId, plug, order, ...facts, evidence: assumed(Object.keys(facts)) };
    draftInstallation(draft, state).loads[id] = load as Draft<Load>;
  },
});

/** Why nothing can be plugged in there: it is gone, or it is hard-wired. */
export function noSocket(project: Project, state: StateName, plug: OutletKey): Refusal | undefined {
  const { found, no } = outletOr(project, state, plug);
  if (no !== undefined) return no;
  if (outletsOf(found.device).some((outlet) => outlet.key === plug && outlet.receptacle)) return undefined;
  return refusal("not-a-receptacle", wording.noSocket(found.device.name));
}

/** "R5/upper", "R1". */
export function nameOfOutlet(project: Project, state: StateName, key: OutletKey): string {
  const { found } = outletOr(project, state, key);
  if (found === undefined) return unnamed.outlet;
  return outletsOf(found.device).find((outlet) => outlet.key === key)?.name ?? found.device.name;
}

/** Name of the step that plugs a load in. */
export const plugInto = (project: Project, state: StateName, load: string, plug: OutletKey): string =>
  wording.plug(load, nameOfOutlet(project, state, plug));
