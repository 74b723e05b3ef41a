import { useId } from "react";
import { findCableItem } from "../../../shared-model/catalog/cable-items.ts";
import type { SideTarget } from "../../../shared-model/commands/command-args.ts";
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { cableEnd, type EnclosureId, otherSide, type Side } from "../../../shared-model/model/ids.ts";
import { saysWhere } from "../../../shared-model/queries/far-side.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { conductorKeys } from "../../state/conductor-keys.ts";
import { dispatch, documentStore, installationOf } from "../../state/document-store.ts";
import { lengthHere } from "../../state/length-here.ts";
import { freeSide } from "../../state/placing.ts";
import { goTo, notify } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { EndRow } from "./end-row.tsx";
import { FindingsAbout } from "./findings-about.tsx";
import { LabelRows } from "./label-rows.tsx";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";
import { Who } from "./who.tsx";
import { wording } from "./words.ts";

/** A cable: where it runs, and where each of its conductors ends. */
export function CableDetails({ cable }: { readonly cable: Cable }) {
  return (
    <>
      <Who item={{ kind: "cable", id: cable.id }} name={cable.name} kind="cable">
        <p>
          {findCableItem(cable.item)?.title ?? cable.item}
          {cable.lengthFt !== undefined && `, ${lengthHere(cable.lengthFt, "ft")}`}.
        </p>
      </Who>
      <FindingsAbout item={{ kind: "cable", id: cable.id }} />
      <SideEnds cable={cable} side="a" />
      <SideEnds cable={cable} side="b" />
      <LabelRows on={{ cable: cable.id }} />
      <Properties target={{ kind: "cable", id: cable.id }} />
    </>
  );
}

function SideEnds({ cable, side }: { readonly cable: Cable; readonly side: Side }) {
  const installation = useStore(documentStore, installationOf);
  const where = cable.sides[side];
  if ("outside" in where) {
    return (
      <Section title={wording.leavesThisDrawing}>
        <FarEnd cable={cable} side={side} outside={where.outside} />
      </Section>
    );
  }
  const enclosure = installation.enclosures[where.enclosure];
  if (enclosure === undefined) return null;
  const go = (
    <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
      {enclosure.name} <span className="unseen">{wording.details}</span>
    </button>
  );
  return (
    <Section title={wording.endsIn(enclosure.name)} note={go}>
      <ul className="ends">
        {conductorKeys(cable).map((key) => (
          <EndRow key={key} enclosure={enclosure} end={cableEnd(cable.id, key, side)} />
        ))}
      </ul>
      <MoveSide cable={cable} side={side} now={enclosure.id} />
    </Section>
  );
}

/** Where the cable goes beyond the drawing, in words; or the box or panel that it is drawn to from now on. */
function FarEnd({ cable, side, outside }: { readonly cable: Cable; readonly side: Side; readonly outside: string }) {
  const id = useId();
  const say = (words: string): void => moveTo(cable, side, { outside: words });
  return (
    <>
      <p className="part-body dim">{wording.itsFarEndIsNotDrawn}</p>
      <div className="part-body pick">
        <label htmlFor={id}>
          {wording.goesTo}
          <span className="unseen">{wording.beyondTheDrawing}</span>
        </label>
        <CommitField id={id} value={saysWhere(outside) ? outside : ""} invalid={false} onCommit={say} />
      </div>
      <MoveSide cable={cable} side={side} now={undefined} />
    </>
  );
}

function moveTo(cable: Cable, side: Side, to: SideTarget): void {
  const { state } = documentStore.get();
  const done = dispatch({ command: "move-cable-side", args: { state, cable: cable.id, side, to } });
  if (!done.ok) notify("problem", wording.notMoved, [done.refusal.message]);
}

interface MoveProps {
  readonly cable: Cable;
  readonly side: Side;
  /** Undefined where it leaves the drawing. */
  readonly now: EnclosureId | undefined;
}

/** Pulls this side of the cable into another enclosure; its ends arrive there capped. */
function MoveSide({ cable, side, now }: MoveProps) {
  const installation = useStore(documentStore, installationOf);
  const move = (chosen: string): void => {
    const far = Object.values(installation.enclosures).find(({ id }) => id === chosen);
    if (far !== undefined) moveTo(cable, side, freeSide(installation, far));
  };
  const beyond = now === undefined;
  const other = cable.sides[otherSide(side)];
  const there = "enclosure" in other ? other.enclosure : undefined;
  const others = inOrder<Enclosure>(installation.enclosures).filter(({ id }) => id !== now && id !== there);
  if (beyond && others.length === 0) return <p className="empty">{wording.toDrawItPlaceTheBox}</p>;
  return (
    <div className="part-body">
      <select
        className="field small"
        aria-label={beyond ? wording.drawTo(cable.name) : wording.moveThisSideOf(cable.name)}
        value=""
        onChange={({ target }) => move(target.value)}
      >
        <option value="">{beyond ? wording.drawItTo : wording.moveThisSideTo}</option>
        {others.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}
