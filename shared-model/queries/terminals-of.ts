import type { EntryKind, TerminalType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { TerminalName } from "../model/ids.ts";

/** A terminal of a placed device, with the entry kind that this device uses. */
export interface PlacedTerminal extends TerminalType {
  readonly entryKind: EntryKind;
}

/** By type, then by entry kind: a key made of both would be a new text at every question. */
const cache = new Map<Device["type"], Map<Device["entryKind"], readonly PlacedTerminal[]>>();

/** Terminals of a device. Its own entry kind replaces that of its side screws, push-ins and clamp plates, never of leads and green screws. */
export function terminalsOf(device: Device): readonly PlacedTerminal[] {
  const { type, entryKind } = device;
  let ofType = cache.get(type);
  if (ofType === undefined) {
    ofType = new Map();
    cache.set(type, ofType);
  }
  let terminals = ofType.get(entryKind);
  if (terminals === undefined) {
    terminals = getDeviceType(type).terminals.map((terminal) => withEntryKind(terminal, entryKind));
    ofType.set(entryKind, terminals);
  }
  return terminals;
}

const CHANGEABLE: ReadonlySet<EntryKind> = new Set(["side-screw", "clamp-plate", "push-in"]);

function withEntryKind(terminal: TerminalType, chosen: Device["entryKind"]): PlacedTerminal {
  if (chosen === undefined || !CHANGEABLE.has(terminal.entryKind)) return terminal;
  return { ...terminal, entryKind: chosen, holes: chosen === "clamp-plate" ? 2 : 1 };
}

export const findTerminal = (device: Device, name: TerminalName): PlacedTerminal | undefined =>
  terminalsOf(device).find((terminal) => terminal.name === name);

/** How a terminal is written in a message: "R1b LINE H", "S1 COM", "R5 H". */
export function nameOfTerminal(device: Device, name: TerminalName): string {
  const terminal = findTerminal(device, name);
  if (terminal === undefined) return `${device.name} ${name}`;
  return [device.name, terminal.group, terminal.label].filter(Boolean).join(" ");
}
