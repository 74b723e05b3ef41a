import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from "react";

interface MenuProps {
  /** Word on the button that opens it. */
  readonly word: string;
  /** `MenuItem`, `MenuChoice`, `MenuCaption` and `MenuLine`. */
  readonly children: ReactNode;
}

/** A button with a menu under it: arrow keys, Home, End, first letters, Escape, as menus do everywhere. */
export function WordMenu({ word, children }: MenuProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const root = useRef<HTMLDivElement>(null);
  const menu = useRef<HTMLDivElement>(null);

  useEffect(() => {
    if (!open) return undefined;
    itemsIn(menu.current)[0]?.focus();
    const leave = ({ target }: Event): void => {
      if (target instanceof Node && root.current?.contains(target) === false) setOpen(false);
    };
    addEventListener("focusin", leave);
    addEventListener("pointerdown", leave);
    return () => {
      removeEventListener("focusin", leave);
      removeEventListener("pointerdown", leave);
    };
  }, [open]);

  const close = (): void => {
    setOpen(false);
    button.current?.focus();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Escape") close();
    else if (!moveFocus(menu.current, event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div ref={root} className="menu-root">
      <button
        ref={button}
        type="button"
        className="button"
        aria-haspopup="menu"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
        onKeyDown={(event) => {
          if (event.key !== "ArrowDown" || open) return;
          event.preventDefault();
          setOpen(true);
        }}
      >
        {word}
        <svg width="10" height="10" viewBox="0 0 14 14" aria-hidden="true">
          <path d="M2 5L7 10L12 5" fill="none" stroke="currentColor" strokeWidth="1.8" />
        </svg>
      </button>
      {open && (
        <div
          ref={menu}
          id={id}
          className="menu"
          role="menu"
          tabIndex={-1}
          aria-label={word}
          onKeyDown={onKeyDown}
          onClick={close}
        >
          {children}
        </div>
      )}
    </div>
  );
}

export const itemsIn = (menu: HTMLElement | null): readonly HTMLElement[] => [
  ...(menu?.querySelectorAll<HTMLElement>("[role^='menuitem']") ?? []),
];

/** @returns Whether the key means something in a menu. */
export function moveFocus(menu: HTMLElement | null, key: string): boolean {
  const items = itemsIn(menu);
  const now = document.activeElement instanceof HTMLElement ? items.indexOf(document.activeElement) : -1;
  const to = (index: number): boolean => {
    items[(index + items.length) % items.length]?.focus();
    return true;
  };
  if (key === "ArrowDown") return to(now + 1);
  if (key === "ArrowUp") return to(now - 1);
  if (key === "Home") return to(0);
  if (key === "End") return to(items.length - 1);
  if (key.length !== 1 || key === " ") return false;
  const after = [...items.slice(now + 1), ...items.slice(0, now + 1)];
  const hit = after.find((item) => item.textContent.toLowerCase().startsWith(key.toLowerCase()));
  hit?.focus();
  return hit !== undefined;
}

interface ItemProps {
  readonly onChoose: () => void;
  readonly children: ReactNode;
}

interface PlainItemProps extends ItemProps {
  readonly keys?: string;
  /** It stays where it is, so that a menu keeps its shape, and does nothing. */
  readonly disabled?: boolean;
}

export function MenuItem({ onChoose, children, keys, disabled = false }: PlainItemProps) {
  return (
    <button
      type="button"
      role="menuitem"
      tabIndex={-1}
      className="menu-item"
      aria-disabled={disabled || undefined}
      aria-keyshortcuts={keys?.replace("Ctrl", "Control").replace("Cmd", "Meta").replaceAll(" ", "+")}
      onClick={(event) => (disabled ? event.stopPropagation() : onChoose())}
    >
      {children}
      {keys !== undefined && (
        <span className="key" aria-hidden="true">
          {keys}
        </span>
      )}
    </button>
  );
}

/** One of several, of which one is on. */
export function MenuChoice({ on, onChoose, children }: ItemProps & { readonly on: boolean }) {
  return (
    <button type="button" role="menuitemradio" aria-checked={on} tabIndex={-1} className="menu-item" onClick={onChoose}>
      <span className={on ? "menu-dot on" : "menu-dot"} />
      {children}
    </button>
  );
}

/** Choices that belong together, under a caption. */
export function MenuGroup({ caption, children }: { readonly caption: string; readonly children: ReactNode }) {
  return (
    <fieldset className="menu-group">
      <legend className="menu-caption">{caption}</legend>
      {children}
    </fieldset>
  );
}

export const MenuLine = () => <hr className="menu-line" />;
