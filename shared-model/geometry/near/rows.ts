import { DEVICE_ROWS_ABOVE, DEVICE_ROWS_BELOW, SPLICE_ROWS_ABOVE, SPLICE_ROWS_BELOW } from "../metrics.ts";
import type { BoxPlan, Layer } from "./box-plan.ts";
import type { Net } from "./net.ts";

/** Rows of one layer that a body takes, or a conductor runs on. */
export class Rows {
  readonly #taken = new Set<number>();
  readonly #runs = new Map<number, Net>();

  run(row: number, net: Net): void {
    this.#taken.add(row);
    this.#runs.set(row, net);
  }

  /** Does another conductor run on one of these rows? */
  isCrossed(from: number, to: number, net: Net): boolean {
    for (let row = from; row <= to; row += 1) if (this.#runs.has(row) && this.#runs.get(row) !== net) return true;
    return false;
  }

  block(from: number, to: number): void {
    for (let row = from; row <= to; row += 1) this.#taken.add(row);
  }

  isFree(row: number): boolean {
    return !this.#taken.has(row);
  }
}

/** Rows that splices, devices and breakers of a layer take, with their words. */
export function blockedRows(plan: BoxPlan, layer: Layer): Rows {
  const rows = new Rows();
  for (const stack of layer.stacks)
    rows.block(stack.top - SPLICE_ROWS_ABOVE, stack.top + stack.rows - 1 + SPLICE_ROWS_BELOW);
  if (layer.device) rows.block(-DEVICE_ROWS_ABOVE, layer.device.lastRow + DEVICE_ROWS_BELOW);
  if (layer.kind === "breakers") {
    rows.block(-2, (plan.slots?.lastRow ?? 0) + 1);
  }
  return rows;
}
