import { itemActions } from "../../state/item-actions/item-actions.ts";
import { isSame, selectable } from "../../state/item-actions/subject.ts";
import { sessionStore, toggleSelected } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { ActionMenu } from "../../ui/action-menu.tsx";
import { MenuItem, MenuLine } from "../../ui/word-menu.tsx";
import { nameable } from "./outline-edits.ts";
import type { OutlineRow } from "./outline-rows.ts";

interface Props {
  readonly row: OutlineRow;
  readonly at: { readonly x: number; readonly y: number };
  readonly onRename: () => void;
  readonly onRemove: () => void;
  readonly onShow: () => void;
  readonly onClose: () => void;
}

/** Everything that can be done with a thing of the outline. */
export function OutlineMenu({ row, at, onRename, onRemove, onShow, onClose }: Props) {
  const selection = useStore(sessionStore, (session) => session.selection);
  const { subject, name } = row.node;
  const own = selectable(subject);
  const actions = itemActions(subject);
  const isSelected = own !== undefined && selection.some((item) => isSame(item, own));
  // The tree has the focus again before anything opens that gives it back.
  const leaveAnd = (run: () => void): void => {
    onClose();
    run();
  };
  return (
    <ActionMenu label={`Actions for ${name}`} at={at} onClose={onClose}>
      {actions.map(({ title, keys, run }) => (
        <MenuItem key={title} onChoose={() => leaveAnd(run)} {...(keys !== undefined && { keys })}>
          {title}
        </MenuItem>
      ))}
      {actions.length > 0 && own !== undefined && <MenuLine />}
      {own !== undefined && (
        <>
          <MenuItem keys="Enter" onChoose={() => leaveAnd(onShow)}>
            Show on the sheet
          </MenuItem>
          <MenuItem keys="Space" onChoose={() => toggleSelected(own)}>
            {isSelected ? "Take out of the selection" : "Select as well"}
          </MenuItem>
        </>
      )}
      {nameable(subject, name) !== undefined && (
        <MenuItem keys="F2" onChoose={() => leaveAnd(onRename)}>
          {subject.kind === "end" ? `Write on the tag of ${name}` : `Rename ${name}`}
        </MenuItem>
      )}
      {own !== undefined && own.kind !== "end" && own.kind !== "entry" && (
        <MenuItem keys="Delete" onChoose={() => leaveAnd(onRemove)}>
          Remove {name}
        </MenuItem>
      )}
      {actions.length === 0 && own === undefined && <MenuItem onChoose={onClose}>Nothing to do here</MenuItem>}
    </ActionMenu>
  );
}
