import type { CircuitMap } from "../../../shared-model/answers/survey.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { type SurveyState, surveyStore } from "../../state/survey/survey-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { BreakerOffForm } from "./breaker-off-form.tsx";
import { DirectoryOffers } from "./directory-offers.tsx";
import { MapReadings } from "./map-readings.tsx";
import { OrderPart } from "./order-part.tsx";
import { Sentences } from "./sentences.tsx";
import { wording } from "./words.ts";

const circuitsOf = ({ circuits }: SurveyState) => circuits;

/** Which outlet hangs on which breaker: one breaker off at a time, compared with the drawing; and the order along them. */
export function CircuitSurvey() {
  const circuits = useStore(surveyStore, circuitsOf);
  if (circuits === undefined)
    return (
      <p className="empty" role="status">
        {wording.workingItOut}
      </p>
    );
  const { map, order } = circuits;
  const [next] = map.notObserved;
  return (
    <>
      <p className="unseen" role="status">
        {next === undefined ? wording.everyBreakerWasOffOnce : wording.nextBreaker(next.name)}
      </p>
      <div className="survey-cautions" role="note">
        <p>{wording.tellTheOccupants}</p>
      </div>
      <Section title={wording.before}>
        <div className="part-body">
          <p>{wording.testOutletsBeforeWork}</p>
          <button type="button" className="button small" onClick={() => openDialog({ kind: "test-record" })}>
            {wording.openTheTestRecord}
          </button>
        </div>
      </Section>
      <BreakerOffForm map={map} />
      <Sentences title={wording.otherThanDrawnOrOdd} lines={map.remarks} />
      <MapTable map={map} />
      <DirectoryOffers directory={map.directory} />
      <OrderPart map={map} order={order} />
      <MapReadings map={map} />
    </>
  );
}

function MapTable({ map }: { readonly map: CircuitMap }) {
  const known = map.outlets.filter(({ breakers }) => breakers.length > 0).length;
  return (
    <Section title={wording.outletsAndBreakers} note={wording.ofKnown(known, map.outlets.length)}>
      <table className="ledger survey-map">
        <thead>
          <tr>
            <th scope="col">{wording.outlet}</th>
            <th scope="col">{wording.wentDeadWith}</th>
            <th scope="col">{wording.drawnOn}</th>
          </tr>
        </thead>
        <tbody>
          {map.outlets.map(({ outlet, name, breakers, live, notLookedAt, drawn, differs }) => (
            <tr key={outlet}>
              <th scope="row">{name}</th>
              <td>
                {breakers.length > 0 && namesOf(breakers)}
                {breakers.length + live.length + notLookedAt.length === 0 && (
                  <span className="dim">{wording.notKnown}</span>
                )}
                {live.length > 0 && <small className="survey-seen dim">{wording.staysLiveWith(namesOf(live))}</small>}
                {notLookedAt.length > 0 && (
                  <small className="survey-seen dim">{wording.notLookedAtWith(namesOf(notLookedAt))}</small>
                )}
                {differs && <strong className="survey-differs">{wording.differs}</strong>}
              </td>
              <td>{drawn.length === 0 ? <span className="dim">–</span> : namesOf(drawn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  );
}

const namesOf = (list: readonly { readonly name: string }[]): string => list.map(({ name }) => name).join(", ");
