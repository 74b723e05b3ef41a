import type { TerminalName } from "../model/ids.ts";
import type { WireSize } from "../units/wire-size.ts";
import type { EntryKind, Finish, TerminalType } from "./device-type.ts";

interface Choices {
  readonly group?: "LINE" | "LOAD";
  readonly entryKind?: EntryKind;
  readonly holes?: number;
  readonly label?: string;
  readonly thinnest?: WireSize;
  readonly thickest?: WireSize;
}

function terminal(
  name: string,
  label: string,
  finish: Finish,
  purpose: TerminalType["purpose"],
  choices: Choices = {},
): TerminalType {
  const entryKind = choices.entryKind ?? "side-screw";
  return {
    name: name as TerminalName,
    label: choices.label ?? label,
    finish,
    purpose,
    entryKind,
    holes: choices.holes ?? (entryKind === "clamp-plate" ? 2 : 1),
    thinnest: choices.thinnest ?? "14",
    thickest: choices.thickest ?? (entryKind === "clamp-plate" ? "12" : "10"),
    ...(choices.group && { group: choices.group }),
  };
}

export const hot = (name: string, choices?: Choices): TerminalType => terminal(name, "H", "brass", "hot", choices);
export const neutral = (name: string, choices?: Choices): TerminalType =>
  terminal(name, "N", "silver", "neutral", choices);
export const common = (name: string, choices?: Choices): TerminalType =>
  terminal(name, "COM", "black", "common", choices);
export const switched = (name: string, choices?: Choices): TerminalType =>
  terminal(name, "SW", "brass", "switched", choices);
export const traveller = (name: string, choices?: Choices): TerminalType =>
  terminal(name, "T", "brass", "traveller", choices);
export const signal = (name: string, choices?: Choices): TerminalType =>
  terminal(name, "SIG", "none", "signal", choices);
export const ground: TerminalType = terminal("G", "G", "green", "ground", { entryKind: "green-screw" });
/** Pre-attached lead: joined in a splice, never a screw. */
export const lead = { entryKind: "lead", thinnest: "18", thickest: "12" } as const;
