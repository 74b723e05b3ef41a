import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { Asked, CommandLine } from "../../state/commands/entry.ts";
import { useKeys, withKeys } from "../../state/keys/keys.ts";
import { aimPick, askInField, cancelPick, pickStore } from "../../state/pick-store.ts";
import { listenForCommandKey } from "./command-key.ts";
import { FoundLine } from "./command-line.tsx";
import { COMMAND_WORDS } from "./command-words.ts";
import { fetchCommandLines } from "./fetch-lines.ts";
import { type Ahead, moved, takeBack } from "./pressed-ahead.ts";

/** What there is to be found, and what a command that was chosen asks for. */
interface Offer {
  readonly find: (typed: string) => readonly CommandLine[];
  readonly asked?: Asked;
}

const linesOf = (offer: Offer | undefined, words: string): readonly CommandLine[] =>
  (offer?.asked?.lines ?? offer?.find)?.(words) ?? [];

/** One field for every command, part, tag and finding: type, go up and down, Enter. What a command asks for, it asks here. */
export function CommandField() {
  const [typed, setTyped] = useState("");
  const [offer, setOffer] = useState<Offer>();
  const [at, setAt] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const before = useRef<HTMLElement | SVGElement>(null);
  /** From an Enter that waits for its answer, in order; undefined where keys act at once. */
  const ahead = useRef<Ahead[]>(undefined);
  const list = useId();
  const keys = useKeys("find-anything");
  const asked = offer?.asked;
  const found = useMemo(() => linesOf(offer, typed), [offer, typed]);

  useEffect(() => {
    const focus = (): void => input.current?.focus();
    return listenForCommandKey(() => {
      focus();
      // A menu that was chosen from gives the focus back to its button after that.
      queueMicrotask(focus);
    });
  }, []);

  useEffect(() => {
    // What is typed now can be seen in the field while it waits.
    if (ahead.current?.length === 0) ahead.current = undefined;
    if (offer !== undefined && ahead.current !== undefined) catchUp(ahead.current);
  });

  const aim = found[at]?.aim;
  useEffect(() => {
    if (aim === undefined) return undefined;
    aimPick(aim);
    return () => aimPick(undefined);
  }, [aim]);

  const open = async (): Promise<void> => {
    const { offerAll, askedOf } = await fetchCommandLines();
    if (document.activeElement !== input.current) return;
    const { pick, inField } = pickStore.get();
    const made = pick !== undefined && inField ? { find: () => [], asked: askedOf(pick) } : { find: offerAll() };
    setOffer((now) => now ?? made);
  };
  const close = (): void => {
    ahead.current = undefined;
    setOffer(undefined);
    setTyped("");
    setAt(0);
    if (pickStore.get().inField) cancelPick();
  };
  /** To the next question; without one, to the choice that a command waits for. What was pressed meanwhile is meant for it. */
  const goOn = (pressed: Ahead[], next?: Asked): void => {
    ahead.current = pressed;
    setTyped("");
    setAt(0);
    setOffer(next && { find: () => [], asked: next });
    if (document.activeElement !== input.current) input.current?.focus();
    else if (next === undefined) void open();
  };
  /** @returns Whether there was anything to run. */
  const run = (line: CommandLine | undefined): boolean => {
    if (line === undefined || line.whyNot !== undefined) return false;
    const pressed = ahead.current ?? [];
    let next: Asked | undefined;
    // The field gives the focus up first, so that what runs can put it where it belongs.
    if (line.ask === undefined && asked === undefined) {
      leave();
      close();
    }
    // What a line does by itself may ask for more, as any line may.
    const choice = askInField(() => {
      if (line.ask === undefined) line.run();
      else next = line.ask();
    });
    if (choice) goOn(pressed);
    else if (next !== undefined) goOn(pressed, next);
    else finish();
    return true;
  };
  /** Does with what is there now what was pressed before it was. */
  const catchUp = (pressed: Ahead[]): void => {
    let words = typed;
    let place = at;
    for (let next = pressed.shift(); next !== undefined; next = pressed.shift()) {
      if ("text" in next) [words, place] = [words + next.text, 0];
      else if (next.key !== "Enter") place = moved(place, next.key, linesOf(offer, words).length);
      else if (run(linesOf(offer, words)[place])) return;
    }
    ahead.current = undefined;
    setTyped(words);
    setAt(place);
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
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.nativeEvent.isComposing) return;
    const { key } = event;
    const acts = key === "Enter" || key === "ArrowDown" || key === "ArrowUp";
    if (acts && (ahead.current !== undefined || offer === undefined))
      ahead.current = [...(ahead.current ?? []), { key }];
    else if (key === "Enter") run(found[at]);
    else if (acts) setAt(moved(at, key, found.length));
    else if (key === "Escape") finish();
    else if (key === "Backspace" && ahead.current !== undefined) takeBack(ahead.current);
    else if (key === "Backspace" && typed === "" && asked !== undefined) stepBack();
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
          if (ahead.current === undefined) {
            setTyped(target.value);
            setAt(0);
          } else ahead.current.push({ text: target.value.slice(typed.length) });
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
