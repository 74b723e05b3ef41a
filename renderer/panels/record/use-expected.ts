import { useEffect, useState } from "react";
import type { ExpectedAnswer, WantedTest } from "../../../shared-model/answers/expected-test.ts";
import type { Installation, Supply } from "../../../shared-model/model/project.ts";
import { RECORD_STAGES, type RecordStage } from "../../../shared-model/model/test-record.ts";
import type { RecordRow } from "../../../shared-model/queries/test-record.ts";
import { documentStore } from "../../state/document-store.ts";
import { askExpected } from "../../state/expected-tests.ts";
import { useStore } from "../../state/use-store.ts";

/** What is expected of a cell: undefined while it is being computed. */
export type ExpectedOf = (row: Pick<RecordRow, "test" | "points">, stage: RecordStage) => ExpectedAnswer | undefined;

/** Readings change nothing of what is expected: it is asked for again when one of these is another. */
interface Wiring {
  readonly asFound: Installation;
  readonly proposed: Installation | undefined;
  readonly supply: Supply;
}

interface Told extends Wiring {
  readonly answers: ReadonlyMap<string, ExpectedAnswer>;
}

const keyOf = ({ stage, test, point }: WantedTest): string => `${stage} ${test} ${point}`;

const isFor = (told: Told | undefined, { asFound, proposed, supply }: Wiring): told is Told =>
  told?.asFound === asFound && told.proposed === proposed && told.supply === supply;

/** What the worker expects of the lines that are shown. */
export function useExpected(rows: readonly RecordRow[]): ExpectedOf {
  const revision = useStore(documentStore, (document) => document.revision);
  const asFound = useStore(documentStore, ({ project }) => project.asFound);
  const proposed = useStore(documentStore, ({ project }) => project.proposed);
  const supply = useStore(documentStore, ({ project }) => project.supply);
  const [told, setTold] = useState<Told>();
  const answers = isFor(told, { asFound, proposed, supply }) ? told.answers : undefined;
  const missing = rows
    .flatMap(({ test, points }) =>
      RECORD_STAGES.flatMap((stage): readonly WantedTest[] => {
        const point = points[stage];
        return point === undefined ? [] : [{ stage, test, point }];
      }),
    )
    .filter((one) => answers?.has(keyOf(one)) !== true);
  const asked = JSON.stringify(missing);
  // Where an edit came in between there is no answer, and it is asked of the next revision.
  useEffect(() => {
    const wanted: readonly WantedTest[] = JSON.parse(asked);
    if (wanted.length === 0 || revision < 0) return;
    let isWanted = true;
    askExpected(wanted).then((found) => {
      if (!isWanted || found === undefined) return;
      const wiring = { asFound, proposed, supply };
      setTold((before) => {
        const known = isFor(before, wiring) ? [...before.answers] : [];
        return { ...wiring, answers: new Map([...known, ...found.map((one) => [keyOf(one), one] as const)]) };
      });
    });
    return () => {
      isWanted = false;
    };
  }, [asked, revision, asFound, proposed, supply]);
  return ({ test, points }, stage) => {
    const point = points[stage];
    return point === undefined ? undefined : answers?.get(keyOf({ stage, test, point }));
  };
}
