import { type NodeProps, useStore as useFlowStore } from "@xyflow/react";
import { memo, useCallback, useMemo, useRef, useState } from "react";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { documentStore, installationOf, shownInstallation } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { keyOf, type Selected } from "../state/selection.ts";
import { sessionStore } from "../state/session-store.ts";
import { isSupplyDrawn, rolesWithoutFloating } from "../state/supply-drawn.ts";
import { sameList, useStore } from "../state/use-store.ts";
import { BoxAway, OpenPlate, SelectedFrame } from "./box-away.tsx";
import { boxItems } from "./box-items.ts";
import { BoxNear } from "./box-near.tsx";
import { BoxWords } from "./box-words.tsx";
import { levelNow, levelOf, stepNow, unitOf } from "./detail.ts";
import { useDifference } from "./difference.ts";
import { ChangeOutline } from "./draw/change-outline.tsx";
import { LetterSizes } from "./draw/letters.tsx";
import { Walls } from "./draw/walls.tsx";
import { useDrawing } from "./drawings.ts";
import { useLit } from "./energise/lit.ts";
import { useLitItems } from "./energise/use-lit-items.ts";
import { BoxShell } from "./far/box-shell.tsx";
import { answersAbout, answersBySubject, findingMarks } from "./finding-marks.ts";
import { useHeldIn } from "./hand.ts";
import { itemNews } from "./item-news.ts";
import { Later } from "./later.ts";
import { letterSizes, wantedGrowth } from "./letter-sizes.ts";
import { openStore } from "./open-boxes.ts";
import { protectsText } from "./protection.ts";
import { useScoped } from "./scope/scope-view.ts";
import type { BoxFlowNode } from "./to-flow.ts";
import { useTurn, WEIGHT } from "./turns.ts";
import { useBoxEvents } from "./use-box-events.ts";
import { useTargets } from "./use-targets.ts";

const EMPTY: readonly never[] = [];

/** One enclosure on the sheet. Where it stands is the flow's affair: while it is dragged nothing in it renders. */
export const BoxNode = memo(
  BoxInTurn,
  (a, b) =>
    a.data.enclosure === b.data.enclosure && a.selected === b.selected && a.width === b.width && a.height === b.height,
);

/**
 * From afar, and until its turn has come, a box is painted with the others. One that comes into view nearer and waits has
 * nothing else yet: so many shells would only be built to be taken down again a few frames later.
 */
function BoxInTurn({ data, selected, width }: NodeProps<BoxFlowNode>) {
  const id = data.enclosure;
  const level = useFlowStore(levelNow);
  const open = useStore(openStore, ({ ids }) => ids.includes(id));
  const ready = useTurn(id, level !== "far", WEIGHT[level === "near" ? "near" : "middle"]);
  const [hasShell, setShell] = useState(level === "far");
  if (level === "far" && !hasShell) setShell(true);
  if (open || ready) return <BoxBody id={id} selected={selected} width={width} open={open} />;
  return hasShell || selected ? <BoxShell data={data} selected={selected} /> : null;
}

interface Body {
  readonly id: EnclosureId;
  readonly selected: boolean;
  readonly width: number | undefined;
  readonly open: boolean;
}

