import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { freeGroupPlace, groupPlaceAt, hull } from "../../shared-model/geometry/free-group-place.ts";
import { roomOf } from "../../shared-model/geometry/free-place.ts";
import type { DeviceId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Point, Project } from "../../shared-model/model/project.ts";
import { type CutOut, cutOut, isFromInside } from "../../shared-model/queries/cut-out.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import type { ParseOutcome } from "../analysis/client-contract.ts";
import { FILE_LIMIT_BYTES } from "../platform/file-host.ts";
import { copyIdentities } from "./copy-identities.ts";
import { dispatch, documentStore, shownInstallation } from "./document-store.ts";
import { homeOf } from "./home-of.ts";
import { laterWording } from "./later-words.ts";
import { isItem, type Selected } from "./selection.ts";
import { goTo, notify, select, sessionStore } from "./session-store.ts";

/** What copying and pasting do; the text on the clipboard is a small drawing, as a file has it. */
export interface ClipboardActions {
  /** Text of what is selected; undefined, and a word to the person where something is, when none of it can be copied. */
  copySelection(): string | undefined;
  /** As `copySelection`, and takes away what was copied. */
  cutSelection(): string | undefined;
  /** Adds what a text holds, at a point of the sheet where one is meant; anything but parts of a drawing is answered with a word and changes nothing. */
  paste(text: string | undefined, at?: Point): Promise<void>;
  duplicateSelection(): void;
}

export interface ClipboardTools {
  parse(text: string): Promise<ParseOutcome>;
}

const NOT_PASTED = laterWording.nothingWasPasted;

export function createClipboardActions({ parse }: ClipboardTools): ClipboardActions {
  return {
    copySelection: () => copied()?.text,
    cutSelection() {
      const copy = copied();
      if (copy === undefined) return undefined;
      const { state } = documentStore.get();
      const items = sessionStore
        .get()
        .selection.filter(isItem)
        .filter(({ id }) => hasPart(copy.cut.asFound, id));
      const done = dispatch({ command: "remove-items", args: { state, items } });
      if (done.ok) return copy.text;
      notify("problem", laterWording.nothingWasCut, [done.refusal.message]);
      return undefined;
    },
    async paste(text, at) {
      const project = await read(parse, text);
      if (project === undefined) return;
      const all = Object.keys(project.asFound.enclosures).map((id) => ({ kind: "enclosure", id }));
      const parts = cutOut(project, "as-found", all);
      if (parts === undefined) {
        notify("note", NOT_PASTED, [laterWording.theDrawingOnTheClipboardHas]);
        return;
      }
      add(parts, isFromInside(project) ? selectedEnclosure() : undefined, "paste", at);
    },
    duplicateSelection() {
      const cut = selectedParts();
      if (cut === undefined) return;
      const [carrier] = Object.keys(cut.asFound.enclosures) as EnclosureId[];
      add(cut, isFromInside(cut) ? carrier : undefined, "duplicate");
    },
  };
}

interface Copied {
  readonly cut: CutOut;
  readonly text: string;
}

function copied(): Copied | undefined {
  const cut = selectedParts();
  return cut && { cut, text: textToSave(cut) };
}

function selectedParts(): CutOut | undefined {
  const { project, state } = documentStore.get();
  const { selection } = sessionStore.get();
  if (selection.length === 0) return undefined;
  const cut = cutOut(project, state, selection);
  if (cut === undefined) notify("note", laterWording.nothingWasCopied, [insteadOf(selection)]);
  return cut;
}

/** What to select so that what cannot be copied by itself comes along. */
function insteadOf(selection: readonly Selected[]): string {
  const kinds = new Set(selection.map(({ kind }) => kind));
  if (kinds.size === 1 && kinds.has("load")) return laterWording.aLoadIsCopiedWithThe;
  if (kinds.size === 1 && kinds.has("cable")) return laterWording.aCableIsCopiedWithThe;
  return laterWording.selectBoxesOrDevicesSplicesAnd;
}

function hasPart({ enclosures, cables }: Installation, id: string): boolean {
  if (id in enclosures || id in cables) return true;
  return Object.values(enclosures).some((one) => id in one.devices || id in one.splices || id in one.jumpers);
}

