import type { CircuitMap } from "../../../shared-model/answers/survey.ts";
import { Choice } from "./choice.tsx";
import type { Went, WentOf } from "./went.ts";
import { wording } from "./words.ts";

interface Props {
  readonly map: CircuitMap;
  readonly breaker: string;
  readonly went: WentOf;
  readonly onWent: (went: WentOf) => void;
}

/** So many outlets are looked through at once; of a house, those that are drawn on the breaker come first. */
const MOST = 12;

const WENT: readonly (readonly [Went, string])[] = [
  ["dead", wording.dead],
  ["half", wording.half],
  ["live", wording.live],
];
/** Pressed while nothing was said, and takes back what was. */
const NOT_LOOKED_AT = "not-looked-at";

/** Every drawn outlet, light and appliance, each to be said dead, half dead or live. */
export function WentRows({ map, breaker, went, onWent }: Props) {
  const isLikely = ({ drawn, outlet }: CircuitMap["outlets"][number]): boolean =>
    drawn.some(({ id }) => id === breaker) || went[outlet] !== undefined;
  const many = map.outlets.length > MOST;
  const first = many ? map.outlets.filter(isLikely) : map.outlets;
  const rest = many ? map.outlets.filter((one) => !isLikely(one)) : [];
  const row = ({ outlet, name }: CircuitMap["outlets"][number]) => (
    <Choice
      key={outlet}
      title={name}
      options={[...WENT, [NOT_LOOKED_AT, wording.notLookedAt]]}
      chosen={went[outlet] ?? NOT_LOOKED_AT}
      onChoose={(key) => {
        const { [outlet]: _, ...others } = went;
        onWent(key === NOT_LOOKED_AT ? others : { ...others, [outlet]: key });
      }}
    />
  );
  return (
    <>
      {first.map(row)}
      {rest.length > 0 && (
        <details>
          <summary>{wording.drawnElsewhere(rest.length)}</summary>
          {rest.map(row)}
        </details>
      )}
    </>
  );
}
