import { modKey } from "../../platform/mod-key.ts";
import { OTHER_STATE_KEY } from "../../state/commands/state-lines.ts";
import { closeDialog } from "../../state/dialog-store.ts";
import { ENERGISE_KEY } from "../../state/energise/energising.ts";
import { Modal } from "../../ui/modal.tsx";

type Keys = readonly (readonly [keys: string, does: string])[];

const ANYWHERE: Keys = [
  [`${modKey} K`, "every command, part and finding by typing"],
  [`${modKey} Z`, "undo"],
  [`${modKey} Shift Z, ${modKey} Y`, "redo"],
  [`${modKey} X, ${modKey} C, ${modKey} V`, "cut, copy, paste"],
  [`${modKey} D`, "duplicate"],
  [`${modKey} S`, "save"],
  [`${modKey} Shift S`, "save as"],
  [`${modKey} O`, "open"],
  ["Delete", "remove what is selected"],
  ["Escape", "put back what is in the hand; then, select nothing"],
  [OTHER_STATE_KEY, "as found or proposed, the one that is not shown"],
  [ENERGISE_KEY, "energise the drawing, or end it; Escape ends it too"],
  ["F2", "change the name of what is selected"],
  ["F6, Shift F6", "to the next region of the window, to the one before"],
];

const IN_OUTLINE: Keys = [
  ["Up, Down, Home, End", "to another row; letters find it by its name"],
  ["Right, Left", "open and go in; close and go out"],
  ["*", "open all rows beside this one"],
  ["Enter", "select it alone and show it on the sheet"],
  ["Space, Shift Up, Shift Down", "select it as well"],
  ["Shift F10", "everything that can be done with it"],
];

const ON_SHEET: Keys = [
  ["Tab", "to the next box"],
  ["Enter", "into a box; on a conductor end, pick it up or put it down"],
  ["Arrows", "to another thing in a box; with a box itself, move it"],
  ["+, -, 0, 1", "nearer, farther, full size, everything"],
  ["Shift F10", "everything that can be done with it"],
];

/** Which keys do what. */
export function KeysDialog() {
  return (
    <Modal title="Keys" onClose={closeDialog}>
      <KeyTable caption="Anywhere" keys={ANYWHERE} />
      <KeyTable caption="In the outline" keys={IN_OUTLINE} />
      <KeyTable caption="On the sheet" keys={ON_SHEET} />
    </Modal>
  );
}

function KeyTable({ caption, keys }: { readonly caption: string; readonly keys: Keys }) {
  return (
    <table className="keys">
      <caption className="keys-caption">{caption}</caption>
      <tbody>
        {keys.map(([key, does]) => (
          <tr key={key}>
            <th scope="row">
              <kbd className="key">{key}</kbd>
            </th>
            <td>{does}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
