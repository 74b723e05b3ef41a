import { useEffect, useState } from "react";
import type { ScopeAnswer } from "../../../shared-model/answers/scope.ts";
import { SCOPE_LETTERS, type ScopeSign } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { documentStore } from "../../state/document-store.ts";
import { scopeStore, shownScope } from "../../state/scope/scope-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Flag } from "../../ui/flag.tsx";
import { stateMarkWidth } from "../sheet-frame.tsx";
import { crossPath } from "./aside-shape.tsx";
import { wording } from "./words.ts";

/** Of the frame of the sheet. */
const EDGE = 19;

/** What lies over the sheet while the difference is shown: the legend, whether it holds, and a word for who hears it. */
export function ScopeOverlay() {
  const answer = useStore(scopeStore, shownScope);
  return (
    <>
      <p className="scope-say" style={{ left: EDGE + stateMarkWidth("proposed", true) }}>
        {wording.lookingOnly}
      </p>
      <Behind />
      {answer && <Legend />}
      <Said answer={answer} />
    </>
  );
}

/** While the sheet shows the difference from before the last edit, or none yet. */
function Behind() {
  const revision = useStore(documentStore, (document) => document.revision);
  const about = useStore(scopeStore, (state) => state.about);
  const trouble = useStore(scopeStore, (state) => state.trouble);
  if (trouble !== undefined) return <p className="scope-behind">{trouble}</p>;
  if (about === revision) return null;
  return <p className="scope-behind">{about === undefined ? wording.workingItOut : wording.stillFromBefore}</p>;
}

const SAMPLES: readonly { readonly sign: ScopeSign; readonly words: string; readonly line: "line" | "way" }[] = [
  { sign: "kept", words: wording.kept, line: "line" },
  { sign: "moved", words: wording.movedNewPlace, line: "line" },
  { sign: "moved", words: wording.movedOldPlace, line: "way" },
  { sign: "removed", words: wording.removed, line: "line" },
  { sign: "new", words: wording.newWord, line: "line" },
];

/** As it is printed: flag, line and word of each kind. */
function Legend() {
  return (
    <section className="scope-legend" aria-label={wording.legend}>
      <ul>
        {SAMPLES.map(({ sign, words, line }) => (
          <li key={words}>
            <Flag tone={sign} letter={SCOPE_LETTERS[sign]} />
            <Sample sign={sign} line={line} />
            {words}
          </li>
        ))}
      </ul>
    </section>
  );
}

const WIDE = 48;

function Sample({ sign, line }: { readonly sign: ScopeSign; readonly line: "line" | "way" }) {
  const path = `M0 6H${WIDE}`;
  return (
    <svg className="scope-sample" width={WIDE} height={12} viewBox={`0 0 ${WIDE} 12`} aria-hidden="true">
      <path className={line === "way" ? "scope-way" : `scope-line scope-line-${sign}`} d={path} />
      {sign === "moved" && line === "line" && <path className="scope-line-middle" d={path} />}
      {sign === "removed" && <path className="scope-crosses" d={crossPath([8, 24, 40].map((x) => ({ x, y: 6 })))} />}
    </svg>
  );
}

/** The region is there before its words are, so that they are read. */
function Said({ answer }: { readonly answer: ScopeAnswer | undefined }) {
  const [words, setWords] = useState("");
  useEffect(() => {
    if (answer !== undefined) setWords(sumWords(answer));
  }, [answer]);
  return (
    <p role="status" className="unseen" data-scope-said="">
      {words}
    </p>
  );
}

const sumWords = ({ totals: { boxes, detach, attach, newJoints, devices } }: ScopeAnswer): string =>
  boxes === 0 ? wording.nothingChanges : wording.sum(boxes, detach, attach, newJoints, devices);
