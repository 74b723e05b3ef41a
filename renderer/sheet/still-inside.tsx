import { BoxInside, type Inside } from "./box-inside.tsx";
import { readDifference } from "./difference.ts";

const SAME = readDifference("");

/** What is in a box, in a picture: nothing in it is selected, lifted, growing or different from the other state. */
export function StillInside({
  drawing,
  roles,
  protects = "",
  cables,
}: Pick<Inside, "drawing"> & Partial<Pick<Inside, "roles" | "protects" | "cables">>) {
  return (
    <BoxInside
      drawing={drawing}
      chosen=""
      lifted={undefined}
      growing={false}
      difference={SAME}
      roles={roles}
      protects={protects}
      {...(cables !== undefined && { cables })}
    />
  );
}
