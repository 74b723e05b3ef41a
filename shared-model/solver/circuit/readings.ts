import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import { plus } from "../network/phasor.ts";
import type { Circuit } from "./circuit.ts";
import { throughMeters, type VoltReading } from "./instruments.ts";
import { plugInTester, type TesterReading } from "./plug-in-tester.ts";
import { pairOf, twoPortOf } from "./two-port.ts";

/** What a person with meters and a plug-in tester finds at an outlet, by the places of its contacts. */
export interface OutletReading {
  readonly outlet: PlacedOutlet;
  /** Hot to neutral, hot to ground, neutral to ground; without a ground contact the first alone. */
  readonly hn: VoltReading;
  readonly hg?: VoltReading;
  readonly ng?: VoltReading;
  readonly tester?: TesterReading;
}

/**
 * Readings of outlets in the setting of a circuit, in the order given; outlets that are not in it are left out. Every
 * instrument is put in alone, and all others are away.
 */
export function readOutlets(circuit: Circuit, outlets: readonly PlacedOutlet[]): readonly OutletReading[] {
  const at = circuit.factor.operatingPoint();
  return outlets.flatMap((outlet) => {
    const { device, hot, neutral, ground } = outlet;
    const nodeOf = (node: string): number | undefined => circuit.nodeOf({ kind: "device", device: device.id, node });
    const [h, n] = [nodeOf(hot), nodeOf(neutral)];
    if (h === undefined || n === undefined) return [];
    const g = ground === undefined ? undefined : nodeOf(ground);
    if (g === undefined) return [{ outlet, hn: throughMeters(...pairOf(circuit, at, h, n)) }];
    const port = twoPortOf(circuit, at, h, n, g);
    const { first, second, z11, z22, z12 } = port;
    return [
      {
        outlet,
        hn: throughMeters(first, z11),
        hg: throughMeters(plus(first, second), {
          re: z11.re + 2 * z12.re + z22.re,
          im: z11.im + 2 * z12.im + z22.im,
        }),
        ng: throughMeters(second, z22),
        tester: plugInTester(port),
      },
    ];
  });
}
