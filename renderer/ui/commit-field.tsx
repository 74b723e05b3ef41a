import { useState } from "react";

interface Props {
  readonly value: string;
  readonly invalid: boolean;
  readonly onCommit: (text: string) => void;
  readonly id?: string;
  /** Where no label element points at it. */
  readonly label?: string;
  readonly placeholder?: string;
  readonly numeric?: boolean;
  /** Several lines: Enter breaks the line instead of taking it over. */
  readonly many?: boolean;
}

/** A field that takes over what was typed on Enter or when it is left; Escape brings the old text back. */
export function CommitField({
  value,
  invalid,
  onCommit,
  id,
  label,
  placeholder,
  numeric = false,
  many = false,
}: Props) {
  const [typed, setTyped] = useState<string>();
  const commit = (): void => {
    if (typed !== undefined && typed.trim() !== value) onCommit(typed.trim());
    setTyped(undefined);
  };
  const shared = {
    id,
    className: "field small",
    "aria-label": label,
    placeholder,
    "aria-invalid": invalid,
    "data-committed": typed === undefined,
    value: typed ?? value,
    onChange: ({ target }: { readonly target: { readonly value: string } }) => setTyped(target.value),
    onBlur: commit,
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === "Enter" && !many) commit();
    if (event.key !== "Escape" || typed === undefined) return;
    setTyped(undefined);
    event.stopPropagation();
  };
  if (many) return <textarea {...shared} rows={3} onKeyDown={onKeyDown} />;
  return <input {...shared} inputMode={numeric ? "decimal" : undefined} spellCheck={!numeric} onKeyDown={onKeyDown} />;
}
