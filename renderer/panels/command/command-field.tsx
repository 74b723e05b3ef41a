import { useEffect, useId, useRef, useState } from "react";
import { modKey } from "../../platform/mod-key.ts";
import { type CommandLine, findLines } from "../../state/commands/entry.ts";
import { listenForCommandKey } from "./command-key.ts";
import { fetchCommandLines } from "./fetch-lines.ts";

/** What there is to be found: at once, and once something is typed. */
interface Offer {
  readonly lines: readonly CommandLine[];
  readonly typedLines: (typed: string) => readonly CommandLine[];
}

/** One field for every command, part, tag and finding: type, go up and down, Enter. */
export function CommandField() {
  const [typed, setTyped] = useState("");
  const [offer, setOffer] = useState<Offer>();
  const [at, setAt] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const before = useRef<HTMLElement | SVGElement>(null);
  /** Enter was pressed before there was anything to run. */
  const entered = useRef(false);
  const list = useId();
  const found = offer === undefined ? [] : findLines([...offer.lines, ...offer.typedLines(typed)], typed);

  useEffect(() => listenForCommandKey(() => input.current?.focus()), []);

  useEffect(() => {
    if (offer === undefined || !entered.current) return;
    entered.current = false;
    run(found[at]);
  });

  const open = async (): Promise<void> => {
    const { commandLines, typedLines } = await fetchCommandLines();
    if (document.activeElement === input.current) setOffer({ lines: commandLines(), typedLines });
  };
  const close = (): void => {
    entered.current = false;
    setOffer(undefined);
    setTyped("");
    setAt(0);
  };
  const run = (line: CommandLine | undefined): void => {
    if (line === undefined) return;
    // The field gives the focus up first, so that what runs can put it where it belongs.
    leave();
    close();
    line.run();
    setTimeout(focusSomething);
  };
  const leave = (): void => {
    if (before.current?.isConnected === true) before.current.focus({ preventScroll: true });
    if (document.activeElement === input.current) input.current?.blur();
  };
  const move = (to: number): void => {
    if (found.length > 0) setAt((to + found.length) % found.length);
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === "ArrowDown") move(at + 1);
    else if (event.key === "ArrowUp") move(at - 1);
    else if (event.key === "Enter" && offer === undefined) entered.current = true;
    else if (event.key === "Enter") run(found[at]);
    else if (event.key === "Escape") leave();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <div className="command">
      <input
        ref={input}
        className="field"
        role="combobox"
        aria-label="Command, part, tag or finding"
        aria-expanded={offer !== undefined}
        aria-controls={list}
        aria-autocomplete="list"
        aria-activedescendant={found[at] === undefined ? undefined : `${list}-${at}`}
        placeholder="Command, part, finding"
        autoComplete="off"
        spellCheck={false}
        value={typed}
        onFocus={({ relatedTarget }) => {
          const from = relatedTarget;
          before.current = from instanceof HTMLElement || from instanceof SVGElement ? from : null;
          // A host that is gone brings nothing; the menus still do what they can.
          open().catch(() => undefined);
        }}
        onBlur={close}
        onChange={({ target }) => {
          setTyped(target.value);
          setAt(0);
        }}
        onKeyDown={onKeyDown}
      />
      <kbd className="key">{modKey} K</kbd>
      <div className="command-list" id={list} role="listbox" aria-label="What was found" hidden={offer === undefined}>
        {found.map((line, place) => (
          <Line key={line.key} id={`${list}-${place}`} line={line} active={place === at} onRun={() => run(line)} />
        ))}
        {offer !== undefined && found.length === 0 && (
          <div className="empty" role="option" tabIndex={-1} aria-selected="false" aria-disabled="true">
            Nothing is called that. Try a part, for example B1, or a verb, for example place.
          </div>
        )}
      </div>
    </div>
  );
}

/** What ran may have taken away what had the focus; it then goes to the details, not to the top of the window. */
function focusSomething(): void {
  if (document.activeElement !== document.body || document.querySelector("[role='dialog']") !== null) return;
  document.querySelector<HTMLElement>(".details")?.focus({ preventScroll: true });
}

interface LineProps {
  readonly id: string;
  readonly line: CommandLine;
  readonly active: boolean;
  readonly onRun: () => void;
}

function Line({ id, line, active, onRun }: LineProps) {
  const own = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (active) own.current?.scrollIntoView({ block: "nearest" });
  }, [active]);
  return (
    <div
      ref={own}
      id={id}
      role="option"
      tabIndex={-1}
      aria-selected={active}
      className="command-line"
      // The press must not take the focus from the field before the click arrives.
      onMouseDown={(event) => event.preventDefault()}
      onClick={onRun}
      onKeyDown={() => undefined}
    >
      <span className="command-title">{line.title}</span>
      <span className="command-note">{line.note}</span>
      {line.shortcut && <kbd className="key">{line.shortcut.replace("Mod", modKey).replaceAll("+", " ")}</kbd>}
      <span className="command-group">{line.group}</span>
    </div>
  );
}
