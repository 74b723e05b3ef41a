import { useEffect, useState } from "react";
import type { OutletDropAnswer } from "../../../shared-model/answers/outlet-drop.ts";
import type { CableId, DeviceId } from "../../../shared-model/model/ids.ts";
import type { StateName } from "../../../shared-model/model/project.ts";
import { documentStore } from "../../state/document-store.ts";
import { askDrops } from "../../state/outlet-drops.ts";
import { goTo } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** Voltage drop at the outlets of a device under their stated load, as the worker computes it. */
export function VoltageDrop({ device }: { readonly device: DeviceId }) {
  const { drops, isStale } = useDrops(device);
  if (drops.length === 0) return null;
  return (
    <Section title={wording.voltageDrop} note={isStale ? wording.beingComputed : wording.computedWireAt20C}>
      {drops.map((drop) => (
        <div key={drop.outlet} className="part-body">
          {drops.length > 1 && <h4>{drop.name}</h4>}
          {drop.known ? <Known drop={drop} /> : <Unknown drop={drop} />}
        </div>
      ))}
    </Section>
  );
}

interface Told {
  readonly state: StateName;
  readonly device: DeviceId;
  readonly revision: number;
  readonly drops: readonly OutletDropAnswer[];
}

/** None until the first answer; after an edit the one before stays, as stale, until there is a new one. */
function useDrops(device: DeviceId): { readonly drops: readonly OutletDropAnswer[]; readonly isStale: boolean } {
  const revision = useStore(documentStore, (document) => document.revision);
  const state = useStore(documentStore, (document) => document.state);
  const [told, setTold] = useState<Told>();
  useEffect(() => {
    let isWanted = true;
    askDrops(state, device).then((drops) => {
      if (isWanted && drops !== undefined) setTold({ state, device, revision, drops });
    });
    return () => {
      isWanted = false;
    };
  }, [state, device, revision]);
  if (told?.state !== state || told.device !== device) return { drops: [], isStale: false };
  return { drops: told.drops, isStale: told.revision !== revision };
}

type KnownDrop = Extract<OutletDropAnswer, { readonly known: true }>;

function Known({ drop }: { readonly drop: KnownDrop }) {
  const { dropV, percent, limit, isPast, load, fromPanel, longest, joint } = drop;
  return (
    <>
      <p>
        <strong className="fig">
          {volts(dropV)}, {share(percent)}
        </strong>{" "}
        {wording.withWord(load)}
        {isPast && wording.moreThan(limit)}.
      </p>
      {fromPanel !== undefined && (
        <p className="dim">{wording.ofItFromOn(volts(fromPanel.dropV), share(fromPanel.percent), fromPanel.name)}</p>
      )}
      {longest !== undefined && (
        <p>
          {wording.longestPart}
          <CableLink id={longest.id} name={longest.words} />
        </p>
      )}
      {joint !== undefined && <p>{wording.inItIs(joint)}</p>}
    </>
  );
}

function Unknown({ drop }: { readonly drop: Exclude<OutletDropAnswer, KnownDrop> }) {
  if (drop.why === "not-fed") return <p className="dim">{wording.nothingDrawnFeedsItWithIts}</p>;
  if (drop.why === "no-rating") return <p className="dim">{wording.ratingOfNotRecorded(drop.breaker)}</p>;
  return (
    <p className="dim">
      {drop.cables.length === 1 ? wording.lengthWord : wording.lengths}
      {wording.ofWord4}
      {drop.cables.map(({ id, name }, index) => (
        <span key={id}>
          {index > 0 && (index === drop.cables.length - 1 ? wording.andWord : ", ")}
          <CableLink id={id} name={name} />
        </span>
      ))}{" "}
      {wording.notRecorded}
    </p>
  );
}

const CableLink = ({ id, name }: { readonly id: CableId; readonly name: string }) => (
  <button type="button" className="link" onClick={() => goTo({ kind: "cable", id })}>
    {name}
  </button>
);

/** One decimal, and never a minus before nothing. */
const figure = (value: number): string => (Math.abs(value) < 0.05 ? "0.0" : value.toFixed(1));
const volts = (value: number): string => `${figure(value)} V`;
const share = (value: number): string => `${figure(value)} %`;