/** The drawing that a text holds, read where a hostile one can do no harm; says what is wrong with any other text. */
async function read(parse: ClipboardTools["parse"], text: string | undefined): Promise<Project | undefined> {
  const no = (line: string): undefined => {
    notify("note", NOT_PASTED, [line]);
    return undefined;
  };
  if (text === undefined) return no(laterWording.theClipboardCannotBeReadFrom);
  if (text.trim() === "") return no(laterWording.thereIsNoTextOnThe);
  if (text.length > FILE_LIMIT_BYTES) return no(laterWording.whatIsOnTheClipboardIs);
  if (!/^\uFEFF?\s*[{]/.test(text)) return no(laterWording.whatIsOnTheClipboardIs2);
  const outcome = await parse(text);
  if (!outcome.ok) {
    const [first] = outcome.problems;
    const where = first === undefined || first.path === "" ? "" : `${first.path}: `;
    notify("note", NOT_PASTED, [
      laterWording.whatIsOnTheClipboardCannot,
      ...(first === undefined ? [] : [`${where}${first.message}`]),
    ]);
    return undefined;
  }
  if (outcome.readOnly) return no(laterWording.itWasWrittenByANewer);
  return outcome.project;
}

/** The one enclosure that everything selected is, or is in. */
function selectedEnclosure(): EnclosureId | undefined {
  const installation = shownInstallation();
  const homes = new Set(sessionStore.get().selection.map((item) => homeOf(installation, item)));
  const [only] = homes;
  return homes.size === 1 ? only : undefined;
}

/** Adds parts as one step and selects them. */
function add(parts: CutOut, into: EnclosureId | undefined, as: "paste" | "duplicate", at?: Point): void {
  const { project, state } = documentStore.get();
  const { asFound: from, rooms, layout } = parts;
  const { ids, names } = copyIdentities(parts, project, shownInstallation(), into);
  const { enclosures, splices, cables } = layout;
  const call: TypedCall<"paste-items"> = {
    command: "paste-items",
    args: {
      state,
      from,
      rooms,
      layout: { enclosures, splices, cables },
      ids,
      names,
      at: into === undefined ? placeFor(parts, as, at) : { x: 0, y: 0 },
      ...(into !== undefined && { into }),
      as,
    },
  };
  const done = dispatch(call);
  if (!done.ok) {
    notify("problem", as === "paste" ? NOT_PASTED : laterWording.nothingWasDuplicated, [done.refusal.message]);
    return;
  }
  const boxes = inOrder(from.enclosures);
  const added =
    into === undefined
      ? boxes.map(({ id }): Selected => ({ kind: "enclosure", id: ids[id] as EnclosureId }))
      : boxes.flatMap(({ devices }) =>
          inOrder(devices).map(({ id }): Selected => ({ kind: "device", id: ids[id] as DeviceId })),
        );
  const [first = into && ({ kind: "enclosure", id: into } satisfies Selected)] = added;
  if (first === undefined) return;
  // What lands at the pointer is seen there: the view stays.
  if (at === undefined) goTo(first);
  else select(first);
  if (added.length > 1) sessionStore.merge({ selection: added });
}

/** Where the pointer is; else beside what it is a copy of, or beside everything that is drawn. */
function placeFor(parts: CutOut, as: "paste" | "duplicate", at: Point | undefined): Point {
  const { project } = documentStore.get();
  const taken = rectsOf(project, shownInstallation());
  const chosen = new Set(sessionStore.get().selection.map(({ id }) => id as string));
  const own = as === "duplicate" ? taken.filter(({ id }) => chosen.has(id)) : [];
  const near = (own.length > 0 ? own : taken).map(({ rect }) => rect);
  const group = rectsOf(parts, parts.asFound).map(({ rect }) => rect);
  if (at !== undefined)
    return groupPlaceAt(
      taken.map(({ rect }) => rect),
      group,
      at,
    );
  return freeGroupPlace(
    taken.map(({ rect }) => rect),
    group,
    near.length > 0 ? hull(near) : undefined,
  );
}

/** Drawing hundreds of boxes that nobody sees would take seconds: their room is estimated then. */
const MOST_DRAWN = 40;

function rectsOf(
  project: Project,
  installation: Installation,
): readonly { readonly id: EnclosureId; readonly rect: Rect }[] {
  const enclosures = Object.values(installation.enclosures);
  return enclosures.map(({ id, kind }) => {
    const at = project.layout.enclosures[id] ?? { x: 0, y: 0 };
    if (enclosures.length > MOST_DRAWN) return { id, rect: roomOf(kind, at) };
    const { bounds } = boxDrawing(project, installation, id);
    return { id, rect: { ...bounds, x: at.x + bounds.x, y: at.y + bounds.y } };
  });
}
