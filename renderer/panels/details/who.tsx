import type { ReactNode } from "react";
import type { ItemRef } from "../../../shared-model/commands/command-args.ts";
import { NameField } from "../name-field.tsx";
import { RemoveButton } from "../remove-button.tsx";

interface Props {
  readonly item: ItemRef;
  readonly name: string;
  /** What it is, in a few words. */
  readonly kind: string;
  readonly children?: ReactNode;
}

/** Name of a thing, changed where it stands, with what it is; and the way to remove it. */
export function Who({ item, name, kind, children }: Props) {
  return (
    <header className="who">
      <h2 className="unseen">
        {name}, {kind}
      </h2>
      <div className="who-line">
        <NameField item={item} name={name} large />
        <span className="who-kind">{kind}</span>
        <RemoveButton items={[item]} what={name} />
      </div>
      {children}
    </header>
  );
}
