import type { MadeGroup, MadeJumper, MadeMove, MadeUp } from "../../../shared-model/answers/make-up.ts";
import { colourCode } from "../../../shared-model/units/colour.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** Every net of the box: who is in it, how it is joined, and what it reaches. */
export function Joints({ groups }: { readonly groups: readonly MadeGroup[] }) {
  const shown = groups.filter(({ landing }) => landing !== "none");
  if (shown.length === 0) return null;
  return (
    <Section title={wording.groups} note={shown.length}>
      <dl className="make-up-groups">
        {shown.map((group) => (
          <div key={group.name}>
            <dt>{group.name}</dt>
            <dd>
              {[...group.members, ...group.ports].join(", ")}
              <HowJoined group={group} />
            </dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}

const LANDING: Readonly<Record<Exclude<MadeGroup["landing"], "splice" | "none">, string>> = {
  direct: wording.straight,
  cap: wording.capped,
  strap: wording.strap,
};

function HowJoined({ group: { landing, splices } }: { readonly group: MadeGroup }) {
  if (landing !== "splice") return landing === "none" ? null : <small>{LANDING[landing]}</small>;
  return splices.map(({ word, name, count, connector, isNew, connectorChanges }) => (
    <small key={word}>
      <strong className="fig">{word}</strong>{" "}
      {wording.splice(count, connectorChanges && !isNew ? wording.connectorNow(connector) : connector)}
      {isNew ? `, ${wording.newWord}` : name !== word && ` (${name})`}
    </small>
  ));
}

/** Pigtails and links, with the length that each is cut to. */
export function Jumpers({ jumpers }: { readonly jumpers: readonly MadeJumper[] }) {
  if (jumpers.length === 0) return null;
  return (
    <Section title={wording.jumpers} note={jumpers.length}>
      <ul className="make-up-lines">
        {jumpers.map(({ name, awg, colour, from, to, isNew }) => (
          <li key={name}>
            <strong>{name}</strong> {awg} {colourCode(colour)}, {from} - {to}
            {isNew && (
              <small>
                {wording.newWord}, {wording.jumperLength}
              </small>
            )}
          </li>
        ))}
      </ul>
    </Section>
  );
}

/** End by end, for who wants to see it before the wires are in the hand. */
export function Moves({ moves }: { readonly moves: MadeUp["moves"]["ends"] }) {
  if (moves.length === 0) return null;
  return (
    <details className="part make-up-style">
      <summary>{wording.endsOneByOne(moves.length)}</summary>
      <ul className="make-up-lines">
        {moves.map((move: MadeMove) => (
          <li key={move.name}>
            <strong>{move.name}</strong> <del>{move.from}</del> {move.to}
          </li>
        ))}
      </ul>
    </details>
  );
}
