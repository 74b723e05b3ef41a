import { useEffect, useId, useLayoutEffect, useRef, useState } from "react";
import { documentStore, shownInstallation } from "../state/document-store.ts";
import { type Nameable, nameable } from "../state/item-actions/nameable.ts";
import { nameOfSelected } from "../state/name-of-selected.ts";
import { nextToRename, offerRenaming } from "../state/rename.ts";
import type { Selected } from "../state/selection.ts";
import { select } from "../state/session-store.ts";
import { say } from "./gesture-store.ts";
import { laterWording } from "./later-words.ts";
import { bringIntoView } from "./sheet-view.ts";

interface Renaming {
  readonly item: Selected;
  readonly field: Nameable;
  /** In pixels of the sheet. */
  readonly at: { readonly x: number; readonly y: number };
  readonly serial: number;
  /** What had the focus, and gets it back. */
  readonly from: Element | null;
}

const WORDS = {
  blank: laterWording.aNameCannotBeBlankEscape,
  kept: laterWording.theNameWasNotChanged,
} as const;
const LEAST_WIDTH = 88;

/** The name of what is renamed, in a field where it stands: Enter takes it over, Escape keeps the old one, Tab goes on. */
export function RenameField() {
  const [renaming, setRenaming] = useState<Renaming>();
  const host = useRef<HTMLDivElement>(null);
  useEffect(
    () =>
      offerRenaming((item) => {
        const next = begin(item, host.current, undefined);
        if (next !== undefined) setRenaming(next);
        return next !== undefined;
      }),
    [],
  );
  const goOn = (step: 1 | -1): void => {
    if (renaming === undefined) return;
    const next = nextToRename(shownInstallation(), renaming.item, step);
    setRenaming(next && begin(next, host.current, renaming));
    if (next !== undefined) select(next);
  };
  const leave = (): void => {
    const { from } = renaming ?? {};
    setRenaming(undefined);
    if (from instanceof HTMLElement || from instanceof SVGElement) from.focus({ preventScroll: true });
  };
  return (
    <div ref={host} className="sheet-rename">
      {renaming && (
        <Field
          key={renaming.serial}
          renaming={renaming}
          onDone={leave}
          onNext={goOn}
          onLeft={() => setRenaming(undefined)}
        />
      )}
    </div>
  );
}

interface Props {
  readonly renaming: Renaming;
  /** Left by a key: the focus goes back to where it was. */
  readonly onDone: () => void;
  readonly onNext: (step: 1 | -1) => void;
  /** Left for something else. */
  readonly onLeft: () => void;
}

function Field({ renaming: { item, field, at }, onDone, onNext, onLeft }: Props) {
  const [typed, setTyped] = useState(field.value);
  const [refusal, setRefusal] = useState<string>();
  const input = useRef<HTMLInputElement>(null);
  const over = useRef(false);
  const said = useId();
  useLayoutEffect(() => {
    input.current?.focus({ preventScroll: true });
    input.current?.select();
  }, []);
  useEffect(() => {
    // The drawing goes away under the field.
    const turn = (): void => input.current?.blur();
    const sheet = document.querySelector(".sheet-flow");
    sheet?.addEventListener("wheel", turn, { passive: true });
    return () => sheet?.removeEventListener("wheel", turn);
  }, []);
  /** @returns Whether the name is as it is to be. */
  const keep = (): boolean => {
    const wanted = typed.trim();
    if (wanted === field.value) return true;
    if (wanted === "" && item.kind !== "end") {
      setRefusal(WORDS.blank);
      return false;
    }
    const done = field.rename(wanted);
    if (!done.ok) setRefusal(done.refusal.message);
    return done.ok;
  };
  const finish = (then: () => void): void => {
    over.current = true;
    then();
  };
  return (
    <div className="sheet-rename-place" style={{ left: at.x, top: at.y }}>
      <input
        ref={input}
        className="field"
        aria-label={field.label}
        aria-invalid={refusal !== undefined}
        aria-describedby={refusal === undefined ? undefined : said}
        spellCheck={false}
        autoComplete="off"
        style={{ width: Math.max(LEAST_WIDTH, typed.length * 10 + 28) }}
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
        onBlur={() => {
          if (over.current) return;
          // A name that cannot be is not kept in the way of what the person went on to.
          if (!keep()) say(WORDS.kept);
          finish(onLeft);
        }}
        onKeyDown={(event) => {
          event.stopPropagation();
          if (event.key === "Escape") finish(onDone);
          else if (event.key === "Enter" && keep()) finish(onDone);
          else if (event.key === "Tab" && keep()) finish(() => onNext(event.shiftKey ? -1 : 1));
          else if (event.key !== "Enter" && event.key !== "Tab") return;
          event.preventDefault();
        }}
      />
      {refusal !== undefined && (
        <span id={said} role="alert" className="refused">
          {refusal}
        </span>
      )}
    </div>
  );
}

let serial = 0;

/** Opens the field over the name of a thing; undefined where it is not drawn, or cannot be renamed. */
function begin(item: Selected, host: HTMLElement | null, before: Renaming | undefined): Renaming | undefined {
  const field = nameable(item, nameOfSelected(documentStore.get(), item));
  const element = drawnName(item);
  if (field === undefined || element === undefined || host === null) return undefined;
  bringIntoView(element);
  const area = element.getBoundingClientRect();
  const sheet = host.parentElement?.getBoundingClientRect();
  if (sheet === undefined) return undefined;
  serial += 1;
  const x = Math.min(Math.max(area.left - sheet.left - 10, 4), sheet.width - LEAST_WIDTH - 20);
  const y = Math.min(Math.max(area.top + area.height / 2 - sheet.top - 14, 4), sheet.height - 60);
  return { item, field, at: { x, y }, serial, from: before?.from ?? document.activeElement };
}

/** What shows the name of a thing on the sheet now. */
function drawnName(item: Selected): Element | undefined {
  const id = CSS.escape(item.id);
  const places: readonly string[] =
    item.kind === "enclosure"
      ? NAMES.map((name) => `.react-flow__node[data-id="${id}"] ${name}`)
      : item.kind === "cable"
        ? [`[data-road="${id}"] .sheet-road-words`, `[data-item^="${CSS.escape(`cable ${item.id} `)}"]`]
        : [`[data-item="${CSS.escape(`${item.kind} ${item.id}`)}"]`];
  for (const place of places) {
    const found = document.querySelector(place);
    if (found !== null && found.getBoundingClientRect().width > 0) return found;
  }
  return undefined;
}

/** Near, from middle distance, from afar; at last the box itself. */
const NAMES = [".sheet-box-name", ".sheet-middle-name", ".sheet-far-name", ".sheet-wall-outer"] as const;
