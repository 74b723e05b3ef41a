/** The clipboard of the computer, for commands that a menu gives; keys come as events that carry it with them. */
export interface SystemClipboard {
  /** @returns False where the host does not allow it. */
  write(text: string): Promise<boolean>;
  /** Undefined where the host does not allow it. */
  read(): Promise<string | undefined>;
}

/** A host may refuse, and one that is not trusted has no clipboard at all. */
export const systemClipboard: SystemClipboard = {
  async write(text) {
    try {
      await navigator.clipboard.writeText(text);
      return true;
    } catch {
      return false;
    }
  },
  async read() {
    try {
      return await navigator.clipboard.readText();
    } catch {
      return undefined;
    }
  },
};

export interface ClipboardHandlers {
  /** Text to put on the clipboard; undefined leaves it as it is. */
  copy(): string | undefined;
  cut(): string | undefined;
  paste(text: string): void;
}

/** Answers the clipboard keys of the platform wherever no text is being edited or marked, until the returned function is called. */
export function listenForClipboard(handlers: ClipboardHandlers): () => void {
  const give = (event: ClipboardEvent, text: string | undefined): void => {
    if (text === undefined || event.clipboardData === null) return;
    event.clipboardData.setData("text/plain", text);
    event.preventDefault();
  };
  const onCopy = (event: ClipboardEvent): void => {
    if (!isAboutText(event)) give(event, handlers.copy());
  };
  const onCut = (event: ClipboardEvent): void => {
    if (!isAboutText(event)) give(event, handlers.cut());
  };
  const onPaste = (event: ClipboardEvent): void => {
    if (isInField(event) || event.clipboardData === null) return;
    event.preventDefault();
    handlers.paste(event.clipboardData.getData("text/plain"));
  };
  document.addEventListener("copy", onCopy);
  document.addEventListener("cut", onCut);
  document.addEventListener("paste", onPaste);
  return () => {
    document.removeEventListener("copy", onCopy);
    document.removeEventListener("cut", onCut);
    document.removeEventListener("paste", onPaste);
  };
}

const isAboutText = (event: ClipboardEvent): boolean =>
  isInField(event) || (getSelection()?.isCollapsed === false && getSelection()?.toString() !== "");

const NOT_TEXT: ReadonlySet<string> = new Set(["checkbox", "radio", "button", "range", "file"]);

function isInField({ target }: ClipboardEvent): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  if (target instanceof HTMLInputElement) return !NOT_TEXT.has(target.type);
  return target instanceof HTMLElement && target.isContentEditable;
}
