import { Menu, type MenuItemConstructorOptions } from "electron";
import type { WindowCommandId } from "../../shared-model/commands/catalog/commands.ts";
import { type MenuAction, type MenuEntry, type MenuFacts, menuTemplate } from "./policies/menu-template.ts";

export interface MenuActs {
  command(id: WindowCommandId): void;
  action(action: MenuAction): void;
  recent(id: string): void;
}

/** Puts the menus in place of those before. */
export function showMenus(facts: MenuFacts, acts: MenuActs): void {
  const itemOf = (entry: MenuEntry): MenuItemConstructorOptions => {
    switch (entry.kind) {
      case "line":
        return { type: "separator" };
      case "menu":
        return { label: entry.label, submenu: entry.entries.map(itemOf) };
      case "role":
        return { role: entry.role, ...(entry.label !== undefined && { label: entry.label }) };
      case "command":
        return { id: entry.id, label: entry.label, ...keys(entry), click: () => acts.command(entry.id) };
      case "action":
        return { id: entry.action, label: entry.label, ...keys(entry), click: () => acts.action(entry.action) };
      case "recent":
        return { label: entry.label, click: () => acts.recent(entry.id) };
    }
  };
  /**
   * The window answers its keys itself, in every host. On a Mac what it answers never reaches the menu; elsewhere the
   * menu would run a command a second time, so it only shows the keys there.
   */
  const keys = (entry: Extract<MenuEntry, { kind: "command" | "action" }>): MenuItemConstructorOptions =>
    entry.accelerator === undefined
      ? {}
      : {
          accelerator: entry.accelerator,
          registerAccelerator: entry.kind === "action" || facts.platform === "darwin",
        };
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(facts).map(itemOf)));
}
