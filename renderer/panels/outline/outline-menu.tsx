import { itemActions } from "../../state/item-actions/item-actions.ts";
import { nameable } from "../../state/item-actions/nameable.ts";
import { isSame, selectable } from "../../state/item-actions/subject.ts";
import { sessionStore, toggleSelected } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { ActionMenu } from "../../ui/action-menu.tsx";
import { MenuItem, MenuLine } from "../../ui/word-menu.tsx";
import type { OutlineRow } from "./outline-rows.ts";
import { wording } from "./words.ts";

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
    <ActionMenu label={wording.actionsFor(name)} at={at} onClose={onClose}>
      {actions.map(({ title, keys, run }) => (
        <MenuItem key={title} onChoose={() => leaveAnd(run)} {...(keys !== undefined && { keys })}>
          {title}
        </MenuItem>
      ))}
      {actions.length > 0 && own !== undefined && <MenuLine />}
      {own !== undefined && (
        <>
          <MenuItem keys="Enter" onChoose={() => leaveAnd(onShow)}>
            {wording.showOnTheSheet}
          </MenuItem>
          <MenuItem keys="Space" onChoose={() => toggleSelected(own)}>
            {isSelected ? wording.takeOutOfTheSelection : wording.selectAsWell}
          </MenuItem>
        </>
      )}
      {nameable(subject, name) !== undefined && (
        <MenuItem keys="F2" onChoose={() => leaveAnd(onRename)}>
          {subject.kind === "end" ? wording.writeOnTheTagOf(name) : wording.rename(name)}
        </MenuItem>
      )}
      {own !== undefined && own.kind !== "end" && own.kind !== "entry" && (
        <MenuItem keys="Delete" onChoose={() => leaveAnd(onRemove)}>
          {wording.remove(name)}
        </MenuItem>
      )}
      {actions.length === 0 && own === undefined && <MenuItem onChoose={onClose}>{wording.nothingToDoHere}</MenuItem>}
    </ActionMenu>
  );
}
