import { modKey } from "../platform/mod-key.ts";
import { openDialog } from "../state/dialog-store.ts";
import { preferencesStore, type ThemeChoice } from "../state/preferences-store.ts";
import { showPane } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { runWindowCommand } from "../state/window-commands.ts";
import { MenuChoice, MenuGroup, MenuItem, MenuLine, WordMenu } from "../ui/word-menu.tsx";

/** What is done with the drawing as a whole. */
export function DrawingMenu() {
  return (
    <WordMenu word="Drawing">
      <MenuItem onChoose={() => runWindowCommand("new-document")}>New</MenuItem>
      <MenuItem onChoose={() => runWindowCommand("open-document")} keys={`${modKey} O`}>
        Open
      </MenuItem>
      <MenuItem onChoose={() => openDialog({ kind: "samples" })}>Samples</MenuItem>
      <MenuItem onChoose={() => runWindowCommand("start-page")}>Start page</MenuItem>
      <MenuLine />
      <MenuItem onChoose={() => runWindowCommand("add-seen-box")}>Box from what I see</MenuItem>
      <MenuItem onChoose={() => openDialog({ kind: "amendments" })}>Local amendments</MenuItem>
      <MenuLine />
      <MenuItem onChoose={() => runWindowCommand("save-document")} keys={`${modKey} S`}>
        Save
      </MenuItem>
      <MenuItem onChoose={() => runWindowCommand("save-document-as")} keys={`${modKey} Shift S`}>
        Save as
      </MenuItem>
    </WordMenu>
  );
}

const THEMES: readonly { readonly choice: ThemeChoice; readonly word: string }[] = [
  { choice: "system", word: "As the system" },
  { choice: "light", word: "Light" },
  { choice: "dark", word: "Dark" },
];

/** How the window looks, and what should be read once. */
export function WindowMenu() {
  const theme = useStore(preferencesStore, (state) => state.theme);
  return (
    <WordMenu word="Help and view">
      <MenuGroup caption="Paper">
        {THEMES.map(({ choice, word }) => (
          <MenuChoice key={choice} on={choice === theme} onChoose={() => preferencesStore.merge({ theme: choice })}>
            {word}
          </MenuChoice>
        ))}
      </MenuGroup>
      <MenuLine />
      <MenuItem onChoose={() => showPane("findings")}>Findings</MenuItem>
      <MenuItem onChoose={() => showPane("rooms")}>Rooms</MenuItem>
      <MenuLine />
      <MenuItem onChoose={() => openDialog({ kind: "keys" })}>Keys</MenuItem>
      <MenuItem onChoose={() => openDialog({ kind: "legend" })}>Signs and letters</MenuItem>
      <MenuItem onChoose={() => openDialog({ kind: "cautions" })}>General cautions</MenuItem>
    </WordMenu>
  );
}
