import { useId, useMemo, useState } from "react";
import type { DeviceType } from "../../../shared-model/catalog/device-type.ts";
import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import {
  linkedDevice,
  type Replacement,
  replacementName,
  replacementTypes,
  tryReplacement,
} from "../../state/replacing.ts";
import { select } from "../../state/session-store.ts";
import { goToIn, STATE_WORDS } from "../../state/shown-state.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly device: Device;
  readonly enclosure: Enclosure;
}

/** The device of the other account of the wiring that this one replaces, or that replaces it. */
export function ReplacedLine({ device }: { readonly device: Device }) {
  const { project, state } = useStore(documentStore, (document) => document);
  const linked = linkedDevice(project, state, device.id);
  if (linked === undefined) return null;
  return (
    <p>
      {state === "proposed" ? wording.replaces : wording.replacedBy}
      <button type="button" className="link" onClick={() => goToIn(linked.state, { kind: "device", id: linked.id })}>
        {linked.name} ({STATE_WORDS[linked.state].toLowerCase()})
      </button>
    </p>
  );
}

/** Puts another device in the place of this one; what would stay landed is shown before it is done. */
export function ReplaceDevice({ device, enclosure }: Props) {
  const id = useId();
  const [type, setType] = useState("");
  const { kin, others } = replacementTypes(enclosure, device);
  return (
    <Section title={wording.replaceIt}>
      <div className="part-body">
        <div className="pick">
          <label htmlFor={id}>{wording.by}</label>
          <select id={id} className="field small" value={type} onChange={({ target }) => setType(target.value)}>
            <option value="">{wording.chooseAType}</option>
            <Types caption={wording.ofItsKind} types={kin} />
            <Types caption={wording.others} types={others} />
          </select>
        </div>
        {type !== "" && <Trial key={type} device={device} enclosure={enclosure} type={type} />}
      </div>
    </Section>
  );
}

function Types({ caption, types }: { readonly caption: string; readonly types: readonly DeviceType[] }) {
  if (types.length === 0) return null;
  return (
    <optgroup label={caption}>
      {types.map(({ id, title }) => (
        <option key={id} value={id}>
          {title}
        </option>
      ))}
    </optgroup>
  );
}

function Trial({ device, enclosure, type }: Props & { readonly type: string }) {
  const id = useId();
  const document = useStore(documentStore, (state) => state);
  const usual = replacementName(document, device);
  const [typed, setTyped] = useState<string>();
  const [refusal, setRefusal] = useState<string>();
  const name = (typed ?? usual).trim();
  const tried = useMemo(() => {
    // Tried anew whenever the document or its shown state is another.
    void document;
    return tryReplacement(enclosure, device, type, name === "" ? usual : name);
  }, [document, enclosure, device, type, name, usual]);
  const replace = (): void => {
    const done = dispatch(tried.call);
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) select({ kind: "device", id: tried.id });
  };
  if (tried.refusal !== undefined) return <Refused message={tried.refusal} />;
  return (
    <>
      <div className="pick">
        <label htmlFor={id}>{wording.nameWord}</label>
        <input
          id={id}
          className="field small"
          spellCheck={false}
          value={typed ?? usual}
          onChange={({ target }) => setTyped(target.value)}
        />
      </div>
      <WhatFollows tried={tried} />
      <button type="button" className="button small" disabled={name === ""} onClick={replace}>
        {wording.replace}
        {device.name === name ? name : wording.by2(device.name, name)}
      </button>
      <Refused message={refusal} />
    </>
  );
}

function WhatFollows({ tried: { kept, capped } }: { readonly tried: Replacement }) {
  return (
    <div role="status" className="follows">
      {kept.length > 0 && (
        <>
          <p>
            <strong>{wording.stayLanded}</strong> <span className="dim fig">{kept.length}</span>
          </p>
          <ul>
            {kept.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      <p>
        <strong>{wording.capped}</strong>{" "}
        <span className="dim">{capped.length === 0 ? wording.none : wording.landThemAnew(capped.join(", "))}</span>
      </p>
    </div>
  );
}
