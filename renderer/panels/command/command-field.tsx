import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { Asked, CommandLine } from "../../state/commands/entry.ts";
import { useKeys, withKeys } from "../../state/keys/keys.ts";
import { aimPick, askInField, cancelPick, pickStore } from "../../state/pick-store.ts";
import { listenForCommandKey } from "./command-key.ts";
import { FoundLine } from "./command-line.tsx";
import { COMMAND_WORDS } from "./command-words.ts";
import { fetchCommandLines } from "./fetch-lines.ts";

/** What there is to be found, and what a command that was chosen asks for. */
interface Offer {
  readonly find: (typed: string) => readonly CommandLine[];
  readonly asked?: Asked;
}

/** One field for every command, part, tag and finding: type, go up and down, Enter. What a command asks for, it asks here. */
export function CommandField() {
  const [typed, setTyped] = useState("");
  const [offer, setOffer] = useState<Offer>();
  const [at, setAt] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const before = useRef<HTMLElement | SVGElement>(null);
  /** Enter was pressed before there was anything to run. */
  const entered = useRef(false);
  const list = useId();
  const keys = useKeys("find-anything");
  const asked = offer?.asked;
  const found = useMemo(() => (offer?.asked?.lines ?? offer?.find)?.(typed) ?? [], [offer, typed]);

  useEffect(() => {
    const focus = (): void => input.current?.focus();
    return listenForCommandKey(() => {
      focus();
      // A menu that was chosen from gives the focus back to its button after that.
      queueMicrotask(focus);
    });
  }, []);

  useEffect(() => {
    if (offer === undefined || !entered.current) return;
    entered.current = false;
    run(found[at]);
  });

  const aim = found[at]?.aim;
  useEffect(() => {
    if (aim === undefined) return undefined;
    aimPick(aim);
    return () => aimPick(undefined);
  }, [aim]);

  const open = async (): Promise<void> => {
    const { offerAll } = await fetchCommandLines();
    if (document.activeElement === input.current) setOffer((now) => now ?? { find: offerAll() });
  };
  const close = (): void => {
    entered.current = false;
    setOffer(undefined);
    setTyped("");
    setAt(0);
    if (pickStore.get().inField) cancelPick();
  };
  const ask = (next: Asked): void => {
    setTyped("");
    setAt(0);
    setOffer({ find: () => [], asked: next });
    input.current?.focus();
  };
  const run = (line: CommandLine | undefined): void => {
    if (line === undefined || line.whyNot !== undefined) return;
    if (line.ask !== undefined) {
      let next: Asked | undefined;
      // What it does by itself may ask for more, as any line may.
      const choice = askInField(() => {
        next = line.ask?.();
      });
      if (choice) void askChoice();
      else if (next !== undefined) ask(next);
      else finish();
      return;
    }
    // The field gives the focus up first, so that what runs can put it where it belongs.
    if (asked === undefined) {
      leave();
      close();
    }
    if (askInField(line.run)) void askChoice();
    else finish();
  };
  const askChoice = async (): Promise<void> => {
    const { askedOf } = await fetchCommandLines();
    const { pick, inField } = pickStore.get();
    if (pick !== undefined && inField) ask(askedOf(pick));
  };
  const finish = (): void => {
    leave();
    close();
    setTimeout(focusSomething);
  };
  const leave = (): void => {
    // What ran may have put the focus somewhere: then it stays there.
    if (document.activeElement !== input.current && document.activeElement !== document.body) return;
    if (before.current?.isConnected === true) before.current.focus({ preventScroll: true });
    if (document.activeElement === input.current) input.current?.blur();
  };
  const move = (to: number): void => {
    if (found.length > 0) setAt((to + found.length) % found.length);
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.nativeEvent.isComposing) return;
    if (event.key === "ArrowDown") move(at + 1);
    else if (event.key === "ArrowUp") move(at - 1);
    else if (event.key === "Enter" && offer === undefined) entered.current = true;
    else if (event.key === "Enter") run(found[at]);
    else if (event.key === "Escape") finish();
    else if (event.key === "Backspace" && typed === "" && asked !== undefined) stepBack();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const stepBack = (): void => {
    close();
    void open();
  };
  return (
    <div className="command">
      <input
        ref={input}
        className="field"
        role="combobox"
        aria-label={asked?.title ?? COMMAND_WORDS.label}
        aria-expanded={offer !== undefined}
        aria-controls={list}
        aria-autocomplete="list"
        aria-activedescendant={found[at] === undefined ? undefined : `${list}-${at}`}
        placeholder={asked?.title ?? COMMAND_WORDS.placeholder}
        title={withKeys(asked?.title ?? COMMAND_WORDS.label, keys)}
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
      {keys !== undefined && <kbd className="key">{keys}</kbd>}
      <div className="command-found" hidden={offer === undefined}>
        {asked !== undefined && <p className="command-asked">{asked.title}</p>}
        {/* No stop of the Tab key, as a browser makes of what scrolls: it closes when the field is left. */}
        <div
          className="command-list"
          id={list}
          role="listbox"
          tabIndex={-1}
          aria-label={asked?.title ?? COMMAND_WORDS.list}
        >
          {found.map((line, place) => (
            <FoundLine
              key={line.key}
              id={`${list}-${place}`}
              line={line}
              active={place === at}
              onRun={() => run(line)}
            />
          ))}
          {offer !== undefined && found.length === 0 && (
            <div className="empty" role="option" tabIndex={-1} aria-selected="false" aria-disabled="true">
              {asked === undefined ? COMMAND_WORDS.none : COMMAND_WORDS.noneAsked}
            </div>
          )}
        </div>
      </div>
    </div>
  );
}

/** What ran may have taken away what had the focus; it then goes to the details, not to the top of the window. */
function focusSomething(): void {
  if (document.activeElement !== document.body || document.querySelector("[role='dialog']") !== null) return;
  document.querySelector<HTMLElement>(".details")?.focus({ preventScroll: true });
}
