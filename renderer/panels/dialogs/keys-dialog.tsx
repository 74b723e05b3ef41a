import { modKey } from "../../platform/mod-key.ts";
import { OTHER_STATE_KEY } from "../../state/commands/state-lines.ts";
import { closeDialog } from "../../state/dialog-store.ts";
import { Modal } from "../../ui/modal.tsx";

const KEYS: readonly (readonly [keys: string, does: string])[] = [
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
  ["F6", "to the next region of the window"],
];

/** Keys that work anywhere in the window. */
export function KeysDialog() {
  return (
    <Modal title="Keys" onClose={closeDialog}>
      <table className="keys">
        <tbody>
          {KEYS.map(([keys, does]) => (
            <tr key={keys}>
              <th scope="row">
                <kbd className="key">{keys}</kbd>
              </th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Modal>
  );
}
