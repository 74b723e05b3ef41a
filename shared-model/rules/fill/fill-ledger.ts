import type { FillLedger } from "../../answers/fill.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { getEndFacts } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { type CubicInches, exceedsVolume, subtractVolume } from "../../units/volume.ts";
import { thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { EditionData } from "../editions/edition-data.ts";
import type { BoxContents } from "./box-contents.ts";
import { roomIn, whyNotInTable } from "./box-room.ts";
import { connectorsIn } from "./connectors-in.ts";
import { countFill } from "./count-fill.ts";

const wording = catalogue({
  panelNotCounted: "A panel is not an outlet or junction box: the rules for boxes do not count it.",
  clampsUnknown: "Whether it has internal clamps is not recorded; they are counted as present.",
  volumeUnknown: "The volume of the box is not recorded.",
});

const CM_PER_IN = 2.54;
const A_PANEL = wording.panelNotCounted;
const CLAMPS_UNKNOWN = wording.clampsUnknown;

/** The box-fill ledger of an enclosure as drawn. Clamps that are not recorded are counted, and the reason says so. */
export function fillLedger(installation: Installation, enclosure: Enclosure, edition: EditionData): FillLedger {
  if (enclosure.kind === "panel") return notApplicable(A_PANEL);
  const counted = countFill(boxContents(installation, enclosure, edition), edition);
  if (!counted.applies) return notApplicable(counted.reason);
  const { lines, total, totalMl } = counted;
  const clampsCount = edition.values.clampAllowances.value > 0;
  const notes = enclosure.internalClamps === "unknown" && clampsCount ? { reason: CLAMPS_UNKNOWN } : {};
  const inMl = totalMl === undefined ? {} : { totalMl };
  const available = roomIn(enclosure, edition);
  if (available === undefined) {
    const reason = [whyNotInTable(enclosure, edition) ?? wording.volumeUnknown, ...Object.values(notes)].join(" ");
    return { lines, total, ...inMl, verdict: "volume-unknown", reason };
  }
  const verdict = exceedsVolume(total, available) ? "overfull" : "fits";
  return { lines, total, ...inMl, available, spare: subtractVolume(available, total), verdict, ...notes };
}

const notApplicable = (reason: string): FillLedger => ({
  lines: [],
  total: 0 as CubicInches,
  verdict: "not-applicable",
  reason,
});

/** What a drawn box holds. Jumpers stay inside and count nothing; a device without a conductor goes by the largest present. */
export function boxContents(
  installation: Installation,
  box: Box,
  edition: EditionData,
  clamps = box.internalClamps === "present" || box.internalClamps === "unknown",
): BoxContents {
  const conductors: { awg: WireSize; count: number; as: "ends" | "through" | "loop" }[] = [];
  const grounds: { awg: WireSize; count: number; isolated: boolean }[] = [];
  for (const { cable } of cablesInto(installation.cables, box.id)) {
    for (const { awg, grounding } of Object.values(cable.conductors)) {
      if (grounding) grounds.push({ awg, count: 1, isolated: false });
      else conductors.push({ awg, count: 1, as: "ends" });
    }
  }
  for (const pass of Object.values(box.passThroughs)) {
    // Where no length is told, a loop counts as straight through.
    const looped = (pass.loopLengthIn ?? 0) >= (edition.values.loopLengthIn?.value ?? Number.POSITIVE_INFINITY);
    for (const key of pass.conductors) {
      const conductor = installation.cables[pass.cable]?.conductors[key];
      if (conductor === undefined) continue;
      const { awg, grounding } = conductor;
      if (grounding) grounds.push({ awg, count: 1, isolated: false });
      else conductors.push({ awg, count: 1, as: looped ? "loop" : "through" });
    }
  }
  const largest = thickestOf([...conductors, ...grounds].map(({ awg }) => awg));
  return {
    conductors,
    grounds,
    clamps,
    supports: box.supports,
    devices: inOrder(box.devices).flatMap((device) => yokesOf(installation, box, device, largest)),
    terminalBlocks: box.terminalBlocks ?? [],
    ...(edition.values.connectorsPerAllowance !== undefined && { connectors: connectorsIn(installation, box) }),
  };
}

function yokesOf(
  installation: Installation,
  box: Box,
  device: Device,
  largest: WireSize | undefined,
): BoxContents["devices"] {
  const { yokes, gangs } = getDeviceType(device.type);
  const landed = terminalsOf(device).flatMap(({ name }) => landedAt(box, device.id, name));
  const awg = thickestOf(landed.map(({ end }) => getEndFacts(installation, box, end).awg)) ?? largest;
  const { bodyDepthIn } = device;
  const depth = bodyDepthIn === undefined ? {} : { depthCm: bodyDepthIn * CM_PER_IN };
  return awg === undefined ? [] : [{ awg, gangs: yokes * gangs, ...depth }];
}
