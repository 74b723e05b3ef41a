import { useId } from "react";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { BoxIntent, OutletWish } from "../../../shared-model/model/project.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import type { PlacedOutlet } from "../../../shared-model/queries/outlets-of.ts";
import { dispatch, documentStore, installationOf } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** Which cable is meant to bring the supply into a box. What the cables really are is found out by the checks. */
export function BoxIntentRows({ enclosure }: { readonly enclosure: Enclosure }) {
  const id = useId();
  const installation = useStore(documentStore, installationOf);
  const cables = cablesInto(installation.cables, enclosure.id).map(({ cable }) => cable);
  const intent = installation.intent.boxes[enclosure.id];
  if (cables.length === 0) return null;
  const change = (chosen: string): void => {
    const { state } = documentStore.get();
    const supply = cables.find((cable) => cable.id === chosen)?.id;
    const next: BoxIntent = { ...(intent?.protect && { protect: intent.protect }), ...(supply && { supply }) };
    dispatch({ command: "set-box-intent", args: { state, enclosure: enclosure.id, intent: next } });
  };
  return (
    <Section title={wording.meantToBe}>
      <div className="part-body pick">
        <label htmlFor={id}>{wording.supplyBy}</label>
        <select
          id={id}
          className="field small"
          value={intent?.supply ?? ""}
          onChange={({ target }) => change(target.value)}
        >
          <option value="">{wording.notSaid}</option>
          {cables.map((cable) => (
            <option key={cable.id} value={cable.id}>
              {cable.name}
            </option>
          ))}
        </select>
      </div>
    </Section>
  );
}

const WISHES: readonly (readonly [OutletWish["wish"], string])[] = [
  ["protect", wording.protectionWished],
  ["decided-not", wording.decidedAgainstAWish],
];

/** A person's wish for ground-fault protection of an outlet, or the decision against one. */
export function OutletWishRow({ outlet }: { readonly outlet: PlacedOutlet }) {
  const id = useId();
  const wish = useStore(documentStore, (document) => installationOf(document).intent.outlets[outlet.key]?.wish);
  const change = (chosen: string): void => {
    const { state } = documentStore.get();
    const next = WISHES.find(([one]) => one === chosen)?.[0];
    const args = { state, outlet: outlet.key, wish: next === undefined ? null : { wish: next } };
    dispatch({ command: "set-outlet-wish", args });
  };
  return (
    <div className="pick">
      <label htmlFor={id}>{outlet.name}</label>
      <select id={id} className="field small" value={wish ?? ""} onChange={({ target }) => change(target.value)}>
        <option value="">{wording.noWish}</option>
        {WISHES.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
    </div>
  );
}
