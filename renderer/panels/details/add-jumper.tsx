import { useId, useState } from "react";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { JumperId } from "../../../shared-model/model/ids.ts";
import { COLOURS, type Colour, colourCode } from "../../../shared-model/units/colour.ts";
import type { WireSize } from "../../../shared-model/units/wire-size.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { mintId } from "../../state/mint-id.ts";
import { nextJumperName } from "../../state/naming.ts";
import { type NamedPlace, placesIn } from "../../state/places-in.ts";
import { Refused } from "../refused.tsx";

/** Sizes that a jumper in a dwelling's box is made of. */
const SIZES: readonly WireSize[] = ["14", "12", "10"];

/** Makes a jumper between two places of an enclosure. */
export function AddJumper({ enclosure }: { readonly enclosure: Enclosure }) {
  const places = placesIn(enclosure);
  const [from, setFrom] = useState<string>();
  const [to, setTo] = useState<string>();
  const [awg, setAwg] = useState<WireSize>("12");
  const [colour, setColour] = useState<Colour>("black");
  const [refusal, setRefusal] = useState<string>();
  const [first, second] = [placeOf(places, from) ?? places[0], placeOf(places, to) ?? places[1]];
  if (first === undefined || second === undefined) return null;
  const add = (): void => {
    const { state } = documentStore.get();
    const name = nextJumperName(enclosure);
    const jumper = mintId<JumperId>("j");
    const ends = { from: first.at, to: second.at };
    const done = dispatch({
      command: "add-jumper",
      args: { state, enclosure: enclosure.id, jumper, name, awg, colour, ...ends },
    });
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <div className="adder">
      <PlaceSelect label="Jumper from" places={places} chosen={first} onChoose={setFrom} />
      <PlaceSelect label="to" places={places} chosen={second} onChoose={setTo} />
      <span className="dim">of</span>
      <select
        className="field small half"
        aria-label="Size of the jumper"
        value={awg}
        onChange={({ target }) => setAwg(SIZES.find((one) => one === target.value) ?? awg)}
      >
        {SIZES.map((one) => (
          <option key={one} value={one}>
            {one} AWG
          </option>
        ))}
      </select>
      <select
        className="field small half"
        aria-label="Colour of the jumper"
        value={colour}
        onChange={({ target }) => setColour(COLOURS.find((one) => one === target.value) ?? colour)}
      >
        {COLOURS.map((one) => (
          <option key={one} value={one}>
            {one === "bare" ? one : `${colourCode(one)} ${one}`}
          </option>
        ))}
      </select>
      <button type="button" className="button small" onClick={add}>
        Add<span className="unseen"> the jumper</span>
      </button>
      <Refused message={refusal} />
    </div>
  );
}

const placeOf = (places: readonly NamedPlace[], key: string | undefined): NamedPlace | undefined =>
  places.find((place) => place.key === key);

interface SelectProps {
  readonly label: string;
  readonly places: readonly NamedPlace[];
  readonly chosen: NamedPlace;
  readonly onChoose: (key: string) => void;
}

function PlaceSelect({ label, places, chosen, onChoose }: SelectProps) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <select id={id} className="field small" value={chosen.key} onChange={({ target }) => onChoose(target.value)}>
        {places.map(({ key, name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}
