import { useId, useState } from "react";
import { cableItems } from "../../../shared-model/catalog/cable-items.ts";
import { deviceTypes } from "../../../shared-model/catalog/device-types.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { pickNewSplice } from "../../state/new-splice.ts";
import { placeDevice, routeCable } from "../../state/placing.ts";
import { routeToOutside } from "../../state/route-outside.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { AddJumper } from "./add-jumper.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** Adds a device, a cable, a splice or a jumper without the sheet. */
export function AddToEnclosure({ enclosure }: { readonly enclosure: Enclosure }) {
  return (
    <Section title={wording.addTo(enclosure.name)}>
      <div className="part-body adders">
        <AddDevice enclosure={enclosure} />
        <AddCable enclosure={enclosure} />
        {Object.keys(enclosure.places).length > 1 && (
          <div className="adder">
            <span className="dim">{wording.splice}</span>
            <button type="button" className="button small wide" onClick={() => pickNewSplice(enclosure.id)}>
              {wording.chooseItsEnds}
            </button>
          </div>
        )}
        <AddJumper enclosure={enclosure} />
      </div>
    </Section>
  );
}

function AddDevice({ enclosure }: { readonly enclosure: Enclosure }) {
  const id = useId();
  const types = deviceTypes.filter(({ where }) => where === enclosure.kind);
  const [type, setType] = useState(types[0]?.id ?? "");
  const [refusal, setRefusal] = useState<string>();
  const add = (): void => {
    const done = placeDevice(type, enclosure.id);
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <div className="adder">
      <label htmlFor={id}>{wording.device}</label>
      <select id={id} className="field small" value={type} onChange={({ target }) => setType(target.value)}>
        {types.map((one) => (
          <option key={one.id} value={one.id}>
            {one.title}
          </option>
        ))}
      </select>
      <button type="button" className="button small" onClick={add}>
        {wording.add}
        <span className="unseen">{wording.theDevice}</span>
      </button>
      <Refused message={refusal} />
    </div>
  );
}

/** Chosen instead of an enclosure; no id of one has a space. */
const OUTSIDE = wording.notDrawn;

function AddCable({ enclosure }: { readonly enclosure: Enclosure }) {
  const id = useId();
  const { enclosures } = useStore(documentStore, installationOf);
  const others = inOrder<Enclosure>(enclosures).filter((other) => other.id !== enclosure.id);
  const [item, setItem] = useState(cableItems[0]?.id ?? "");
  const [chosen, setChosen] = useState<string>();
  const [refusal, setRefusal] = useState<string>();
  const far = chosen === OUTSIDE ? undefined : (others.find((other) => other.id === chosen) ?? others[0]);
  const add = (): void => {
    const done = far === undefined ? routeToOutside(item, enclosure.id) : routeCable(item, enclosure.id, far.id);
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <div className="adder">
      <label htmlFor={id}>{wording.cable}</label>
      <select id={id} className="field small" value={item} onChange={({ target }) => setItem(target.value)}>
        {cableItems.map((one) => (
          <option key={one.id} value={one.id}>
            {one.title}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}to`}>{wording.to}</label>
      <select
        id={`${id}to`}
        className="field small"
        value={far?.id ?? OUTSIDE}
        onChange={({ target }) => setChosen(target.value)}
      >
        {others.map((other) => (
          <option key={other.id} value={other.id}>
            {other.name}
          </option>
        ))}
        <option value={OUTSIDE}>{wording.aPlaceNotDrawn}</option>
      </select>
      <button type="button" className="button small" onClick={add}>
        {wording.add}
        <span className="unseen">{wording.theCable}</span>
      </button>
      <Refused message={refusal} />
    </div>
  );
}
