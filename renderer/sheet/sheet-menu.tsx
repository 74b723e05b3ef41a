import { type KeyboardEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { useStore } from "../state/use-store.ts";
import { itemsIn, MenuItem, MenuLine, moveFocus } from "../ui/word-menu.tsx";
import type { Action } from "./action.ts";
import { actionsFor } from "./actions.ts";
import { closeMenu, gestureStore, type OpenMenu } from "./gesture-store.ts";
import { laterWording } from "./later-words.ts";

/** Menu of the thing that was pressed with the other button, or with the menu key. */
export function SheetMenu() {
  const menu = useStore(gestureStore, (gesture) => gesture.menu);
  return menu === undefined ? null : <Actions key={`${menu.x} ${menu.y}`} menu={menu} />;
}

type List = Extract<Action, { kind: "list" }>;

function Actions({ menu }: { readonly menu: OpenMenu }) {
  const all = useMemo(() => actionsFor(menu.subject), [menu]);
  const [list, setList] = useState<List>();
  const root = useRef<HTMLDivElement>(null);

  useLayoutEffect(() => {
    placeInside(root.current, menu);
    itemsIn(root.current)[0]?.focus();
    void list;
  }, [menu, list]);
  useEffect(() => {
    const leave = ({ target }: Event): void => {
      if (target instanceof Node && root.current?.contains(target) === false) closeMenu();
    };
    window.addEventListener("pointerdown", leave, { capture: true });
    window.addEventListener("blur", closeMenu);
    return () => {
      window.removeEventListener("pointerdown", leave, { capture: true });
      window.removeEventListener("blur", closeMenu);
    };
  }, []);

  const close = (): void => {
    closeMenu();
    if (menu.from instanceof HTMLElement || menu.from instanceof SVGElement) menu.from.focus();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if ((event.key === "Escape" || event.key === "ArrowLeft") && list !== undefined) setList(undefined);
    else if (event.key === "Escape" || event.key === "Tab") close();
    else if (event.key === "ArrowRight") (document.activeElement as HTMLElement | null)?.click();
    else if (!moveFocus(root.current, event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  };
  if (all.length === 0) return null;
  return (
    <div
      ref={root}
      className="menu sheet-menu"
      role="menu"
      tabIndex={0}
      aria-label={list?.words ?? laterWording.actions}
      onKeyDown={onKeyDown}
    >
      {list !== undefined && (
        <MenuItem key="back" onChoose={() => setList(undefined)}>
          <Arrow back />
          {list.words}
        </MenuItem>
      )}
      {list !== undefined && <MenuLine />}
      {(list?.actions ?? all).map((action, i, lines) => (
        <Line key={keyOf(action, lines[i - 1])} action={action} open={setList} close={close} />
      ))}
    </div>
  );
}

/** A parting line is told apart by what stands before it. */
const keyOf = (action: Action, before: Action | undefined): string =>
  action.kind === "line" ? `after ${before?.kind === "line" ? "" : before?.words}` : action.words;

function Line({
  action,
  open,
  close,
}: {
  readonly action: Action;
  readonly open: (list: List) => void;
  readonly close: () => void;
}) {
  if (action.kind === "line") return <MenuLine />;
  if (action.kind === "list") {
    return (
      <MenuItem onChoose={() => open(action)}>
        {action.words}
        <Arrow />
      </MenuItem>
    );
  }
  const run = (): void => {
    close();
    action.run();
  };
  return (
    <MenuItem onChoose={run} {...(action.keys !== undefined && { keys: action.keys })}>
      {action.words}
    </MenuItem>
  );
}

const Arrow = ({ back = false }: { readonly back?: boolean }) => (
  <svg className={back ? undefined : "sheet-menu-more"} width="10" height="10" viewBox="0 0 14 14" aria-hidden="true">
    <path d={back ? "M9 2L4 7L9 12" : "M5 2L10 7L5 12"} fill="none" stroke="currentColor" strokeWidth="1.8" />
  </svg>
);

/** Beside the pointer, moved so that all of it is in the window. */
function placeInside(element: HTMLElement | null, { x, y }: OpenMenu): void {
  if (element === null) return;
  const { width, height } = element.getBoundingClientRect();
  element.style.left = `${Math.max(4, Math.min(x, window.innerWidth - width - 4))}px`;
  element.style.top = `${Math.max(4, Math.min(y, window.innerHeight - height - 4))}px`;
}
