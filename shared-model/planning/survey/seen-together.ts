import type { SurveyedReading, SurveyGroup } from "../../model/survey.ts";

/**
 * Where a person listed more than the cables can feed one by one, things that worked together with one cable alone joined
 * to the supply hang on that cable: they become one group.
 */
export function seenTogether(
  groups: readonly SurveyGroup[],
  readings: readonly { readonly survey: Pick<SurveyedReading, "test" | "joined"> }[],
): readonly SurveyGroup[] {
  let now = groups;
  for (const { survey } of readings) {
    const { test, joined = [] } = survey;
    if (test.kind !== "works" || joined.length !== 2) continue;
    const works = new Set(test.items);
    const together = now.filter((group) => group.every(({ id }) => works.has(id)));
    if (together.length < 2) continue;
    const place = now.indexOf(together[0] as SurveyGroup);
    now = now.flatMap((group, index) =>
      index === place ? [together.flat()] : together.includes(group) ? [] : [group],
    );
  }
  return now;
}
