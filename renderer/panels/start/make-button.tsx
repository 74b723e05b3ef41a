import { laterWording } from "./later-words.ts";
import { wording } from "./words.ts";

interface Props {
  readonly words: string;
  /** It was pressed, and the checks are asked for the panel. */
  readonly making: boolean;
  readonly disabled: boolean;
  /** Id of the form it belongs to, where it stands outside. */
  readonly form?: string;
}

/** Makes the box of a form. It keeps the focus while that takes time; the form does not make it twice. */
export const MakeButton = ({ words, making, disabled, form }: Props) => (
  <button
    type="submit"
    form={form}
    className={form === undefined ? "button main start-make" : "button main"}
    disabled={disabled}
    aria-busy={making}
    aria-disabled={making || undefined}
  >
    {making ? laterWording.makingTheBox : words}
  </button>
);

/** What the box will be like; while it is made, what it waits for. */
export const MakeNote = ({ making }: { readonly making: boolean }) => (
  <span aria-live="polite" className="dim">
    {making ? laterWording.itsPanelIsAskedFor : wording.everyEndComesTaggedAndCapped}
  </span>
);
