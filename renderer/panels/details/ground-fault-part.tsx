import type { OutletAnswer } from "../../../shared-model/answers/circuit.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { type DeviceId, parseOutlet } from "../../../shared-model/model/ids.ts";
import { findDevice } from "../../../shared-model/queries/find-item.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { type FindingsState, findingsStore } from "../../state/findings-store.ts";
import { deviceOffers } from "../../state/make-up/make-up-offers.ts";
import { goTo } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

const answersOf = ({ outlets }: FindingsState) => outlets;

/** What protects the outlets of a device and is reset after a trip, what it protects itself, and the way to fit one. */
export function GroundFaultPart({ enclosure, device }: { readonly enclosure: Enclosure; readonly device: Device }) {
  const answers = useStore(findingsStore, answersOf);
  const checked = useStore(findingsStore, (state) => state.revision);
  const revision = useStore(documentStore, (document) => document.revision);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const offers = readOnly ? [] : deviceOffers(enclosure, device);
  const own = (answers[enclosure.id] ?? []).filter(({ outlet }) => parseOutlet(outlet).device === device.id);
  const behind = namesBehind(Object.values(answers).flat(), device.id);
  if (offers.length === 0 && own.length === 0 && behind.length === 0) return null;
  return (
    <Section title={wording.groundFault} note={checked === revision ? undefined : wording.beingComputed}>
      <div className="part-body">
        {own.map((answer) => (
          <p key={answer.outlet}>
            {own.length > 1 && <strong>{answer.name} </strong>}
            <ProtectedBy answer={answer} self={device.id} />
          </p>
        ))}
        {behind.length > 0 && <p>{wording.protectsToo(behind.join(", "))}</p>}
        {offers.map(({ title, run }) => (
          <button key={title} type="button" className="button small" data-make-up="" onClick={run}>
            {wording.fitOneHere}
          </button>
        ))}
      </div>
    </Section>
  );
}

function ProtectedBy({ answer, self }: { readonly answer: OutletAnswer; readonly self: DeviceId }) {
  const installation = useStore(documentStore, installationOf);
  const { live, protectedBy } = answer;
  if (protectedBy.length === 0) return live ? wording.protectedByNone : wording.notFedSoNotProtected;
  return (
    <>
      {wording.protectedBy}
      {protectedBy.map((id, at) => {
        const found = findDevice(installation, id);
        return (
          <span key={id}>
            {at > 0 && ", "}
            {id === self || found === undefined ? (
              wording.itself
            ) : (
              <>
                <button type="button" className="link" onClick={() => goTo({ kind: "device", id })}>
                  {found.device.name}
                </button>
                {wording.inTheBox(found.enclosure.name)}
              </>
            )}
          </span>
        );
      })}
      {wording.resetThere}
    </>
  );
}

/** Outlets of other devices that a device protects, each once. */
function namesBehind(answers: readonly OutletAnswer[], device: DeviceId): readonly string[] {
  const names = answers
    .filter(({ outlet, protectedBy }) => protectedBy.includes(device) && parseOutlet(outlet).device !== device)
    .map(({ name }) => name);
  return [...new Set(names)];
}
