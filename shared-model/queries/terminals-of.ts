import type { EntryKind, TerminalType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { TerminalName } from "../model/ids.ts";

/** A terminal of a placed device, with the entry kind that this device uses. */
export interface PlacedTerminal extends TerminalType {
  readonly entryKind: EntryKind;
}

const cache = new Map<string, readonly PlacedTerminal[]>();

/** Terminals of a device. Its own entry kind replaces that of its side screws, push-ins and clamp plates, never of leads and green screws. */
export function terminalsOf(device: Device): readonly PlacedTerminal[] {
  const key = `${device.type}|${device.entryKind ?? ""}`;
  let terminals = cache.get(key);
  if (terminals === undefined) {
    terminals = getDeviceType(device.type).terminals.map((terminal) => withEntryKind(terminal, device.entryKind));
    cache.set(key, terminals);
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
