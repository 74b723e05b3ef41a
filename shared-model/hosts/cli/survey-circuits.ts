import type { CircuitMap, CircuitOrder } from "../../answers/survey.ts";
import { onOneLine } from "../../format/json-path.ts";
import { table } from "./table.ts";

/** The map of circuits as a person reads it: what was seen dead, seen live, and what nobody looked at. */
export function circuitsAsText(title: string, map: CircuitMap, order: CircuitOrder): string {
  const names = (list: readonly { readonly name: string }[]): string =>
    list.length === 0 ? "-" : list.map(({ name }) => name).join(", ");
  const nameOf = new Map(map.outlets.map(({ outlet, name }) => [outlet, name]));
  const known = map.outlets.filter(({ breakers }) => breakers.length > 0).length;
  const lines = [
    `${title}: ${known} of ${map.outlets.length} outlets known`,
    ...table([
      ["outlet", "went dead with", "stayed live with", "not looked at with", "drawn on", ""],
      ...map.outlets.map(({ name, breakers, live, notLookedAt, drawn, differs }) =>
        [name, names(breakers), names(live), names(notLookedAt), names(drawn), differs ? "other than drawn" : ""].map(
          onOneLine,
        ),
      ),
    ]),
    ...map.remarks,
    ...map.directory.map(({ name, was, words, notLookedAt }) => {
      const lacking = notLookedAt === 0 ? "" : ` (${notLookedAt} not looked at)`;
      return `Directory, ${name}: ${words}${lacking}; it says ${was === "" ? "nothing" : was} now`;
    }),
    ...(map.notObserved.length > 0 ? [`Not off yet: ${names(map.notObserved)}`] : []),
    ...order.before.map(
      ({ near, far, proved, why }) =>
        `${nameOf.get(far) ?? far} is fed through ${nameOf.get(near) ?? near} (${proved ? "proved" : "likely"}): ${why}`,
    ),
    ...order.contradictions,
    ...order.notKnown,
    "",
  ];
  return lines.map(onOneLine).join("\n");
}
