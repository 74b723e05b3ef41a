/** The clipboard of the computer, for commands that a menu gives; keys come as events that carry it with them. */
export interface SystemClipboard {
  /** @returns False where the host does not allow it. */
  write(text: string): Promise<boolean>;
  /** Undefined where the host does not allow it. */
  read(): Promise<string | undefined>;
}

/** A picture with words, for programs that take either. */
export interface ClipPicture {
  readonly png: Blob;
  readonly svg: string;
  readonly text: string;
}

/** Puts a picture on the clipboard; as lines too, where the host takes those. @returns False where it allows none. */
export async function writePicture(picture: Promise<ClipPicture>): Promise<boolean> {
  // The host waits for what is drawn, so that the press that asked for it still counts.
  const part = (type: string, of: (made: ClipPicture) => Blob | string): Record<string, Promise<Blob>> => ({
    [type]: picture.then((made) => new Blob([of(made)], { type })),
  });
  try {
    const takesLines = ClipboardItem.supports?.("image/svg+xml") === true;
    const item = new ClipboardItem({
      ...part("image/png", ({ png }) => png),
      ...part("text/plain", ({ text }) => text),
      ...(takesLines && part("image/svg+xml", ({ svg }) => svg)),
    });
    await navigator.clipboard.write([item]);
    return true;
  } catch {
    return false;
  }
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
  pastePictures(pictures: readonly File[]): void;
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
    const text = event.clipboardData.getData("text/plain");
    // A page that is copied from brings both: what it says is not what was meant, unless there is no picture.
    const pictures = [...event.clipboardData.files].filter(({ type }) => type.startsWith("image/"));
    if (pictures.length > 0 && text === "") handlers.pastePictures(pictures);
    else handlers.paste(text);
  };
  // Where the middle button pastes what is marked, it does so in fields only: elsewhere it moves the view.
  let pressedInField = false;
  const onPress = (event: MouseEvent): void => {
    pressedInField = isInField(event);
  };
  const onRelease = (event: MouseEvent): void => {
    if (event.button === MIDDLE && !(pressedInField && isInField(event))) event.preventDefault();
  };
  // Before whatever takes the events of a press for itself.
  window.addEventListener("mousedown", onPress, true);
  window.addEventListener("mouseup", onRelease, true);
  document.addEventListener("copy", onCopy);
  document.addEventListener("cut", onCut);
  document.addEventListener("paste", onPaste);
  return () => {
    window.removeEventListener("mousedown", onPress, true);
    window.removeEventListener("mouseup", onRelease, true);
    document.removeEventListener("copy", onCopy);
    document.removeEventListener("cut", onCut);
    document.removeEventListener("paste", onPaste);
  };
}

const isAboutText = (event: ClipboardEvent): boolean =>
  isInField(event) || (getSelection()?.isCollapsed === false && getSelection()?.toString() !== "");

const NOT_TEXT: ReadonlySet<string> = new Set(["checkbox", "radio", "button", "range", "file"]);

const MIDDLE = 1;

function isInField({ target }: Event): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  if (target instanceof HTMLInputElement) return !NOT_TEXT.has(target.type);
  return target instanceof HTMLElement && target.isContentEditable;
}
