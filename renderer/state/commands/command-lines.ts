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
import { arrangeLines } from "../menu-lines/arrange-lines.ts";
import { stateLines } from "../menu-lines/state-lines.ts";
import { wording as menuWording } from "../menu-lines/words.ts";
import { preferencesStore } from "../preferences-store.ts";
import { recentStore } from "../recent.ts";
import { samples } from "../samples.ts";
import { selectMoreOfSelection } from "../selecting.ts";
import { goTo, sessionStore, showPane } from "../session-store.ts";
import { findSubject } from "../subject-target.ts";
import { templates } from "../templates.ts";
import { runWindowCommand } from "../window-commands.ts";
import { endLines } from "./end-lines.ts";
import type { CommandLine } from "./entry.ts";
import { GROUP_WORDS } from "./group-words.ts";
import { handLines } from "./hand-lines.ts";
import { itemLines } from "./item-lines.ts";
import { laterWording } from "./later-words.ts";
import { partLines } from "./part-lines.ts";
import { type Shelf, shelve } from "./search.ts";
import { selectionLines } from "./selection-lines.ts";
import { spliceLines } from "./splice-lines.ts";
import { stockLines } from "./stock-lines.ts";
import { verbLines } from "./verb-lines.ts";
import { VERB_SAYS } from "./verb-words.ts";

/** Everything that the command field offers now: commands that apply, things on the sheet, findings, stock. */
export const commandLines = (): readonly CommandLine[] => commandShelves().flatMap(({ lines }) => lines);

/**
 * The same, ready to be looked through. What is of the sheet, of the findings or of the stock is made ready once and kept
 * until that is another.
 */
export function commandShelves(): readonly Shelf<CommandLine>[] {
  const document = documentStore.get();
  const { selection } = sessionStore.get();
  const ofItem = itemLines(selection);
  const said = new Set(ofItem.map(({ title }) => title));
  const arranging = arrangeLines().filter(({ title }) => !said.has(title));
  const commands = [
    ...handLines(),
    ...spliceLines(document, selection),
    ...ofItem,
    // What takes something away comes after what adds to it.
    ...selectionLines(document, selection),
    ...selectMoreOfSelection().map(({ title, run }) => command(title, run, laterWording.whatIsSelected)),
    ...arranging.map(({ title, keys, run }) => command(title, run, laterWording.boxesOnTheSheet, keys)),
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

/** What else commands of the window are looked for by. */
const ALSO: Partial<Record<WindowCommandId, string>> = {
  "new-document": laterWording.emptyBlank,
  "add-seen-box": laterWording.describeBox,
};

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
    const also = ALSO[id];
    return [{ ...line, ...(also !== undefined && { also }), ...(whyNot !== undefined && { whyNot }) }];
  });
  return [
    ...own,
    command(laterWording.openASample, () => openDialog({ kind: "samples" }), GROUP_WORDS.file),
    command(laterWording.showDetails, () => showPane("details")),
    command(laterWording.showFindings, () => showPane("findings")),
    command(laterWording.showRoomsAddARoom, () => showPane("rooms")),
    command(laterWording.lightPaper, () => preferencesStore.merge({ theme: "light" })),
    command(laterWording.darkPaper, () => preferencesStore.merge({ theme: "dark" })),
    command(laterWording.paperAsTheSystem, () => preferencesStore.merge({ theme: "system" })),
    command(laterWording.lengthsInFeetAndInches, () => preferencesStore.merge({ lengths: "feet-inches" })),
    command(laterWording.lengthsInMetres, () => preferencesStore.merge({ lengths: "metres" })),
    command(laterWording.testRecord, () => openDialog({ kind: "test-record" }), GROUP_WORDS.document),
    command(laterWording.localAmendmentsOfTheRules, () => openDialog({ kind: "amendments" }), GROUP_WORDS.document),
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
      note: folder ?? laterWording.latelyUsed,
      also: laterWording.openRecentDrawingFile,
      ...(!isThere && { whyNot: laterWording.itWasMovedOrDeletedSince }),
      run: () => void files.openRecent(id),
    }),
  ),
  ...samples.map(({ name, title, about, load }) =>
    opens(`sample ${name}`, laterWording.sample2(title), about, title, load),
  ),
  ...templates.map(({ name, title, about, load }) =>
    opens(`template ${name}`, laterWording.newFromACommonBox(title), about, title, load),
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
    ...command(title, run, laterWording.asFoundAndProposed, keys),
    ...(takesAll && { takesAll }),
  }));
  if (hasProposed(document) || document.readOnly) return lines;
  const notYet = [menuWording.resetAllOfProposedToAs, menuWording.discardProposed];
  return [
    ...lines,
    ...notYet.map((title) => ({
      ...command(title, () => undefined, laterWording.asFoundAndProposed),
      whyNot: VERB_SAYS.noProposed,
    })),
  ];
}

function editionLines(): readonly CommandLine[] {
  const { project } = documentStore.get();
  return EDITIONS.filter((edition) => edition !== project.edition).map((edition) =>
    command(
      laterWording.checkByEdition(editionWords(edition)),
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
      showPane("findings");
      if (target !== undefined) goTo(target);
    },
  }));
}
