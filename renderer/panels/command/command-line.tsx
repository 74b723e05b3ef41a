import { useEffect, useRef } from "react";
import type { CommandLine } from "../../state/commands/entry.ts";
import { COMMAND_WORDS } from "./command-words.ts";

interface Props {
  readonly id: string;
  readonly line: CommandLine;
  readonly active: boolean;
  readonly onRun: () => void;
}

/** One line of what was found: what it is called, what it is, its keys; or why it cannot be done now. */
export function FoundLine({ id, line, active, onRun }: Props) {
  const own = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (active) own.current?.scrollIntoView({ block: "nearest" });
  }, [active]);
  const { title, note, shortcut, whyNot } = line;
  return (
    <div
      ref={own}
      id={id}
      role="option"
      tabIndex={-1}
      aria-selected={active}
      aria-disabled={whyNot !== undefined || undefined}
      className="command-line"
      // The press must not take the focus from the field before the click arrives.
      onMouseDown={(event) => event.preventDefault()}
      onClick={onRun}
      onKeyDown={() => undefined}
    >
      <span className="command-title" title={title}>
        {title}
      </span>
      <span className="command-note">{whyNot === undefined ? note : `${COMMAND_WORDS.notNow} ${whyNot}`}</span>
      {shortcut && <kbd className="key">{shortcut}</kbd>}
    </div>
  );
}
