import type { Role } from "../answers/circuit.ts";
import { type ConductionGraph, GROUND, HOT, NEUTRAL } from "./conduction-graph.ts";
import type { SourceReach } from "./source-reach.ts";

/** What the device terminals on a net are for, as far as a role depends on it. */
interface Purposes {
  traveller: boolean;
  signal: boolean;
  other: boolean;
}

/**
 * Roles of nets over all switch settings, breakers on, ground-fault devices reset, loads removed, main bond left out.
 * A net of travellers is one that is live in some settings and that only traveller terminals lie on; a signal net is one
 * that no source reaches and that only signal terminals lie on.
 */
export class Roles {
  private readonly reach: SourceReach;
  private readonly purposes: ReadonlyMap<number, Purposes>;

  constructor(graph: ConductionGraph, reach: SourceReach) {
    this.reach = reach;
    this.purposes = purposesByNet(graph, reach);
  }

  of(node: number): Role {
    const { reach } = this;
    const some = reach.some(node);
    const purposes = this.purposes.get(reach.net[node] as number);
    if (some === 0) return purposes?.signal === true && !purposes.other && !purposes.traveller ? "signal" : "floating";
    const kinds = Number((some & HOT) !== 0) + Number((some & NEUTRAL) !== 0) + Number((some & GROUND) !== 0);
    // The most that settings can bring says nothing of what one of them does bring: no conflict is claimed from it.
    if (!reach.isBounded(node) && (kinds > 1 || reach.doLegsMeet(node))) return "conflict";
    if ((some & HOT) !== 0) {
      if (reach.isAlwaysHot(node)) return "ungrounded";
      return purposes?.traveller === true && !purposes.other ? "traveller" : "switched";
    }
    return (some & NEUTRAL) !== 0 ? "grounded" : "ground";
  }
}

function purposesByNet(graph: ConductionGraph, reach: SourceReach): ReadonlyMap<number, Purposes> {
  const found = new Map<number, Purposes>();
  graph.nodes.forEach(({ point }, node) => {
    if (point.kind !== "device") return;
    const net = reach.net[node] as number;
    let purposes = found.get(net);
    if (purposes === undefined) {
      purposes = { traveller: false, signal: false, other: false };
      found.set(net, purposes);
    }
    const purpose = point.type.terminals.find((terminal) => terminal.name === point.node)?.purpose;
    if (purpose === "traveller") purposes.traveller = true;
    else if (purpose === "signal") purposes.signal = true;
    else purposes.other = true;
  });
  return found;
}
