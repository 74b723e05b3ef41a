import { documentStore, isDirty } from "../../state/document-store.ts";
import { shownName } from "../../state/file-actions.ts";
import { files } from "../../state/files.ts";
import { nothingDrawn } from "../../state/nothing-drawn.ts";
import { closeStart } from "../../state/start.ts";
import { useStore } from "../../state/use-store.ts";
import { CommandField } from "../command/command-field.tsx";
import { Mark } from "../mark.tsx";
import { DrawingMenu, WindowMenu } from "../window-menus.tsx";
import { wording } from "./words.ts";

/** The title block of the start page: back to what is open, or something else. */
export function StartStrip() {
  const name = useStore(documentStore, shownName);
  const open = useStore(
    documentStore,
    (state) => isDirty(state) || state.fileName !== undefined || !nothingDrawn(state.project),
  );
  return (
    <header data-region className="strip">
      <title>{wording.startLoadside}</title>
      <div className="strip-mark">
        <Mark />
        <h1>{wording.loadside}</h1>
      </div>
      <div className="strip-buttons">
        {open && (
          <button type="button" className="button" onClick={closeStart}>
            {wording.backTo(name)}
          </button>
        )}
        <button type="button" className="button" onClick={files.open}>
          {wording.openADrawing}
        </button>
        <DrawingMenu />
        <WindowMenu />
      </div>
      <div className="strip-command">
        <CommandField />
      </div>
    </header>
  );
}
