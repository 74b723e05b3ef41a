import type { ReactNode } from "react";

interface Props {
  readonly title: string;
  readonly note?: ReactNode;
  readonly children: ReactNode;
}

/** A ruled part of the details with its heading. */
export function Section({ title, note, children }: Props) {
  return (
    <section className="part">
      <h3>
        <span>{title}</span>
        {note !== undefined && <small>{note}</small>}
      </h3>
      {children}
    </section>
  );
}
