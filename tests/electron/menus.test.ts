/** Menus of each platform as plain data. */
import { describe, expect, test } from "vitest";
import { acceleratorOf, type MenuEntry, menuTemplate } from "../../electron/main/policies/menu-template.ts";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import {
  type ChosenKeys,
  findKeyEntry,
  type KeyId,
  TEXT_CHORDS,
  whyNotChord,
  withChord,
} from "../../shared-model/commands/catalog/keys.ts";

const PLATFORMS = ["darwin", "win32", "linux"] as const;

const flat = (entries: readonly MenuEntry[]): readonly MenuEntry[] =>
  entries.flatMap((entry) => (entry.kind === "menu" ? [entry, ...flat(entry.entries)] : [entry]));

const of = (platform: NodeJS.Platform, isPackaged = true, names: readonly string[] = []) =>
  menuTemplate({ platform, isPackaged, recent: names.map((name) => ({ id: name, name })) });

/** A menu as a person reads it: one line an entry, deeper ones further in. */
const asRead = (entries: readonly MenuEntry[], inwards = ""): readonly string[] =>
  entries.flatMap((entry) => {
    if (entry.kind === "menu") return [`${inwards}${entry.label}`, ...asRead(entry.entries, `${inwards}  `)];
    if (entry.kind === "line") return [`${inwards}-`];
    const keys = "accelerator" in entry && entry.accelerator !== undefined ? ` [${entry.accelerator}]` : "";
    return [`${inwards}${entry.kind === "role" ? `(${entry.role})` : entry.label}${keys}`];
  });

const labels = (entries: readonly MenuEntry[]) => entries.map((entry) => ("label" in entry ? entry.label : entry.kind));

