import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { FreshSupply, SupplyAnswer, SupplyAsk } from "../../shared-model/answers/supply.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Cable } from "../../shared-model/model/cable.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { DeviceId, EnclosureId, EntryId } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { askSupply } from "./ask-supply.ts";
import { dispatch, documentStore, shownInstallation } from "./document-store.ts";
import { laterWording } from "./later-words.ts";
import { mintId } from "./mint-id.ts";
import { deviceNames, nextDeviceName, nextEnclosureName } from "./naming.ts";
import { lineFor, openPick, type PickLine } from "./pick-store.ts";
import { goTo, notify } from "./session-store.ts";

/** Ids and names for a panel, its bars and its breakers. */
export function freshSupply(installation: Installation): FreshSupply {
  const taken = [...deviceNames(installation)].map((name) => name.replace(/\?$/, ""));
  const first = nextDeviceName(installation, "breaker-1", taken);
  // Wherever its name stands, it says that nobody has read it.
  const breaker = (name: string) => ({ id: mintId<DeviceId>("d"), name: laterWording.breakerNotRead(name) });
  return {
    panel: { id: mintId<EnclosureId>("b"), name: nextEnclosureName(installation, "panel") },
    bars: { neutral: mintId<DeviceId>("d"), ground: mintId<DeviceId>("d") },
    entry: mintId<EntryId>("e"),
    breakers: [breaker(first), breaker(nextDeviceName(installation, "breaker-1", [...taken, first]))],
  };
}

/** Whether a side of a cable leads out of the drawing, so that a panel could be drawn there. */
export const leadsOut = ({ sides }: Cable): boolean => "outside" in sides.a || "outside" in sides.b;

/** The calls are data from the worker: the commands look at their form. */
export const typedCalls = (calls: readonly CommandCall[]): readonly TypedCall[] => calls as readonly TypedCall[];

/** Asks which panel a cable comes from, a new one or one that is there, and with which breaker; then draws it, in one step. */
export async function drawPanelOf(cable: Cable): Promise<void> {
  const installation = shownInstallation();
  const { state } = documentStore.get();
  const ask = async (more: Partial<SupplyAsk> = {}): Promise<Drawn> => {
    const fresh = freshSupply(installation);
    const answer = await askSupply({ state, cable: cable.id, fresh, ...more });
    return { answer, panel: more.panel ?? fresh.panel.id };
  };
  const first = await ask();
  if (first.answer?.ok !== true)
    return notify("problem", laterWording.noPanelDrawn, [first.answer?.why ?? laterWording.nobodyAnswersNow]);
  const { smaller } = first.answer;
  const panels = inOrder<Enclosure>(installation.enclosures).filter(({ kind }) => kind === "panel");
  const [there, lower] = await Promise.all([
    Promise.all(panels.map(({ id: panel }) => ask({ panel }))),
    Promise.all(smaller.map((ratingA) => ask({ ratingA }))),
  ]);
  const lines = [
    ...there.flatMap((drawn) => lineOf(laterWording.intoPanel, drawn, laterWording.bySizeOfTheCable)),
    ...lineOf(laterWording.aNewPanel, first, laterWording.bySizeOfTheCable),
    ...lower.flatMap((drawn) => lineOf(laterWording.aNewPanel, drawn)),
  ];
  openPick({
    title: laterWording.drawThePanelOf(cable.name),
    hint: laterWording.breakerNotReadItIsAssumed,
    lines: () => lines,
  });
}

interface Drawn {
  readonly answer: SupplyAnswer | undefined;
  readonly panel: EnclosureId;
}

/** A line that draws it and shows the panel; none where it cannot be drawn so. */
function lineOf(title: typeof laterWording.aNewPanel, { answer, panel }: Drawn, note?: string): readonly PickLine[] {
  if (answer?.ok !== true) return [];
  const call = { command: "run-together", args: { title: answer.title, calls: typedCalls(answer.calls) } } as const;
  const line = lineFor(title(answer.panel, answer.ratingA), call, note);
  const run = (): void => {
    const done = dispatch(call);
    if (done.ok) goTo({ kind: "enclosure", id: panel }, "details");
    else notify("problem", laterWording.noPanelDrawn, [done.refusal.message]);
  };
  return [{ ...line, run }];
}
