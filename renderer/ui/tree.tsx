import {
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  type Ref,
  useId,
  useImperativeHandle,
  useRef,
} from "react";
import { findTyped, indexOfRow, moveInTree, type TreeRow } from "./tree-rows.ts";
import { useCoarse } from "./use-coarse.ts";
import { useWindowing } from "./use-windowing.ts";
import { wording } from "./words.ts";

/** Height of a row in pixels, for a mouse and for fingers. */
const ROW = 30;
const ROW_COARSE = 44;
/** Letters typed closer together than this are one word, in milliseconds. */
const TYPING_MS = 700;

export interface TreeHandle {
  focus(): void;
}

/** How a row is chosen: alone, or together with what is chosen already. */
export type Choosing = "only" | "also";

export interface TreeProps<R extends TreeRow> {
  readonly label: string;
  readonly rows: readonly R[];
  /** Key of the row that keys go from. */
  readonly active: string | undefined;
  readonly isSelected: (row: R) => boolean;
  /** What is read of a row. */
  readonly nameOf: (row: R) => string;
  readonly onActive: (key: string) => void;
  readonly onOpen: (key: string, open: boolean) => void;
  /** Opens a row and all beside it. */
  readonly onOpenLike: (key: string) => void;
  readonly onChoose: (row: R, how: Choosing) => void;
  readonly onMenu: (row: R, at: { readonly x: number; readonly y: number }) => void;
  readonly onRename: (row: R) => void;
  readonly onRemove: (row: R) => void;
  /** What stands in a row, after the arrow that opens it. */
  readonly children: (row: R) => ReactNode;
  readonly ref?: Ref<TreeHandle>;
}

/**
 * A tree that keeps the focus itself and only says which row is the active one, so that the focus outlives any row; rows
 * out of sight are not rendered.
 */
export function Tree<R extends TreeRow>(props: TreeProps<R>) {
  const { label, rows, active, isSelected, nameOf, onActive, onOpen, children } = props;
  const id = useId();
  const root = useRef<HTMLDivElement>(null);
  const typed = useRef({ text: "", at: 0 });
  const at = indexOfRow(rows, active);
  const size = useCoarse() ? ROW_COARSE : ROW;
  const { first, last, page } = useWindowing(root, { count: rows.length, size, keepInView: at });
  useImperativeHandle(props.ref, () => ({ focus: () => root.current?.focus({ preventScroll: true }) }), []);

  const goTo = (index: number, key: string, also: boolean): void => {
    const row = rows[index];
    if (row === undefined) return;
    onActive(row.key);
    if (also && (key === "ArrowUp" || key === "ArrowDown") && !isSelected(row)) props.onChoose(row, "also");
  };
  const isTyping = (): boolean => typed.current.text !== "" && performance.now() - typed.current.at < TYPING_MS;
  const type = (key: string): void => {
    typed.current = { text: (isTyping() ? typed.current.text : "") + key, at: performance.now() };
    goTo(findTyped(rows, at, typed.current.text), key, false);
  };
  const onRow = (event: KeyboardEvent, row: R): boolean => {
    switch (event.key) {
      case "Enter":
        props.onChoose(row, "only");
        return true;
      case " ":
        // Within a word it is a letter, where something is called so.
        if (isTyping() && findTyped(rows, at, `${typed.current.text} `) >= 0) return false;
        props.onChoose(row, "also");
        return true;
      case "F2":
        props.onRename(row);
        return true;
      case "Delete":
      case "Backspace":
        props.onRemove(row);
        return true;
      case "ContextMenu":
        props.onMenu(row, besideRow(root.current, id, row));
        return true;
      case "F10":
        if (event.shiftKey) props.onMenu(row, besideRow(root.current, id, row));
        return event.shiftKey;
      default:
        return false;
    }
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
    const row = rows[at];
    const move = moveInTree(rows, at, event.key, page);
    if (move !== undefined) {
      typed.current = { text: "", at: 0 };
      if ("to" in move) goTo(move.to, event.key, event.shiftKey);
      else if ("openLike" in move) props.onOpenLike(move.openLike);
      else onOpen("open" in move ? move.open : move.close, "open" in move);
    } else if (row !== undefined && onRow(event, row)) {
      typed.current = { text: "", at: 0 };
    } else if (event.key.length === 1) type(event.key);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const shown = rows.slice(first, last);
  return (
    <div
      ref={root}
      className="tree"
      role="tree"
      tabIndex={0}
      aria-label={label}
      aria-multiselectable="true"
      aria-activedescendant={at >= first && at < last ? `${id}-${active}` : undefined}
      onKeyDown={onKeyDown}
    >
      <div className="tree-room" role="presentation" style={{ height: rows.length * size }}>
        {shown.map((row, place) => (
          <div
            key={row.key}
            id={`${id}-${row.key}`}
            role="treeitem"
            tabIndex={-1}
            className={row.key === active ? "tree-row active" : "tree-row"}
            data-key={row.key}
            style={{ top: (first + place) * size, paddingLeft: 4 + (row.level - 1) * 16 }}
            aria-label={nameOf(row)}
            aria-level={row.level}
            aria-posinset={row.position}
            aria-setsize={row.count}
            aria-expanded={row.open}
            aria-selected={isSelected(row)}
            onMouseDown={(event) => keepFocus(event, root.current)}
            onClick={(event) => {
              onActive(row.key);
              props.onChoose(row, event.ctrlKey || event.metaKey || event.shiftKey ? "also" : "only");
            }}
            onContextMenu={(event) => {
              event.preventDefault();
              onActive(row.key);
              props.onMenu(row, { x: event.clientX, y: event.clientY });
            }}
            onKeyDown={() => undefined}
          >
            <Twist row={row} onOpen={onOpen} onActive={onActive} />
            {children(row)}
          </div>
        ))}
      </div>
    </div>
  );
}

/** A press on a row leaves the focus with the tree; a field in a row takes it. */
function keepFocus(event: MouseEvent, root: HTMLElement | null): void {
  if (event.target instanceof HTMLInputElement) return;
  event.preventDefault();
  root?.focus({ preventScroll: true });
}

/** Under the beginning of a row, where a menu of it belongs. */
function besideRow(root: HTMLElement | null, id: string, { key }: TreeRow): { x: number; y: number } {
  const { left, bottom } = (document.getElementById(`${id}-${key}`) ?? root)?.getBoundingClientRect() ?? new DOMRect();
  return { x: left + 24, y: bottom };
}

interface TwistProps {
  readonly row: TreeRow;
  readonly onOpen: (key: string, open: boolean) => void;
  readonly onActive: (key: string) => void;
}

/** Opens and closes a row for presses; keys use the arrows. */
function Twist({ row, onOpen, onActive }: TwistProps) {
  if (row.open === undefined) return <span className="tree-twist" />;
  const { key, open, text } = row;
  return (
    <button
      type="button"
      tabIndex={-1}
      className="tree-twist"
      aria-label={`${open ? wording.close : wording.open} ${text}`}
      onClick={(event) => {
        event.stopPropagation();
        onActive(key);
        onOpen(key, !open);
      }}
    >
      <svg width="12" height="12" viewBox="0 0 14 14" aria-hidden="true">
        <path
          d={open ? "M2 4.5L7 9.5L12 4.5" : "M4.5 2L9.5 7L4.5 12"}
          fill="none"
          stroke="currentColor"
          strokeWidth="1.8"
        />
      </svg>
    </button>
  );
}