describe.each(PLATFORMS)("menus on %s", (platform) => {
  const entries = flat(of(platform));

  test("hold every command of the window once, with its name and keys", () => {
    for (const { id, title, shortcut, byPlatform } of windowCommands) {
      const found = entries.filter((entry) =>
        byPlatform ? entry.kind === "role" && entry.role === id : entry.kind === "command" && entry.id === id,
      );
      expect([id, found.length]).toEqual([id, 1]);
      expect(found[0]).toMatchObject({ label: title });
      if (shortcut !== undefined && !byPlatform) {
        expect(found[0]).toMatchObject({ accelerator: acceleratorOf(shortcut) });
      }
    }
  });

  test("leave copying to the platform, so that it works in text fields", () => {
    const roles = entries.flatMap((entry) => (entry.kind === "role" ? [entry.role] : []));
    expect(roles).toEqual(expect.arrayContaining(["cut", "copy", "paste", "selectAll", "quit", "close", "minimize"]));
  });

  test("give no keys twice", () => {
    const keys = entries.flatMap((entry) => ("accelerator" in entry ? [entry.accelerator] : []));
    expect(keys.length).toBeGreaterThan(4);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("have no line at either end of a menu and none after another", () => {
    for (const entry of [...of(platform), ...entries]) {
      if (entry.kind !== "menu") continue;
      const kinds = entry.entries.map(({ kind }) => kind).join(" ");
      expect(kinds).not.toMatch(/^line|line$|line line/);
    }
  });

  test("show the tools for developers only where the program is not packaged", () => {
    const hasTools = (isPackaged: boolean) =>
      flat(of(platform, isPackaged)).some((entry) => entry.kind === "role" && entry.role === "toggleDevTools");
    expect([hasTools(true), hasTools(false)]).toEqual([false, true]);
  });

  test("never load the page anew: unsaved work would go", () => {
    expect(JSON.stringify(flat(of(platform, false)))).not.toMatch(/reload/i);
  });
});

test("a Mac has its own first menu, with Quit in it; elsewhere Quit is the last line of File", () => {
  expect(labels(of("darwin"))[0]).toBe("Loadside");
  expect(labels(of("linux"))[0]).toBe("File");
  const last = (platform: NodeJS.Platform) => {
    const file = of(platform).find((entry) => entry.kind === "menu" && entry.label === "File");
    return file?.kind === "menu" ? file.entries.at(-1) : undefined;
  };
  expect(last("linux")).toMatchObject({ role: "quit" });
  expect(last("darwin")).toMatchObject({ role: "close" });
});

test("recent files are listed by name, an ampersand as an ampersand", () => {
  const recent = flat(of("linux", true, ["a & b.loadside", "c.loadside"])).filter(({ kind }) => kind === "recent");
  expect(labels(recent)).toEqual(["a && b.loadside", "c.loadside"]);
  expect(labels(flat(of("linux")))).not.toContain("Open recent");
});

/** Words of Electron's documentation of keyboard shortcuts ("Accelerators"). */
test.each([
  ["Mod+S", "CommandOrControl+S"],
  ["Mod+Shift+Z", "CommandOrControl+Shift+Z"],
  ["F2", "F2"],
  ["Delete", "Delete"],
  ["Shift+F6", "Shift+F6"],
  ["Mod+ArrowUp", "CommandOrControl+Up"],
  ["Mod+=", "CommandOrControl+Plus"],
  ["Mod++", "CommandOrControl+Plus"],
  ["Mod+-", "CommandOrControl+-"],
  ["Mod+0", "CommandOrControl+0"],
  ["Mod+Whatever", undefined],
  ["", undefined],
])("keys %j are %j", (shortcut, accelerator) => expect(acceleratorOf(shortcut)).toBe(accelerator));

/** What every platform has, written out by hand after its conventions; a Mac has its own first menu, and Quit there. */
const ELSEWHERE = `
File
  New drawing [CommandOrControl+N]
  Open… [CommandOrControl+O]
  Save [CommandOrControl+S]
  Save as… [CommandOrControl+Shift+S]
  Print and export… [CommandOrControl+P]
  Start page
  -
  New window [CommandOrControl+Shift+N]
  -
  (close)
  (quit)
Edit
  New from what I see…
  Undo [CommandOrControl+Z]
  Redo [CommandOrControl+Shift+Z]
  -
  (cut)
  (copy)
  (paste)
  -
  Duplicate [CommandOrControl+D]
  Picture for other programs
  Find anything… [CommandOrControl+K]
  -
  (selectAll)
Drawing
  Energise [F9]
  -
  The other of as found and proposed [F8]
  Show scope [Shift+F8]
View
  Overview [F7]
  Fold or show stock and outline [F4]
  Fold or show details and findings [Shift+F4]
  -
  (resetZoom)
  (zoomIn)
  (zoomOut)
  -
  (togglefullscreen)
Window
  (minimize)
Help
  Tour of the window
  Keys…
  Signs and letters…
  Rule book…
  General cautions…
`;

const MAC = `
Loadside
  (about)
  -
  (services)
  -
  (hide)
  (hideOthers)
  (unhide)
  -
  (quit)
${ELSEWHERE.trim().replace("\n  (quit)\nEdit", "\nEdit").replace("  (minimize)", "  (minimize)\n  (zoom)\n  -\n  (front)")}
`;

test.each([
  ["darwin", MAC],
  ["win32", ELSEWHERE],
  ["linux", ELSEWHERE],
] as const)("the menus on %s", (platform, menus) => {
  expect(asRead(of(platform)).join("\n")).toBe(menus.trim());
});

describe("chosen keys", () => {
  const withKeys = (platform: NodeJS.Platform, keys: ChosenKeys) =>
    flat(menuTemplate({ platform, isPackaged: true, recent: [], keys }));
  const acceleratorsOf = (entries: readonly MenuEntry[]) =>
    entries.flatMap((entry) => ("accelerator" in entry && entry.accelerator ? [entry.accelerator] : []));
  const find = (id: KeyId) => {
    const entry = findKeyEntry(id);
    if (entry === undefined) throw new Error(id);
    return entry;
  };

  test.each(PLATFORMS)("are what the menus show on %s, and none is there twice", (platform) => {
    const keys = withChord(withChord({}, find("energise"), "Mod+S"), find("start-page"), "F3");
    const entries = withKeys(platform, keys);
    const shown = (id: string) => entries.find((entry) => entry.kind === "command" && entry.id === id);
    expect(shown("energise")).toMatchObject({ accelerator: "CommandOrControl+S" });
    expect(shown("save-document")).not.toHaveProperty("accelerator");
    expect(shown("start-page")).toMatchObject({ accelerator: "F3" });
    const all = acceleratorsOf(entries);
    expect(new Set(all).size).toBe(all.length);
  });

  test.each(PLATFORMS)("none of what menus hold on %s is taken from text fields", (platform) => {
    const forText = new Set([...TEXT_CHORDS].map(acceleratorOf));
    const stolen = withKeys(platform, {}).flatMap((entry) =>
      entry.kind === "command" && entry.accelerator !== undefined && forText.has(entry.accelerator) ? [entry.id] : [],
    );
    // The window gives these two to a field that is being written in.
    expect(stolen).toEqual(["undo", "redo"]);
  });

  test("every key that can be chosen for a command is one that menus can show, or an own sign", () => {
    for (const chord of ["Mod+E", "Mod+Shift+7", "F3", "Shift+F9", "Alt+F7"]) {
      expect([chord, whyNotChord(find("energise"), chord)]).toEqual([chord, undefined]);
      expect([chord, acceleratorOf(chord)]).toEqual([chord, expect.any(String)]);
    }
  });
});
