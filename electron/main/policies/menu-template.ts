/** The menus as plain data, for every platform; `main/menu.ts` makes them. */
import {
  type CommandGroup,
  type WindowCommandId,
  windowCommands,
} from "../../../shared-model/commands/catalog/commands.ts";
import { type ChosenKeys, chordsOf, findKeyEntry } from "../../../shared-model/commands/catalog/keys.ts";

export type MenuEntry =
  | { readonly kind: "menu"; readonly label: string; readonly entries: readonly MenuEntry[] }
  | { readonly kind: "line" }
  /** The window acts on it. `accelerator` in Electron's words. */
  | { readonly kind: "command"; readonly id: WindowCommandId; readonly label: string; readonly accelerator?: string }
  /** The platform acts on it: text fields take part in copying, whatever has the focus. */
  | { readonly kind: "role"; readonly role: MenuRole; readonly label?: string }
  /** The main process acts on it. */
  | { readonly kind: "action"; readonly action: MenuAction; readonly label: string; readonly accelerator?: string }
  | { readonly kind: "recent"; readonly id: string; readonly label: string };

export type MenuRole =
  | "about"
  | "close"
  | "copy"
  | "cut"
  | "front"
  | "hide"
  | "hideOthers"
  | "minimize"
  | "paste"
  | "quit"
  | "resetZoom"
  | "selectAll"
  | "services"
  | "toggleDevTools"
  | "togglefullscreen"
  | "unhide"
  | "zoom"
  | "zoomIn"
  | "zoomOut";

export type MenuAction = "new-window" | "clear-recent";

export interface MenuFacts {
  readonly platform: NodeJS.Platform;
  readonly isPackaged: boolean;
  /** Newest first. */
  readonly recent: readonly { readonly id: string; readonly name: string }[];
  /** Keys that the person has chosen in the place of those of the catalogue. */
  readonly keys?: ChosenKeys;
}

type MenuName = "File" | "Edit" | "Drawing" | "View" | "Help";

/** Which menu a group of the catalogue is in. */
const MENU_OF: Readonly<Record<CommandGroup, MenuName>> = {
  file: "File",
  edit: "Edit",
  draw: "Drawing",
  conductors: "Drawing",
  facts: "Drawing",
  rooms: "Drawing",
  proposed: "Drawing",
  document: "Drawing",
  window: "View",
  help: "Help",
};

const PLATFORM_ROLES: Readonly<Partial<Record<WindowCommandId, MenuRole>>> = {
  cut: "cut",
  copy: "copy",
  paste: "paste",
};

const LINE: MenuEntry = { kind: "line" };
const role = (name: MenuRole, label?: string): MenuEntry => ({ kind: "role", role: name, ...(label && { label }) });
const menu = (label: string, entries: readonly MenuEntry[]): MenuEntry => ({ kind: "menu", label, entries });

export function menuTemplate(facts: MenuFacts): readonly MenuEntry[] {
  const isMac = facts.platform === "darwin";
  const commands = (name: MenuName) => commandsOf(name, facts.keys ?? {});
  const drawing = commands("Drawing");
  return [
    ...(isMac ? [appMenu()] : []),
    fileMenu(facts, isMac),
    menu("Edit", [...commands("Edit"), LINE, role("selectAll", "Select all")]),
    ...(drawing.length > 0 ? [menu("Drawing", drawing)] : []),
    viewMenu(commands("View"), facts.isPackaged),
    menu("Window", [role("minimize"), ...(isMac ? [role("zoom"), LINE, role("front")] : [])]),
    menu("Help", commands("Help")),
  ];
}

const appMenu = (): MenuEntry =>
  menu("Loadside", [
    role("about"),
    LINE,
    role("services"),
    LINE,
    role("hide"),
    role("hideOthers"),
    role("unhide"),
    LINE,
    role("quit"),
  ]);

function fileMenu({ recent, keys = {} }: MenuFacts, isMac: boolean): MenuEntry {
  const lines = recent.map(({ id, name }): MenuEntry => ({ kind: "recent", id, label: asLabel(name) }));
  const recentMenu =
    lines.length === 0
      ? []
      : [menu("Open recent", [...lines, LINE, { kind: "action", action: "clear-recent", label: "Clear this list" }])];
  return menu("File", [
    ...commandsOf("File", keys),
    LINE,
    { kind: "action", action: "new-window", label: "New window", accelerator: "CommandOrControl+Shift+N" },
    ...recentMenu,
    LINE,
    role("close", "Close window"),
    ...(isMac ? [] : [role("quit", "Quit")]),
  ]);
}

/** The letters themselves can be enlarged here; the sheet has a zoom of its own. */
const viewMenu = (commands: readonly MenuEntry[], isPackaged: boolean): MenuEntry =>
  menu("View", [
    ...commands,
    LINE,
    role("resetZoom", "Letters at usual size"),
    role("zoomIn", "Larger letters"),
    role("zoomOut", "Smaller letters"),
    LINE,
    role("togglefullscreen", "Full screen"),
    ...(isPackaged ? [] : [LINE, role("toggleDevTools")]),
  ]);

/** Lines between groups, and before what the platform answers. */
function commandsOf(name: MenuName, keys: ChosenKeys): readonly MenuEntry[] {
  const entries: MenuEntry[] = [];
  let last: string | undefined;
  for (const { id, title, group, byPlatform } of windowCommands) {
    if (MENU_OF[group] !== name) continue;
    const part = `${group} ${byPlatform === true}`;
    if (last !== undefined && part !== last) entries.push(LINE);
    last = part;
    const platformRole = byPlatform ? PLATFORM_ROLES[id] : undefined;
    if (platformRole !== undefined) entries.push(role(platformRole, title));
    else entries.push(commandEntry(id, title, acceleratorNow(id, keys)));
  }
  return entries;
}

const commandEntry = (id: WindowCommandId, label: string, accelerator: string | undefined): MenuEntry => ({
  kind: "command",
  id,
  label,
  ...(accelerator !== undefined && { accelerator }),
});

/** The first of the keys in force: a menu shows one. */
function acceleratorNow(id: WindowCommandId, keys: ChosenKeys): string | undefined {
  const entry = findKeyEntry(id);
  const [chord] = entry === undefined ? [] : chordsOf(entry, keys);
  return chord === undefined ? undefined : acceleratorOf(chord);
}

const KEYS =
  /^(CommandOrControl[+])?(Alt[+])?(Shift[+])?([A-Z0-9]|F[0-9]{1,2}|Plus|-|Delete|Space|Tab|Up|Down|Left|Right)$/;

/** The catalogue's keys in Electron's words; undefined where it has none, since it fails on a word that it does not know. */
export function acceleratorOf(shortcut: string): string | undefined {
  const words = shortcut
    .replace(/\bMod\b/, "CommandOrControl")
    .replace(/\bArrow(?=[A-Z])/, "")
    .replace(/[+]([+]|=)$/, "+Plus");
  return KEYS.test(words) ? words : undefined;
}

/** An ampersand marks the letter to press; a file name has none of those. */
const asLabel = (name: string): string => name.replaceAll("&", "&&");
