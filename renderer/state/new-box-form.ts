import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { SupplyAnswer } from "../../shared-model/answers/supply.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../shared-model/catalog/enclosure-items.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { askSupply } from "./ask-supply.ts";
import { dispatch, documentStore, newDocument, shownInstallation } from "./document-store.ts";
import { freshSupply, typedCalls } from "./draw-panel.ts";
import { laterWording } from "./later-words.ts";
import { boxToMake, MOST_CABLES, MOST_DEVICES, type SeenBox } from "./new-box.ts";
import { goTo, notify } from "./session-store.ts";

/** What a person may choose from, in the words of the trade. */
export const BOX_ITEMS = enclosureItems.filter(({ make }) => make.kind === "box");
export const CABLE_ITEMS = cableItems;
export const DEVICE_TYPES = deviceTypes.filter(({ where }) => where === "box");

export const FIRST_SEEN: SeenBox = {
  item: "square-4-2-1-8",
  name: "",
  room: { kind: "none" },
  held: "clamps",
  cables: [{ id: CABLE_ITEMS[0]?.id ?? "", count: 2 }],
  devices: [{ id: "receptacle-15", count: 1 }],
};

/** Where the box is to stand: in a drawing of its own, or in the one that is open. */
export type Into = "new-drawing" | "this-drawing";

interface Home {
  readonly project: Project;
  readonly state: StateName;
}

/** The document with the box in it, in the account of the wiring that was told. */
export interface TriedBox extends Home {
  readonly id: EnclosureId;
  /** The cable that is thought to bring the supply. */
  readonly supply?: CableId;
  /** The same command for the document that is open: what it would bring there is asked of the checks. */
  readonly asked: { readonly state: StateName; readonly call: CommandCall };
}

/**
 * The box as it would be, on a copy; why not, where it cannot be.
 * @param open The document of this window.
 */
export function tryBox(
  seen: SeenBox,
  into: Into,
  open: Home,
): { readonly ok: true; readonly tried: TriedBox } | { readonly ok: false; readonly why: string } {
  const { project, state }: Home =
    into === "this-drawing" ? open : { project: newDocument().project, state: "as-found" };
  const { id, supply, call } = boxToMake(project, state, seen);
  const ran = runCommand(project, call);
  if (!ran.ok) return { ok: false, why: ran.refusal.message };
  // A drawing of its own is judged by its own edition, whatever drawing is open meanwhile.
  const { edition } = project;
  const first: readonly TypedCall[] =
    open.project.edition === edition ? [] : [{ command: "set-edition", args: { edition } }];
  const asked = { ...call, args: { ...call.args, calls: [...first, ...call.args.calls] } };
  const tried = { id, project: ran.project, state, asked: { state, call: asked } };
  return { ok: true, tried: { ...tried, ...(supply !== undefined && { supply }) } };
}

/** Makes the box once it is ready. @returns Whether it was made. */
export const makeBox = async (seen: SeenBox): Promise<boolean> => (await readyBox(seen))();

/**
 * Makes ready a box for the drawing that is open, with the panel of its supply, which is waited for some seconds.
 * @returns What makes it, in one step, selects it and brings it into view; says whether it was made.
 */
export async function readyBox(seen: SeenBox): Promise<() => boolean> {
  const { project, state } = documentStore.get();
  const box = boxToMake(project, state, seen);
  const wanted = box.supply !== undefined && seen.panel !== "left-out";
  const panel = wanted ? await panelFor(state, box) : undefined;
  return () => makeReady({ project, state }, box, wanted, panel);
}

function makeReady(
  { project, state }: Home,
  { id, call }: ReturnType<typeof boxToMake>,
  wanted: boolean,
  panel: SupplyAnswer | undefined,
): boolean {
  // While it was asked for, another drawing may have been opened: the box was not meant for that one.
  if (documentStore.get().project !== project) {
    notify("problem", laterWording.notMade, [laterWording.drawingChangedMeanwhile]);
    return false;
  }
  if (wanted && panel?.ok !== true)
    notify("problem", laterWording.noPanelDrawn, [panel?.why ?? laterWording.nobodyAnswersNow]);
  const calls = panel?.ok ? [...call.args.calls, ...typedCalls(panel.calls)] : call.args.calls;
  const done = dispatch({ ...call, args: { ...call.args, calls } });
  // The first box of a drawing is what a person goes on with, though its panel is drawn too.
  const isFirst = Object.keys(getInstallation(project, state).enclosures).length === 0;
  if (done.ok) goTo({ kind: "enclosure", id }, "details", isFirst);
  else notify("problem", laterWording.notMade, [done.refusal.message]);
  return done.ok;
}

/** The panel that a box is to get with its supply; undefined where it has none, or nobody can tell how it is drawn. */
export async function panelFor(
  state: StateName,
  { supply: cable, call: after }: { readonly supply?: CableId; readonly call: CommandCall },
): Promise<SupplyAnswer | undefined> {
  if (cable === undefined) return undefined;
  return askSupply({ state, cable, after, fresh: freshSupply(shownInstallation()) });
}

const countOf = (counted: SeenBox["cables"]): number => counted.reduce((sum, { count }) => sum + count, 0);

/** How many more of a list there may be. */
export const roomFor = (seen: SeenBox, kind: "cables" | "devices"): number =>
  (kind === "cables" ? MOST_CABLES : MOST_DEVICES) - countOf(seen[kind]);

/** The names the cables will have, in their order: the supply is one of them. */
export function cableNames(project: Project, tried: TriedBox | undefined): readonly string[] {
  if (tried === undefined) return [];
  const installation = tried.state === "proposed" ? tried.project.proposed : tried.project.asFound;
  const before = tried.state === "proposed" ? project.proposed : project.asFound;
  return Object.values(installation?.cables ?? {})
    .filter(({ id }) => !(id in (before?.cables ?? {})))
    .sort((a, b) => a.order - b.order)
    .map(({ name }) => name);
}
