import { type ReactNode, useState } from "react";

/** A part of a list under a heading that folds it; what is folded is not built. */
export function Fold({
  title,
  note,
  open: first,
  children,
}: {
  readonly title: ReactNode;
  readonly note?: ReactNode;
  readonly open: boolean;
  readonly children: () => ReactNode;
}) {
  const [open, setOpen] = useState(first);
  return (
    <section className="scope-part">
      <h3>
        <button type="button" className="scope-fold" aria-expanded={open} onClick={() => setOpen(!open)}>
          <svg className="scope-fold-sign" width="10" height="10" viewBox="0 0 10 10" aria-hidden="true">
            <path d={open ? "M1 3l4 4 4-4" : "M3 1l4 4-4 4"} />
          </svg>
          <span className="scope-fold-title">{title}</span>
          {note !== undefined && <small>{note}</small>}
        </button>
      </h3>
      {open && children()}
    </section>
  );
}
