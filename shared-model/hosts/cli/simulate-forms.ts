import type { OutletDropAnswer } from "../../answers/outlet-drop.ts";
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
    outlets: outlets.map(({ outlet, hn, hg, ng, tester, drop, stated }) => ({
      id: outlet.key,
      name: outlet.name,
      hn: hn.volts,
      hg: hg?.volts ?? null,
      ng: ng?.volts ?? null,
      floating: Object.entries({ hn, hg, ng }).flatMap(([pair, reading]) => (reading?.floating ? [pair] : [])),
      tester: tester?.name ?? null,
      dropV: drop?.dropV ?? null,
      dropPercent: drop?.percent ?? null,
      atStatedLoad: statedAsJson(stated),
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

/** What is lost under the stated load; the names of cables without a length where that keeps it from being known. */
function statedAsJson(stated: OutletDropAnswer | undefined): object | null {
  if (stated === undefined) return null;
  if (!stated.known)
    return stated.why === "no-length" ? { lengthsNotRecorded: stated.cables.map(({ name }) => name) } : null;
  const { load, dropV, percent, limit, longest } = stated;
  return { load, dropV, dropPercent: percent, limitPercent: limit, longest: longest?.name ?? null };
}

function statedText(stated: OutletDropAnswer | undefined): string {
  if (stated === undefined) return "-";
  if (stated.known)
    return `${rounded(stated.dropV)} V, ${rounded(stated.percent)} %${stated.isPast ? `, past ${stated.limit} %` : ""}`;
  if (stated.why === "no-rating") return `rating of ${stated.breaker} not recorded`;
  if (stated.why === "not-fed") return "-";
  const [first, ...more] = stated.cables;
  return `length of ${first?.name}${more.length > 0 ? ` and ${more.length} more` : ""} not recorded`;
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
      ["outlet", "H-N", "H-G", "N-G", "plug-in tester", "voltage drop", "at stated load"],
      ...outlets.map(({ outlet, hn, hg, ng, tester, drop, stated }) => [
        outlet.name,
        ...[hn, hg, ng].map(meterText),
        tester === undefined ? "-" : TESTER_WORDS[tester.name].title,
        drop === undefined ? "-" : `${rounded(drop.dropV)} V, ${rounded(drop.percent)} %`,
        statedText(stated),
      ]),
    ]),
    statedLoads(outlets),
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

/** The loads that are stated, once each with the outlets they are for. */
function statedLoads(outlets: Simulated["outlets"]): readonly string[] {
  const byLoad = new Map<string, string[]>();
  for (const { outlet, stated } of outlets)
    if (stated?.known) byLoad.set(stated.load, [...(byLoad.get(stated.load) ?? []), outlet.name]);
  return [...byLoad].map(([load, names]) => `Stated load at ${names.join(", ")}: ${load}.`);
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
