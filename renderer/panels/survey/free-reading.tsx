import { useId, useState } from "react";
import type { SurveyAnswer, SurveyWanted } from "../../../shared-model/answers/survey.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import {
  SURVEY_ARRANGEMENTS,
  type SurveyArrangement,
  type SurveyInstrument,
  type SurveyPoint,
  type SurveyTest,
} from "../../../shared-model/model/survey.ts";
import { Section } from "../details/section.tsx";
import { ARRANGEMENT_WORDS } from "./answer-words.ts";
import { OutcomeForm } from "./outcome-form.tsx";
import { PointSelect } from "./point-select.tsx";
import { wording } from "./words.ts";

type Kind = Exclude<SurveyTest["kind"], "breaker">;

const KINDS: readonly (readonly [Kind, string])[] = [
  ["pair", wording.betweenTwoPoints],
  ["works", wording.whatWorks],
  ["current", wording.currentInAWire],
  ["test-lamp", wording.testLamp],
  ["look", wording.lookedIntoALuminairesBox],
];

const USUAL: Readonly<Record<Kind, SurveyInstrument>> = {
  pair: "low-impedance-meter",
  works: "by-eye",
  current: "clamp-meter",
  "test-lamp": "test-lamp",
  look: "by-eye",
};

/** Any other reading: how the wires stand, what is read, between what. */
export function FreeReading({ answer }: { readonly answer: SurveyAnswer }) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <Section title={wording.anotherReading}>
      <details className="survey-fold" onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
        <summary>{wording.enterAReadingOfYourOwn}</summary>
        {isOpen && <FreeForm answer={answer} />}
      </details>
    </Section>
  );
}

function FreeForm({ answer }: { readonly answer: SurveyAnswer }) {
  const id = useId();
  const [arrangement, setArrangement] = useState<SurveyArrangement>("A2");
  const [kind, setKind] = useState<Kind>("pair");
  const [first] = answer.cables;
  const [from, setFrom] = useState<SurveyPoint>(() => pointOf(first, 0));
  const [to, setTo] = useState<SurveyPoint>(() => pointOf(first, 1));
  const [joined, setJoined] = useState<readonly CableId[]>([]);
  if (first === undefined) return null;
  const test = testOf(kind, from, to);
  const instrument = kind === "pair" && arrangement === "A1" ? "continuity" : USUAL[kind];
  const isJoined = arrangement === "A3" || arrangement === "A4";
  const wanted: SurveyWanted = {
    arrangement,
    instrument,
    ...(isJoined && { joined }),
    tests: test === undefined ? [] : [test],
  };
  const why =
    test === undefined
      ? wording.chooseTwoPoints
      : isJoined && kind === "works" && joined.length < 2
        ? wording.chooseJoined
        : undefined;
  return (
    <>
      <div className="survey-around">
        <label htmlFor={`${id}how`}>{wording.howTheWiresStand}</label>
        <select
          id={`${id}how`}
          className="field small"
          value={arrangement}
          onChange={({ target }) => setArrangement(target.value as SurveyArrangement)}
        >
          {SURVEY_ARRANGEMENTS.map((one) => (
            <option key={one} value={one}>
              {`${one}: ${ARRANGEMENT_WORDS[one]}`}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}what`}>{wording.whatIsRead}</label>
        <select
          id={`${id}what`}
          className="field small"
          value={kind}
          onChange={({ target }) => setKind(target.value as Kind)}
        >
          {KINDS.map(([one, words]) => (
            <option key={one} value={one}>
              {words}
            </option>
          ))}
        </select>
        {kind !== "works" && (
          <PointSelect
            label={wording.fromPoint}
            answer={answer}
            point={from}
            onPoint={setFrom}
            ground={kind === "pair"}
          />
        )}
        {kind === "pair" && <PointSelect label={wording.toPoint} answer={answer} point={to} onPoint={setTo} ground />}
      </div>
      {isJoined && (
        <fieldset className="survey-works survey-joined">
          <legend>{wording.joinedToEachOther}</legend>
          {answer.cables.map((cable) => (
            <button
              key={cable.id}
              type="button"
              className="button small"
              aria-pressed={joined.includes(cable.id)}
              onClick={() =>
                setJoined(joined.includes(cable.id) ? joined.filter((one) => one !== cable.id) : [...joined, cable.id])
              }
            >
              {cable.name}
            </button>
          ))}
        </fieldset>
      )}
      {why === undefined ? (
        <OutcomeForm
          key={`${arrangement} ${kind}`}
          answer={answer}
          wanted={wanted}
          holdsLeft={0}
          name={wording.ofYourOwn}
        />
      ) : (
        <p className="empty">{why}</p>
      )}
    </>
  );
}

function pointOf(cable: SurveyAnswer["cables"][number] | undefined, at: number): SurveyPoint {
  const conductor = cable?.conductors[at];
  return cable === undefined || conductor === undefined ? "ground" : { cable: cable.id, conductor: conductor.key };
}

/** The test that is described; none where it is between a point and itself. */
function testOf(kind: Kind, from: SurveyPoint, to: SurveyPoint): SurveyTest | undefined {
  if (kind === "works") return { kind, items: [] };
  if (kind === "pair") return JSON.stringify(from) === JSON.stringify(to) ? undefined : { kind, from, to };
  if (from === "ground") return undefined;
  switch (kind) {
    case "current":
      return { kind, cable: from.cable, conductor: from.conductor };
    case "test-lamp":
      return { kind, cable: from.cable, lightGlows: false };
    case "look":
      return { kind, cable: from.cable, feedThere: false };
  }
}
