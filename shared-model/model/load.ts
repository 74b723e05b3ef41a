import type { Milliamps, Ohms, Watts } from "../units/quantity.ts";
import type { LoadPriority } from "./device.ts";
import type { WithEvidence } from "./evidence.ts";
import type { LoadId, OutletKey } from "./ids.ts";

/** Something plugged into an outlet. It is not wiring: it never enters box fill. */
export interface Load extends WithEvidence {
  readonly id: LoadId;
  readonly name: string;
  readonly item: string;
  readonly plug: OutletKey;
  readonly loadW?: Watts;
  readonly loadOhm?: Ohms;
  readonly leakMa?: Milliamps;
  readonly continuous?: boolean;
  readonly priority?: LoadPriority;
  readonly order: number;
}
