import { type KeyboardEvent, type ReactNode, useEffect, useLayoutEffect, useRef } from "react";
import { itemsIn, moveFocus } from "./word-menu.tsx";

interface Props {
  readonly label: string;
  /** Where it opens, in pixels of the window. */
  readonly at: { readonly x: number; readonly y: number };
  /** Called when it is left; the caller gives the focus back. */
  readonly onClose: () => void;
  /** `MenuItem` and `MenuLine`. */
  readonly children: ReactNode;
}

/** A menu at a place of the window: arrow keys, Home, End, first letters, Escape. */
export function ActionMenu({ label, at, onClose, children }: Props) {
  const root = useRef<HTMLDivElement>(null);
  const { x, y } = at;

  useLayoutEffect(() => {
    const element = root.current;
    if (element === null) return;
    const { width, height } = element.getBoundingClientRect();
    element.style.left = `${Math.max(4, Math.min(x, innerWidth - width - 4))}px`;
    element.style.top = `${Math.max(4, Math.min(y, innerHeight - height - 4))}px`;
    itemsIn(element)[0]?.focus();
  }, [x, y]);

  useEffect(() => {
    const leave = ({ target }: Event): void => {
      if (target instanceof Node && root.current?.contains(target) === false) onClose();
    };
    addEventListener("pointerdown", leave, { capture: true });
    addEventListener("blur", onClose);
    return () => {
      removeEventListener("pointerdown", leave, { capture: true });
      removeEventListener("blur", onClose);
    };
  }, [onClose]);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Escape" || event.key === "Tab") onClose();
    else if (!moveFocus(root.current, event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div
      ref={root}
      className="menu menu-at"
      role="menu"
      tabIndex={0}
      aria-label={label}
      onKeyDown={onKeyDown}
      onClick={onClose}
    >
      {children}
    </div>
  );
}
