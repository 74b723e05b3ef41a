import { useId, useState } from "react";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { JumperId } from "../../../shared-model/model/ids.ts";
import { COLOURS, type Colour, colourCode } from "../../../shared-model/units/colour.ts";
import type { WireSize } from "../../../shared-model/units/wire-size.ts";
import { dispatch, documentStore, installationOf } from "../../state/document-store.ts";
import { isFreePlace, JUMPER_SIZES, likelyEnds, usualMake, usualSpan } from "../../state/jumper-make.ts";
import { mintId } from "../../state/mint-id.ts";
import { nextJumperName } from "../../state/naming.ts";
import { type NamedPlace, placesIn } from "../../state/places-in.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { wording } from "./words.ts";

/** What the person chose; where they chose nothing, it follows from the rest. */
interface Chosen {
  readonly from?: string;
  readonly to?: string;
  readonly awg?: WireSize;
  readonly colour?: Colour;
}

/** Makes a jumper between two places of an enclosure. It offers what is most likely wanted until something is chosen. */
export function AddJumper({ enclosure }: { readonly enclosure: Enclosure }) {
  const installation = useStore(documentStore, installationOf);
  const [chosen, setChosen] = useState<Chosen>({});
  const [refusal, setRefusal] = useState<string>();
  const choose = (more: Chosen): void => setChosen({ ...chosen, ...more });
  const places = placesIn(enclosure);
  const usual = usualSpan(installation, enclosure, places);
  const first = placeOf(places, chosen.from) ?? usual?.[0];
  if (first === undefined || usual === undefined) return null;
  const others = likelyEnds(installation, enclosure, first, places);
  const second = placeOf(others, chosen.to) ?? others[0];
  if (second === undefined) return null;
  const make = usualMake(installation, enclosure, first.at, second.at);
  const { awg = make.awg, colour = make.colour } = chosen;
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
    if (done.ok) setChosen({});
  };
  return (
    <div className="adder">
      <PlaceSelect
        label={wording.pigtailOrJumperFrom}
        enclosure={enclosure}
        places={places}
        chosen={first}
        onChoose={(from) => choose({ from })}
      />
      <PlaceSelect
        label={wording.to}
        enclosure={enclosure}
        places={others}
        chosen={second}
        onChoose={(to) => choose({ to })}
      />
      <span className="dim">{wording.ofWord}</span>
      <select
        className="field small half"
        aria-label={wording.sizeOfTheJumper}
        value={awg}
        onChange={({ target }) => choose({ awg: JUMPER_SIZES.find((one) => one === target.value) ?? awg })}
      >
        {JUMPER_SIZES.map((one) => (
          <option key={one} value={one}>
            {wording.awg(one)}
          </option>
        ))}
      </select>
      <select
        className="field small half"
        aria-label={wording.colourOfTheJumper}
        value={colour}
        onChange={({ target }) => choose({ colour: COLOURS.find((one) => one === target.value) ?? colour })}
      >
        {COLOURS.map((one) => (
          <option key={one} value={one}>
            {one === "bare" ? one : `${colourCode(one)} ${one}`}
          </option>
        ))}
      </select>
      <button type="button" className="button small" onClick={add}>
        {wording.add}
        <span className="unseen">{wording.theJumper}</span>
      </button>
      <Refused message={refusal} />
    </div>
  );
}

const placeOf = (places: readonly NamedPlace[], key: string | undefined): NamedPlace | undefined =>
  places.find((place) => place.key === key);

interface SelectProps {
  readonly label: string;
  readonly enclosure: Enclosure;
  readonly places: readonly NamedPlace[];
  readonly chosen: NamedPlace;
  readonly onChoose: (key: string) => void;
}

function PlaceSelect({ label, enclosure, places, chosen, onChoose }: SelectProps) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <select id={id} className="field small" value={chosen.key} onChange={({ target }) => onChoose(target.value)}>
        {places.map((place) => (
          <option key={place.key} value={place.key}>
            {optionWords(enclosure, place)}
          </option>
        ))}
      </select>
    </>
  );
}

/** A splice says that it is one; a screw with somebody on it says so. */
function optionWords(enclosure: Enclosure, place: NamedPlace): string {
  if (place.at.kind === "splice") return `splice ${place.name}`;
  return place.at.kind === "terminal" && !isFreePlace(enclosure, place) ? `${place.name} (taken)` : place.name;
}
