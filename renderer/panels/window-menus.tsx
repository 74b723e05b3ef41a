import type { LengthSystem } from "../../shared-model/units/length-words.ts";
import { openDialog } from "../state/dialog-store.ts";
import { isFolded } from "../state/folding.ts";
import { preferencesStore, type ThemeChoice } from "../state/preferences-store.ts";
import { showPane } from "../state/session-store.ts";
import { mapCircuits } from "../state/survey/survey-store.ts";
import { useStore } from "../state/use-store.ts";
import { MenuChoice, MenuGroup, MenuItem, MenuLine, WordMenu } from "../ui/word-menu.tsx";
import { CommandItem } from "./command-item.tsx";
import { wording } from "./words.ts";

/** What is done with the drawing as a whole. */
export function DrawingMenu() {
  return (
    <WordMenu word={wording.drawing}>
      <CommandItem id="new-document">{wording.newWord}</CommandItem>
      <CommandItem id="open-document">{wording.open}</CommandItem>
      <MenuItem onChoose={() => openDialog({ kind: "samples" })}>{wording.samples}</MenuItem>
      <CommandItem id="start-page">{wording.startPage}</CommandItem>
      <MenuLine />
      <CommandItem id="add-seen-box">{wording.newFromWhatISee}</CommandItem>
      <MenuItem onChoose={() => openDialog({ kind: "amendments" })}>{wording.localAmendments}</MenuItem>
      <MenuItem onChoose={mapCircuits}>{wording.mapTheCircuits}</MenuItem>
      <MenuItem onChoose={() => openDialog({ kind: "test-record" })}>{wording.testRecord}</MenuItem>
      <CommandItem id="show-rules">{wording.ruleBook}</CommandItem>
      <MenuLine />
      <CommandItem id="save-document">{wording.save}</CommandItem>
      <CommandItem id="save-document-as">{wording.saveAs}</CommandItem>
      <CommandItem id="print-export">{wording.printAndExport}</CommandItem>
    </WordMenu>
  );
}

const THEMES: readonly { readonly choice: ThemeChoice; readonly word: string }[] = [
  { choice: "system", word: wording.asTheSystem },
  { choice: "light", word: wording.light },
  { choice: "dark", word: wording.dark },
];

const LENGTHS: readonly { readonly choice: LengthSystem; readonly word: string }[] = [
  { choice: "feet-inches", word: wording.feetAndInches },
  { choice: "metres", word: wording.metres },
];

/** How the window looks, and what should be read once. */
export function WindowMenu() {
  const theme = useStore(preferencesStore, (state) => state.theme);
  const lengths = useStore(preferencesStore, (state) => state.lengths);
  const left = useStore(preferencesStore, isFolded.left);
  const right = useStore(preferencesStore, isFolded.right);
  return (
    <WordMenu word={wording.helpAndView}>
      <MenuGroup caption={wording.paper}>
        {THEMES.map(({ choice, word }) => (
          <MenuChoice key={choice} on={choice === theme} onChoose={() => preferencesStore.merge({ theme: choice })}>
            {word}
          </MenuChoice>
        ))}
      </MenuGroup>
      <MenuGroup caption={wording.lengths}>
        {LENGTHS.map(({ choice, word }) => (
          <MenuChoice key={choice} on={choice === lengths} onChoose={() => preferencesStore.merge({ lengths: choice })}>
            {word}
          </MenuChoice>
        ))}
      </MenuGroup>
      <MenuLine />
      <MenuItem onChoose={() => showPane("findings")}>{wording.findings2}</MenuItem>
      <MenuItem onChoose={() => showPane("rooms")}>{wording.rooms}</MenuItem>
      <CommandItem id="overview">{wording.overview}</CommandItem>
      <CommandItem id="fold-left">{left ? wording["show-left"] : wording["fold-left"]}</CommandItem>
      <CommandItem id="fold-right">{right ? wording["show-right"] : wording["fold-right"]}</CommandItem>
      <MenuLine />
      <CommandItem id="take-tour">{wording.tourOfTheWindow}</CommandItem>
      <CommandItem id="show-keys">{wording.keys}</CommandItem>
      <CommandItem id="show-signs">{wording.signsAndLetters}</CommandItem>
      <CommandItem id="show-cautions">{wording.generalCautions}</CommandItem>
    </WordMenu>
  );
}
