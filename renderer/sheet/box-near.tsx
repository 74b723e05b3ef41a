import type { BoxRoles } from "../../shared-model/answers/circuit.ts";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { BoxDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { documentStore } from "../state/document-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { intoBox } from "./box-frame.ts";
import { BoxHeader } from "./box-header.tsx";
import { BoxInside } from "./box-inside.tsx";
import type { BoxItem } from "./box-items.ts";
import type { BoxDifference } from "./difference.ts";
import type { Lit } from "./energise/lit.ts";
import type { FindingMark } from "./finding-marks.ts";
import { gestureStore, type HeldThing } from "./gesture-store.ts";
import { ItemsLayer } from "./items-layer.tsx";
import type { LandingTarget } from "./landing-targets.ts";
import { Later } from "./later.ts";
import { Grips, LineGlow, LinesLayer } from "./lines-layer.tsx";
import { MarksLayer } from "./marks-layer.tsx";
import type { Scoped } from "./scope/scope-view.ts";

interface Near {
  readonly enclosure: Enclosure;
  readonly drawing: BoxDrawing;
  readonly ledger: FillLedger | undefined;
  readonly difference: BoxDifference;
  readonly roles: BoxRoles | undefined;
  readonly chosen: string;
  readonly protects: string;
  readonly items: readonly BoxItem[];
  readonly targets: readonly LandingTarget[];
  readonly marks: readonly FindingMark[];
  readonly held: HeldThing | undefined;
  readonly focused: string | undefined;
  /** How many times larger than the sheet it is drawn. */
  readonly scale: number;
  /** How many times larger letters are to be, where there is room for it. */
  readonly growth: number;
  readonly lit: Lit | undefined;
  /** While the difference of the states is shown. */
  readonly scoped: Scoped | undefined;
}

/** Everything of a box that is seen from near: conductors, places, findings, and what hangs on the pointer. */
export function BoxNear(near: Near) {
  const { enclosure, drawing, ledger, difference, roles, chosen, protects, items, targets, marks, held, focused } =
    near;
  const { scoped } = near;
  const lifted = held?.kind === "end" ? held.end : undefined;
  const active = items.some((item) => item.key === focused) ? focused : items[0]?.key;
  return (
    <>
      <BoxHeader
        drawing={drawing}
        ledger={ledger}
        marked={scoped === undefined && marks.some((mark) => mark.onHeader)}
        change={difference.change}
        growth={near.growth}
      />
      {scoped ? (
        <scoped.parts.ScopeInside drawing={drawing} box={scoped.box} chosen={chosen} />
      ) : (
        <BoxInside
          drawing={drawing}
          chosen={chosen}
          lifted={lifted}
          growing={held !== undefined}
          difference={difference}
          roles={roles}
          protects={protects}
          lit={near.lit}
        />
      )}
      {near.lit && <LitOver enclosure={enclosure} drawing={drawing} lit={near.lit} />}
      {held === undefined && <LineGlow id={enclosure.id} drawing={drawing} focused={focused} />}
      {held === undefined && chosen !== "" && <Grips drawing={drawing} chosen={chosen} />}
      <LinesLayer drawing={drawing} resting={held !== undefined} />
      <ItemsLayer items={items} active={active} resting={held !== undefined} />
      {scoped === undefined && <MarksLayer marks={marks} />}
      <Ghost id={enclosure.id} />
      {held && <Later show={({ TargetLayer }) => <TargetLayer targets={targets} />} />}
      {held && (
        <Hand
          held={held}
          enclosure={enclosure}
          drawing={drawing}
          scale={near.scale}
          aim={targets.find((target) => target.key === focused)?.at}
        />
      )}
    </>
  );
}

function LitOver(props: Pick<Near, "enclosure" | "drawing"> & { readonly lit: Lit }) {
  return <Later show={({ LitLayer }) => <LitLayer {...props} />} />;
}

/** Outline of a splice of this box on the move. */
function Ghost({ id }: { readonly id: EnclosureId }) {
  const ghost: Rect | undefined = useStore(gestureStore, (gesture) =>
    gesture.ghost?.enclosure === id ? gesture.ghost : undefined,
  );
  if (ghost === undefined) return null;
  const { x, y, width, height } = ghost;
  return <rect className="sheet-ghost" x={x} y={y} width={width} height={height} rx={12} />;
}

const ORIGIN = { x: 0, y: 0 };

function Hand({
  held,
  enclosure,
  drawing,
  scale,
  aim,
}: Pick<Near, "enclosure" | "drawing" | "scale"> & { readonly held: HeldThing; readonly aim: Point | undefined }) {
  const origin = useStore(documentStore, (document) => placesOf(document)[enclosure.id] ?? ORIGIN);
  const pointer = useStore(gestureStore, (gesture) => gesture.pointer);
  const tip = pointer === undefined ? aim : intoBox(pointer, origin, drawing, scale);
  return (
    <Later show={({ HandLayer }) => <HandLayer held={held} enclosure={enclosure} drawing={drawing} tip={tip} />} />
  );
}