function BoxBody({ id, selected, width, open }: Body) {
  const now = useFlowStore(stepNow);
  // From middle distance it stays until the near picture has its turn.
  const mayBeNear = useTurn(id, now === 0, WEIGHT.near);
  const step = now === 0 && !mayBeNear && !open ? 1 : now;
  const near = step === 0 || open;
  const enclosure = useStore(documentStore, (document) => installationOf(document).enclosures[id]);
  const drawing = useDrawing(id);
  const ledger = useStore(findingsStore, (found) => found.ledgers[id]);
  const about = useCallback(
    ({ findings, couldNotTell }: ReturnType<typeof findingsStore.get>) =>
      enclosure ? answersAbout(enclosure, answersBySubject(findings, couldNotTell)) : EMPTY,
    [enclosure],
  );
  const answers = useStore(findingsStore, about, sameList);
  const chosen = useStore(sessionStore, ({ selection }) =>
    selection
      .filter((each) => isInBox(each, enclosure, drawing))
      .map(keyOf)
      .join("\n"),
  );
  const difference = useDifference(id);
  const found = useStore(findingsStore, (state) => state.roles[id]);
  const fed = useStore(documentStore, (document) => isSupplyDrawn(installationOf(document), id));
  const roles = useMemo(() => (fed || found === undefined ? found : rolesWithoutFloating(found)), [fed, found]);
  const protects = useStore(findingsStore, (found) => (enclosure ? protectsText(enclosure, found.outlets) : ""));
  const held = useHeldIn(id);
  const targets = useTargets(enclosure, drawing, held);
  const lit = useLit(id);
  const scoped = useScoped(id);
  const things = useMemo(
    // What the items are called changes only with the drawing: it carries the names of cables too.
    () =>
      near && enclosure && drawing
        ? boxItems(shownInstallation(), enclosure, drawing, roles, itemNews(drawing, answers))
        : EMPTY,
    [near, enclosure, drawing, roles, answers],
  );
  const items = useLitItems(things, drawing, lit);
  const marks = useMemo(() => (drawing ? findingMarks(drawing, answers) : EMPTY), [drawing, answers]);
  const root = useRef<SVGSVGElement>(null);
  const [focused, setFocused] = useState<string>();
  const scale = drawing && width !== undefined ? width / drawing.bounds.width : 1;
  const growth = useFlowStore(
    useCallback(
      ({ transform }: Parameters<typeof stepNow>[0]) => (near ? wantedGrowth(transform[2] * scale) : 1),
      [near, scale],
    ),
  );
  const letters = useMemo(
    () =>
      drawing
        ? letterSizes(
            drawing,
            growth,
            marks.map(({ at }) => at),
          )
        : undefined,
    [drawing, growth, marks],
  );
  const events = useBoxEvents({ id, drawing, scale, items, targets, marks, held, root, setFocused });

  if (enclosure === undefined || drawing === undefined) return null;
  const { bounds } = drawing;
  const unit = unitOf(step);
  return (
    <svg
      ref={root}
      role="presentation"
      className={selected ? "sheet-box sheet-box-selected" : "sheet-box"}
      viewBox={`${bounds.x} ${bounds.y} ${bounds.width} ${bounds.height}`}
      width={bounds.width * scale}
      height={bounds.height * scale}
      {...events}
    >
      <BoxWords enclosure={enclosure} change={difference.change} answers={answers} />
      {open && step > 0 && <OpenPlate drawing={drawing} pixel={unit / scale} />}
      <Walls width={drawing.width} height={drawing.height} material={drawing.material} line={near ? 0 : unit} />
      <ChangeOutline drawing={drawing} change={difference.change} unit={near ? 0 : unit} />
      {selected && <SelectedFrame drawing={drawing} step={near ? 0 : step} changed={difference.change !== undefined} />}
      {near && letters ? (
        <LetterSizes value={letters}>
          <BoxNear
            enclosure={enclosure}
            drawing={drawing}
            ledger={ledger}
            difference={difference}
            roles={roles}
            chosen={chosen}
            protects={protects}
            items={items}
            targets={targets}
            marks={marks}
            held={held}
            focused={focused}
            scale={scale}
            growth={growth}
            lit={lit}
            scoped={scoped}
          />
        </LetterSizes>
      ) : (
        <BoxAway
          step={step}
          enclosure={enclosure}
          drawing={drawing}
          ledger={scoped?.box ? undefined : ledger}
          change={difference.change}
          marks={marks}
          selected={selected}
        />
      )}
      {!near && scoped?.box && <scoped.parts.ScopeTallies box={scoped.box} drawing={drawing} unit={unit} />}
      {!near && lit && levelOf(step) === "middle" && (
        <Later show={({ LitAway }) => <LitAway drawing={drawing} lit={lit} unit={unit} />} />
      )}
    </svg>
  );
}

/** Whether a selected thing shows inside this box; the box itself has its own frame. */
function isInBox(item: Selected, enclosure: Enclosure | undefined, drawing: BoxDrawing | undefined): boolean {
  if (enclosure === undefined || drawing === undefined) return false;
  switch (item.kind) {
    case "end":
      return item.enclosure === enclosure.id;
    case "device":
      return item.id in enclosure.devices;
    case "splice":
      return item.id in enclosure.splices;
    case "jumper":
      return item.id in enclosure.jumpers;
    case "cable":
      return drawing.sheaths.some(({ cable }) => cable === item.id);
    default:
      return false;
  }
}
