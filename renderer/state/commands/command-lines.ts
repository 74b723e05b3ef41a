import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import { type WindowCommandId, windowCommands } from "../../../shared-model/commands/catalog/commands.ts";
import { EDITIONS } from "../../../shared-model/model/project.ts";
import type { RecentFile } from "../../platform/file-host.ts";
import { openDialog } from "../dialog-store.ts";
import { dispatch, documentStore, hasProposed, installationOf, nextRedo, nextUndo } from "../document-store.ts";
import { editionWords } from "../edition-words.ts";
import { files } from "../files.ts";
import { SEVERITY_WORDS } from "../finding-groups.ts";
import { findingsStore } from "../findings-store.ts";
import { keysNow } from "../keys/keys.ts";
import { preferencesStore } from "../preferences-store.ts";
import { recentStore } from "../recent.ts";
import { samples } from "../samples.ts";
import { selectMoreOfSelection } from "../selecting.ts";
import type { Tool } from "../selection.ts";
import { goTo, sessionStore, showPane, takeTool } from "../session-store.ts";
import { findSubject } from "../subject-target.ts";
import { templates } from "../templates.ts";
import { runWindowCommand } from "../window-commands.ts";
import { arrangeLines } from "./arrange-lines.ts";
import { endLines } from "./end-lines.ts";
import type { CommandLine } from "./entry.ts";
import { GROUP_WORDS } from "./group-words.ts";
import { itemLines } from "./item-lines.ts";
import { partLines } from "./part-lines.ts";
import { type Shelf, shelve } from "./search.ts";
import { selectionLines } from "./selection-lines.ts";
import { spliceLines } from "./splice-lines.ts";
import { stateLines } from "./state-lines.ts";
import { verbLines } from "./verb-lines.ts";
import { VERB_SAYS } from "./verb-words.ts";
import { wording } from "./words.ts";

/** Everything that the command field offers now: commands that apply, things on the sheet, findings, stock. */
export const commandLines = (): readonly CommandLine[] => commandShelves().flatMap(({ lines }) => lines);

/**
 * The same, ready to be looked through. What is of the sheet, of the findings or of the stock is made ready once and kept
 * until that is another.
 */
export function commandShelves(): readonly Shelf<CommandLine>[] {
  const document = documentStore.get();
  const { selection } = sessionStore.get();
  const commands = [
    ...selectionLines(document, selection),
    ...spliceLines(document, selection),
    ...itemLines(selection),
    ...selectMoreOfSelection().map(({ title, run }) => command(title, run, wording.whatIsSelected)),
    ...arrangeLines().map(({ title, keys, run }) => command(title, run, wording.boxesOnTheSheet, keys)),
    ...proposedLines(),
    ...windowLines(),
    ...editionLines(),
    ...verbLines(document),
  ];
  const { rooms } = document.project;
  const installation = installationOf(document);
  const { findings } = findingsStore.get();
  const { files } = recentStore.get();
  return [
    shelve(commands),
    parts([installation, rooms], () => partLines(installation, document.project)),
    found([findings], () => findingLines()),
    drawings([files], () => drawingLines(files)),
    stock([], stockLines),
  ];
}

/** Makes a shelf and keeps it as long as what it is made of is the same. */
function keepShelf(): (of: readonly unknown[], lines: () => readonly CommandLine[]) => Shelf<CommandLine> {
  let kept: { readonly of: readonly unknown[]; readonly shelf: Shelf<CommandLine> } | undefined;
  return (of, lines) => {
    if (kept === undefined || of.some((one, at) => one !== kept?.of[at])) kept = { of, shelf: shelve(lines()) };
    return kept.shelf;
  };
}

const parts = keepShelf();
const found = keepShelf();
const drawings = keepShelf();
const stock = keepShelf();

/** What it offers only once something is typed, because there is so much of it. */
export const typedLines = (typed: string): readonly CommandLine[] =>
  endLines(installationOf(documentStore.get()), typed);

const command = (title: string, run: () => void, note = GROUP_WORDS.window, shortcut?: string): CommandLine => ({
  key: `${note} ${title}`,
  title,
  note,
  ...(shortcut !== undefined && { shortcut }),
  run,
});

