import { sameValue } from "../../lib/same-value.ts";
import type { CableId } from "../../model/ids.ts";
import type { BoxIntent } from "../../model/project.ts";
import { copyOf } from "../plain-data.ts";
import { takesNew } from "./merge.ts";

type Intent = BoxIntent | undefined;

/**
 * What a box is meant to do in proposed after an edit as found: its supply is one field, each cable meant to be protected
 * another. An intent that says nothing more goes.
 */
export function mergedIntent(was: Intent, is: Intent, theirs: Intent): Intent {
  if (sameValue(was, theirs)) return copyOf(is);
  const { supply: own, protect: ownProtect, ...others } = theirs ?? {};
  const supply = takesNew(was?.supply, is?.supply, own) ? is?.supply : own;
  const protect: Record<CableId, boolean> = { ...ownProtect };
  for (const cable of Object.keys({ ...was?.protect, ...is?.protect }) as CableId[]) {
    const wanted = is?.protect?.[cable];
    if (!takesNew(was?.protect?.[cable], wanted, ownProtect?.[cable])) continue;
    if (wanted === undefined) delete protect[cable];
    else protect[cable] = wanted;
  }
  if (supply === undefined && Object.keys(protect).length === 0) return undefined;
  const says = Object.keys(protect).length > 0 || (ownProtect !== undefined && is?.protect !== undefined);
  return { ...others, ...(supply !== undefined && { supply }), ...(says && { protect }) };
}
