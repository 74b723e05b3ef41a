import { findEnclosureItem } from "../../../shared-model/catalog/enclosure-items.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { cableEnd } from "../../../shared-model/model/ids.ts";
import { cablesInto } from "../../../shared-model/queries/cables-into.ts";
import { conductorKeys } from "../../state/conductor-keys.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { farSideName } from "../../state/far-side-name.ts";
import { lengthHere } from "../../state/length-here.ts";
import { select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { AddToEnclosure } from "./add-to-enclosure.tsx";
import { DeviceRows } from "./device-rows.tsx";
import { EndRow } from "./end-row.tsx";
import { BoxFill } from "./fill-ledger.tsx";
import { FindingsAbout } from "./findings-about.tsx";
import { BoxIntentRows } from "./intent-rows.tsx";
import { JumperRows } from "./jumper-rows.tsx";
import { LabelRows } from "./label-rows.tsx";
import { MakeUpPart } from "./make-up-part.tsx";
import { PhotoRows } from "./photo-rows.tsx";
import { PinRow } from "./pin-row.tsx";
import { Properties } from "./properties.tsx";
import { RingRows } from "./ring-rows.tsx";
import { Section } from "./section.tsx";
import { SpliceRows } from "./splice-rows.tsx";
import { SurveyPart } from "./survey-part.tsx";
import { Who } from "./who.tsx";
import { wording } from "./words.ts";

/** A box or panel: its fill, who enters it, what is in it, and the facts about it. */
export function EnclosureDetails({ enclosure }: { readonly enclosure: Enclosure }) {
  return (
    <>
      <Who item={{ kind: "enclosure", id: enclosure.id }} name={enclosure.name} kind={kindWords(enclosure)}>
        <p>{findEnclosureItem(enclosure.item)?.title ?? enclosure.item}</p>
      </Who>
      {enclosure.kind === "box" && <BoxFill enclosure={enclosure.id} />}
      <MakeUpPart enclosure={enclosure} />
      <SurveyPart enclosure={enclosure} />
      <FindingsAbout item={{ kind: "enclosure", id: enclosure.id }} />
      <CableSections enclosure={enclosure} />
      <DeviceRows enclosure={enclosure} />
      <SpliceRows enclosure={enclosure} />
      <JumperRows enclosure={enclosure} />
      {enclosure.kind === "box" && <RingRows box={enclosure} />}
      <AddToEnclosure enclosure={enclosure} />
      {enclosure.kind === "box" && <BoxIntentRows enclosure={enclosure} />}
      <LabelRows on={{ enclosure: enclosure.id }} />
      <PhotoRows enclosure={enclosure.id} name={enclosure.name} />
      <Properties target={{ kind: "enclosure", id: enclosure.id }} />
      <PinRow ids={[enclosure.id]} />
    </>
  );
}

const kindWords = ({ kind, note }: Enclosure): string => (note === undefined ? kind : `${kind}, ${note}`);

function CableSections({ enclosure }: { readonly enclosure: Enclosure }) {
  const installation = useStore(documentStore, installationOf);
  const cables = cablesInto(installation.cables, enclosure.id);
  if (cables.length === 0) return null;
  return (
    <Section title={wording.cables} note={cables.length}>
      {cables.map(({ cable, side, entry }) => (
        <div key={`${cable.id} ${side}`} className="cable-ends">
          <p className="cable-head">
            <button type="button" className="link" onClick={() => select({ kind: "cable", id: cable.id })}>
              {cable.name}
            </button>
            <span className="dim">{farSideName(installation, cable, side)}</span>
            <button
              type="button"
              className="link entry-link"
              onClick={() => select({ kind: "entry", enclosure: enclosure.id, id: entry })}
            >
              {wording.entry}
              <span className="unseen">{wording.ofWord2(cable.name)}</span>
            </button>
            {cable.lengthFt !== undefined && (
              <span className="dim fig cable-length">{lengthHere(cable.lengthFt, "ft")}</span>
            )}
          </p>
          <ul className="ends">
            {conductorKeys(cable).map((key) => (
              <EndRow key={key} enclosure={enclosure} end={cableEnd(cable.id, key, side)} />
            ))}
          </ul>
        </div>
      ))}
    </Section>
  );
}
