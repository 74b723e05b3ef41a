import { onOneLine } from "../../format/json-path.ts";
import type { VoltReading } from "../../solver/circuit/instruments.ts";
import { TESTER_WORDS } from "../../solver/circuit/plug-in-tester.ts";
import { inputName } from "./read-input.ts";
import { nodeName, type Simulated } from "./simulated-file.ts";
import { table } from "./table.ts";

/** As scripts read it. Voltages of nodes are phasors against earth. What there is none of is null. */
export function simulatedAsJson(simulated: Simulated): object {
  const { file, state, circuit, volts, placesAt, nameOf, outlets, devices, breakers } = simulated;
  const nodes: Record<string, object> = {};
  for (let node = 0; node < circuit.network.nodeCount; node++)
    nodes[nodeName(node)] = { re: volts.re[node], im: volts.im[node], places: placesAt(node) };
  return {
    file,
    state,
    nodes,
    outlets: outlets.map(({ outlet, hn, hg, ng, tester, drop }) => ({
      id: outlet.key,
      name: outlet.name,
      hn: hn.volts,
      hg: hg?.volts ?? null,
      ng: ng?.volts ?? null,
      floating: Object.entries({ hn, hg, ng }).flatMap(([pair, reading]) => (reading?.floating ? [pair] : [])),
      tester: tester?.name ?? null,
      dropV: drop?.dropV ?? null,
      dropPercent: drop?.percent ?? null,
    })),
    devices: devices.map(({ device, residualMa, trips, why, powered, orFirst }) => ({
      id: device,
      name: nameOf(device),
      residualMa,
      trips,
      why,
      powered,
      orFirst: orFirst.map(nameOf),
    })),
    breakers: breakers.map(({ device, amps, trips, why, orFirst }) => ({
      id: device,
      name: nameOf(device),
      amps,
      trips,
      why,
      orFirst: orFirst.map(nameOf),
    })),
    liveAfter: liveNames(simulated),
    assumptions: circuit.assumptions,
  };
}

/** Contacts that are live after all trips, by the names of their outlets. */
function liveNames({ liveAfter, outlets }: Simulated): readonly object[] {
  const names = new Map(outlets.map(({ outlet: { key, name } }) => [key, name]));
  return liveAfter.map(({ outlet, contact, volts }) => ({
    id: outlet,
    name: names.get(outlet) ?? outlet,
    contact,
    volts,
  }));
}

/** As a person reads it. */
export function simulatedAsText(simulated: Simulated): string {
  const { file, state, circuit, outlets, devices, breakers, nameOf } = simulated;
  const blocks = [
    [`${inputName(file)}: ${state === "as-found" ? "as found" : "proposed"}`],
    table([
      ["outlet", "H-N", "H-G", "N-G", "plug-in tester", "voltage drop"],
      ...outlets.map(({ outlet, hn, hg, ng, tester, drop }) => [
        outlet.name,
        ...[hn, hg, ng].map(meterText),
        tester === undefined ? "-" : TESTER_WORDS[tester.name].title,
        drop === undefined ? "-" : `${rounded(drop.dropV)} V, ${rounded(drop.percent)} %`,
      ]),
    ]),
    ...(outlets.some(({ hn, hg, ng }) => hn.floating || hg?.floating || ng?.floating)
      ? [["~ f: it floats; a meter of high impedance reads that, one of low impedance less than half of it."]]
      : []),
    table([
      ["ground-fault device", "residual", "trips", "why"],
      ...devices.map(({ device, residualMa, trips, why }) => [
        nameOf(device),
        `${residualMa.toFixed(1)} mA`,
        trips,
        why,
      ]),
    ]),
    table([
      ["breaker", "current", "trips"],
      ...breakers.map(({ device, amps, trips }) => [nameOf(device), `${amps.toFixed(2)} A`, trips]),
    ]),
    afterTrips(simulated),
    [...circuit.assumptions],
    ["Computed from the drawing; nothing was measured, and it authorises no work on energised parts."],
  ];
  return blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => `${lines.map(onOneLine).join("\n")}\n`)
    .join("\n");
}

/** Nothing where nothing trips. */
function afterTrips({ outcomes, nameOf, liveAfter, outlets }: Simulated): readonly string[] {
  const opened = outcomes.filter((outcome) => outcome.opened.length > 0);
  if (opened.length === 0) return [];
  const names = new Map(outlets.map(({ outlet: { key, name } }) => [key, name]));
  const live = [...new Set(liveAfter.map(({ outlet }) => names.get(outlet) ?? outlet))];
  return [
    ...opened.map(
      ({ opened: steps }) => `Opens: ${steps.map((some) => some.map(nameOf).join(" and ")).join(", then ")}.`,
    ),
    live.length === 0 ? "No outlet stays live." : `Still live after that: ${live.join(", ")}.`,
  ];
}

const meterText = (reading: VoltReading | undefined): string =>
  reading === undefined ? "-" : reading.floating ? `~${reading.volts.toFixed(0)} f` : rounded(reading.volts);

/** One decimal, and never a minus before nothing. */
const rounded = (value: number): string => (Math.abs(value) < 0.05 ? "0.0" : value.toFixed(1));
