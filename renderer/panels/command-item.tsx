import type { ReactNode } from "react";
import type { WindowCommandId } from "../../shared-model/commands/catalog/commands.ts";
import { useKeys } from "../state/keys/keys.ts";
import { runWindowCommand } from "../state/window-commands.ts";
import { MenuItem } from "../ui/word-menu.tsx";

interface Props {
  readonly id: WindowCommandId;
  readonly children: ReactNode;
  readonly disabled?: boolean;
}

/** A line of a menu that gives a command of the window, with its keys. */
export function CommandItem({ id, children, disabled = false }: Props) {
  const keys = useKeys(id);
  return (
    <MenuItem disabled={disabled} {...(keys !== undefined && { keys })} onChoose={() => runWindowCommand(id)}>
      {children}
    </MenuItem>
  );
}