function windowLines(): readonly CommandLine[] {
  const document = documentStore.get();
  const own = windowCommands.flatMap(({ id, title, group }): readonly CommandLine[] => {
    // It is what the field itself does.
    if (id === "find-anything") return [];
    const step = id === "undo" ? nextUndo(document) : id === "redo" ? nextRedo(document) : undefined;
    const line = command(
      step === undefined ? title : `${title}: ${step}`,
      () => runWindowCommand(id),
      GROUP_WORDS[group],
      keysNow(id),
    );
    const whyNot = whyNotNow(id);
    return [whyNot === undefined ? line : { ...line, whyNot }];
  });
  return [
    ...own,
    command(wording.openASample, () => openDialog({ kind: "samples" }), GROUP_WORDS.file),
    command(wording.showDetails, () => showPane("details")),
    command(wording.showFindings, () => showPane("findings")),
    command(wording.showRoomsAddARoom, () => showPane("rooms")),
    command(wording.lightPaper, () => preferencesStore.merge({ theme: "light" })),
    command(wording.darkPaper, () => preferencesStore.merge({ theme: "dark" })),
    command(wording.paperAsTheSystem, () => preferencesStore.merge({ theme: "system" })),
    command(wording.lengthsInFeetAndInches, () => preferencesStore.merge({ lengths: "feet-inches" })),
    command(wording.lengthsInMetres, () => preferencesStore.merge({ lengths: "metres" })),
    command(wording.testRecord, () => openDialog({ kind: "test-record" }), GROUP_WORDS.document),
    command(wording.localAmendmentsOfTheRules, () => openDialog({ kind: "amendments" }), GROUP_WORDS.document),
  ];
}

/** Why a command of the window cannot be given now. */
function whyNotNow(id: WindowCommandId): string | undefined {
  const document = documentStore.get();
  const isEmpty = Object.keys(installationOf(document).enclosures).length === 0;
  switch (id) {
    case "undo":
      return nextUndo(document) === undefined ? VERB_SAYS.nothingToUndo : undefined;
    case "redo":
      return nextRedo(document) === undefined ? VERB_SAYS.nothingToRedo : undefined;
    case "cut":
    case "copy":
    case "duplicate":
      return sessionStore.get().selection.length === 0 ? VERB_SAYS.selectFirst : undefined;
    case "energise":
      return isEmpty ? VERB_SAYS.nothingDrawn : undefined;
    case "show-scope":
    case "other-state":
      return hasProposed(document) ? undefined : VERB_SAYS.noProposed;
    default:
      return undefined;
  }
}

/** Drawings to open: lately used ones, samples, and common boxes to begin with. */
const drawingLines = (recent: readonly RecentFile[]): readonly CommandLine[] => [
  ...recent.map(
    ({ id, name, folder, isThere }): CommandLine => ({
      key: `recent ${id}`,
      title: name,
      note: folder ?? wording.latelyUsed,
      also: wording.openRecentDrawingFile,
      ...(!isThere && { whyNot: wording.itWasMovedOrDeletedSince }),
      run: () => void files.openRecent(id),
    }),
  ),
  ...samples.map(({ name, title, about, load }) => opens(`sample ${name}`, wording.sample2(title), about, title, load)),
  ...templates.map(({ name, title, about, load }) =>
    opens(`template ${name}`, wording.newFromACommonBox(title), about, title, load),
  ),
];

const opens = (key: string, title: string, note: string, name: string, load: () => Promise<string>): CommandLine => ({
  key,
  title,
  note,
  run: () => void files.openSample(name, load),
});

function proposedLines(): readonly CommandLine[] {
  const document = documentStore.get();
  const lines = stateLines(document, sessionStore.get().selection).map(({ title, keys, takesAll, run }) => ({
    ...command(title, run, wording.asFoundAndProposed, keys),
    ...(takesAll && { takesAll }),
  }));
  if (hasProposed(document) || document.readOnly) return lines;
  const notYet = [wording.resetAllOfProposedToAs, wording.discardProposed];
  return [
    ...lines,
    ...notYet.map((title) => ({
      ...command(title, () => undefined, wording.asFoundAndProposed),
      whyNot: VERB_SAYS.noProposed,
    })),
  ];
}

function editionLines(): readonly CommandLine[] {
  const { project } = documentStore.get();
  return EDITIONS.filter((edition) => edition !== project.edition).map((edition) =>
    command(
      wording.checkByEdition(editionWords(edition)),
      () => dispatch({ command: "set-edition", args: { edition } }),
      "document",
    ),
  );
}

function findingLines(): readonly CommandLine[] {
  return findingsStore.get().findings.map(({ key, severity, message, subjects }) => ({
    key,
    title: message,
    note: SEVERITY_WORDS[severity].toLowerCase(),
    run() {
      const document = documentStore.get();
      const target = subjects[0] && findSubject(document.project, installationOf(document), subjects[0]);
      if (target === undefined) showPane("findings");
      else goTo(target, "findings");
    },
  }));
}

function stockLines(): readonly CommandLine[] {
  const line = (tool: Tool, verb: string, title: string): CommandLine => ({
    key: `${tool.kind} ${tool.id}`,
    title: `${verb}: ${title}`,
    note: wording.thenPressTheSheet,
    run: () => takeTool(tool),
  });
  return [
    ...enclosureItems.map(({ id, title }) => line({ kind: "enclosure", id }, wording.place, title)),
    ...cableItems.map(({ id, title }) => line({ kind: "cable", id }, wording.route, title)),
    ...deviceTypes.map(({ id, title }) => line({ kind: "device", id }, wording.place, title)),
    ...loadItems.map(({ id, title }) => line({ kind: "load", id }, wording.plugIn, title)),
  ];
}
