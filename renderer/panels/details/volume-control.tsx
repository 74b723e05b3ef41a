import { useId, useState } from "react";
import { sizeWords, standardBoxes } from "../../../shared-model/catalog/standard-boxes.ts";
import type { PropertyValue } from "../../../shared-model/commands/command-args.ts";
import type { VolumeFact } from "../../../shared-model/model/enclosure.ts";
import { readVolume } from "../../../shared-model/units/read-volume.ts";
import { toDecimal } from "../../../shared-model/units/volume.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { useStore } from "../../state/use-store.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { Refused } from "../refused.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly label: string;
  readonly value: unknown;
  readonly onChange: (value: PropertyValue) => void;
}

type Kind = VolumeFact["kind"];

const KINDS: readonly (readonly [Kind, string])[] = [
  ["marked", wording.markedInTheBox],
  ["table", wording.byItsStandardSize],
  ["unknown", wording.notKnown],
];

const WRONG = wording.giveTheMarkedVolumeInCubic;

/** How the volume of a box is known: read off it, taken from the table by its size, or not known. */
export function VolumeControl({ label, value, onChange }: Props) {
  const id = useId();
  const lengths = useStore(preferencesStore, (kept) => kept.lengths);
  const fact = value as VolumeFact;
  // Between choosing "marked" and typing the figure there is nothing to put into the document.
  const [asked, setAsked] = useState<Kind>();
  const [wrong, setWrong] = useState<string>();
  const kind = asked ?? fact.kind;
  const first = standardBoxes[0];
  const choose = (next: string): void => {
    setWrong(undefined);
    setAsked(next === "marked" && fact.kind !== "marked" ? "marked" : undefined);
    if (next === "unknown") onChange({ kind: "unknown" });
    if (next === "table" && fact.kind !== "table" && first) onChange({ kind: "table", size: first.size });
  };
  const mark = (text: string): void => {
    const volume = readVolume(text);
    setWrong(volume === undefined ? WRONG : undefined);
    if (volume === undefined) return;
    setAsked(undefined);
    onChange({ kind: "marked", volumeIn3: volume });
  };
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <div className="volume">
        <select id={id} className="field small" value={kind} onChange={({ target }) => choose(target.value)}>
          {KINDS.map(([one, words]) => (
            <option key={one} value={one}>
              {words}
            </option>
          ))}
        </select>
        {kind === "marked" && (
          <CommitField
            label={wording.asMarkedIn3OrWithMl(label)}
            value={fact.kind === "marked" ? String(toDecimal(fact.volumeIn3)) : ""}
            invalid={wrong !== undefined}
            onCommit={mark}
          />
        )}
        {kind === "table" && fact.kind === "table" && (
          <select
            className="field small"
            aria-label={wording.standardSize}
            value={fact.size}
            onChange={({ target }) => onChange({ kind: "table", size: target.value })}
          >
            {standardBoxes.map(({ size, volumeIn3 }) => (
              <option key={size} value={size}>
                {wording.in32(sizeWords(size, lengths), volumeIn3)}
              </option>
            ))}
          </select>
        )}
        <Refused message={wrong} />
      </div>
    </>
  );
}
