import { useEffect, useMemo, useState } from "react";
import type { FillLedger } from "../../../shared-model/answers/fill.ts";
import type { SupplyAnswer } from "../../../shared-model/answers/supply.ts";
import { fillIfDone } from "../../analysis/checks.ts";
import { documentStore } from "../../state/document-store.ts";
import type { SeenBox } from "../../state/new-box.ts";
import { type Into, panelFor, type TriedBox, tryBox } from "../../state/new-box-form.ts";
import { useStore } from "../../state/use-store.ts";

interface Tried {
  readonly box: TriedBox | undefined;
  /** Why there can be none. */
  readonly why: string | undefined;
  /** What the checks count in it; the last count while they are at it. */
  readonly fill: FillLedger | undefined;
  /** The panel that would be drawn for its supply, or why none can be; the last answer while the next is asked for. */
  readonly panel: SupplyAnswer | undefined;
}

/** The box of a description, as it would be, with its fill as the checks count it. */
export function useTriedBox(seen: SeenBox, into: Into): Tried {
  const project = useStore(documentStore, (document) => document.project);
  const state = useStore(documentStore, (document) => document.state);
  const outcome = useMemo(() => tryBox(seen, into, { project, state }), [seen, into, project, state]);
  const box = outcome.ok ? outcome.tried : undefined;
  const [fill, setFill] = useState<FillLedger>();
  useEffect(() => {
    if (box === undefined) return setFill(undefined);
    let wanted = true;
    fillIfDone(box.asked.state, box.asked.call, box.id).then((counted) => {
      if (wanted && counted !== undefined) setFill(counted);
    });
    return () => {
      wanted = false;
    };
  }, [box]);
  const [panel, setPanel] = useState<SupplyAnswer>();
  useEffect(() => {
    if (box?.supply === undefined) return setPanel(undefined);
    let wanted = true;
    panelFor(box.asked.state, { supply: box.supply, call: box.asked.call }).then((answer) => {
      if (wanted && answer !== undefined) setPanel(answer);
    });
    return () => {
      wanted = false;
    };
  }, [box]);
  return { box, panel, why: outcome.ok ? undefined : outcome.why, fill };
}
