import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../../shared-model/catalog/load-items.ts";
import { windowCommands } from "../../../shared-model/commands/catalog/commands.ts";
import { EDITIONS } from "../../../shared-model/model/project.ts";
import { openDialog } from "../dialog-store.ts";
import { dispatch, documentStore, installationOf, nextRedo, nextUndo } from "../document-store.ts";
import { editionWords } from "../edition-words.ts";
import { findingsStore } from "../findings-store.ts";
import { preferencesStore } from "../preferences-store.ts";
import type { Tool } from "../selection.ts";
import { goTo, sessionStore, showPane, takeTool } from "../session-store.ts";
import { findSubject } from "../subject-target.ts";
import { runWindowCommand } from "../window-commands.ts";
import { arrangeLines } from "./arrange-lines.ts";
import { endLines } from "./end-lines.ts";
import type { CommandLine } from "./entry.ts";
import { itemLines } from "./item-lines.ts";
import { partLines } from "./part-lines.ts";
import { selectionLines } from "./selection-lines.ts";
import { spliceLines } from "./splice-lines.ts";
import { stateLines } from "./state-lines.ts";

/** Everything that the command field offers now: commands that apply, things on the sheet, findings, stock. */
export function commandLines(): readonly CommandLine[] {
  const document = documentStore.get();
  return [
    ...selectionLines(document, sessionStore.get().selection),
    ...spliceLines(document, sessionStore.get().selection),
    ...itemLines(sessionStore.get().selection),
    ...arrangeLines().map(({ title, keys, run }) => command(title, run, "boxes on the sheet", keys)),
    ...proposedLines(),
    ...windowLines(),
    ...editionLines(),
    ...partLines(installationOf(document), document.project),
    ...findingLines(),
    ...stockLines(),
  ];
}

/** What it offers only once something is typed, because there is so much of it. */
export const typedLines = (typed: string): readonly CommandLine[] =>
  endLines(installationOf(documentStore.get()), typed);

const command = (title: string, run: () => void, note = "window", shortcut?: string): CommandLine => ({
  key: `${note} ${title}`,
  title,
  note,
  group: "Commands",
  ...(shortcut !== undefined && { shortcut }),
  run,
});

function windowLines(): readonly CommandLine[] {
  const document = documentStore.get();
  const steps = { undo: nextUndo(document), redo: nextRedo(document) };
  const own = windowCommands.flatMap(({ id, title, group, shortcut }) => {
    if (id !== "undo" && id !== "redo") return [command(title, () => runWindowCommand(id), group, shortcut)];
    const step = steps[id];
    return step === undefined ? [] : [command(`${title}: ${step}`, () => runWindowCommand(id), group, shortcut)];
  });
  return [
    ...own,
    command("Open a sample", () => openDialog({ kind: "samples" }), "file"),
    command("Show details", () => showPane("details")),
    command("Show findings", () => showPane("findings")),
    command("Show rooms, add a room", () => showPane("rooms")),
    command("Light paper", () => preferencesStore.merge({ theme: "light" })),
    command("Dark paper", () => preferencesStore.merge({ theme: "dark" })),
    command("Paper as the system", () => preferencesStore.merge({ theme: "system" })),
    command("Local amendments of the rules", () => openDialog({ kind: "amendments" }), "document"),
    command("Signs and letters", () => openDialog({ kind: "legend" })),
    command("Keys", () => openDialog({ kind: "keys" })),
    command("General cautions", () => openDialog({ kind: "cautions" })),
  ];
}

function proposedLines(): readonly CommandLine[] {
  return stateLines(documentStore.get(), sessionStore.get().selection).map(({ title, keys, run }) =>
    command(title, run, "as found and proposed", keys),
  );
}

function editionLines(): readonly CommandLine[] {
  const { project } = documentStore.get();
  return EDITIONS.filter((edition) => edition !== project.edition).map((edition) =>
    command(
      `Check by edition ${editionWords(edition)}`,
      () => dispatch({ command: "set-edition", args: { edition } }),
      "document",
    ),
  );
}

function findingLines(): readonly CommandLine[] {
  return findingsStore.get().findings.map(({ key, severity, message, subjects }) => ({
    key,
    title: message,
    note: severity,
    group: "Findings",
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
    note: "then press the sheet",
    group: "Stock",
    run: () => takeTool(tool),
  });
  return [
    ...enclosureItems.map(({ id, title }) => line({ kind: "enclosure", id }, "Place", title)),
    ...cableItems.map(({ id, title }) => line({ kind: "cable", id }, "Route", title)),
    ...deviceTypes.map(({ id, title }) => line({ kind: "device", id }, "Place", title)),
    ...loadItems.map(({ id, title }) => line({ kind: "load", id }, "Plug in", title)),
  ];
}
