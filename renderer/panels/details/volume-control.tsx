import { useId, useState } from "react";
import { standardBoxes } from "../../../shared-model/catalog/standard-boxes.ts";
import type { PropertyValue } from "../../../shared-model/commands/command-args.ts";
import type { VolumeFact } from "../../../shared-model/model/enclosure.ts";
import { cubicInches, isExactVolume, toDecimal } from "../../../shared-model/units/volume.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { Refused } from "../refused.tsx";

interface Props {
  readonly label: string;
  readonly value: unknown;
  readonly onChange: (value: PropertyValue) => void;
}

type Kind = VolumeFact["kind"];

const KINDS: readonly (readonly [Kind, string])[] = [
  ["marked", "marked in the box"],
  ["table", "by its standard size"],
  ["unknown", "not known"],
];

/** How the volume of a box is known: read off it, taken from the table by its size, or not known. */
export function VolumeControl({ label, value, onChange }: Props) {
  const id = useId();
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
    const volume = Number(text);
    const fits = text !== "" && isExactVolume(volume) && volume > 0;
    setWrong(fits ? undefined : "Give the marked volume in cubic inches with at most four decimals, for example 30.3.");
    if (!fits) return;
    setAsked(undefined);
    onChange({ kind: "marked", volumeIn3: cubicInches(volume) });
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
            label={`${label} as marked, in³`}
            value={fact.kind === "marked" ? String(toDecimal(fact.volumeIn3)) : ""}
            invalid={wrong !== undefined}
            numeric
            onCommit={mark}
          />
        )}
        {kind === "table" && fact.kind === "table" && (
          <select
            className="field small"
            aria-label="Standard size"
            value={fact.size}
            onChange={({ target }) => onChange({ kind: "table", size: target.value })}
          >
            {standardBoxes.map(({ size, volumeIn3 }) => (
              <option key={size} value={size}>
                {size}: {volumeIn3} in³
              </option>
            ))}
          </select>
        )}
        <Refused message={wrong} />
      </div>
    </>
  );
}
