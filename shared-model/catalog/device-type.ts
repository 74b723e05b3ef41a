import type { Device } from "../model/device.ts";
import type { Half, TerminalName } from "../model/ids.ts";
import type { WireSize } from "../units/wire-size.ts";

/** How a conductor is held at a terminal, and so how many it takes: one per screw, one per hole of a clamp plate. */
export type EntryKind =
  | "side-screw"
  | "clamp-plate"
  | "push-in"
  | "lead"
  | "lug"
  | "neutral-bar"
  | "ground-bar"
  | "green-screw";

/** Finish of a terminal as the trade marks it. */
export type Finish = "brass" | "silver" | "green" | "black" | "none";

export interface TerminalType {
  readonly name: TerminalName;
  /** Letter or short word shown beside it: "H", "N", "G", "COM". */
  readonly label: string;
  readonly finish: Finish;
  /** Which side of a ground-fault device it is on. */
  readonly group?: "LINE" | "LOAD";
  readonly purpose: "hot" | "neutral" | "ground" | "common" | "switched" | "traveller" | "signal";
  readonly entryKind: EntryKind;
  /** Number of separate places for an end. */
  readonly holes: number;
  readonly thinnest: WireSize;
  readonly thickest: WireSize;
}

/**
 * A node inside a device: a terminal, a slot of its face, or, in a panel, `@leg0`, `@leg1` (the bus legs of a breaker),
 * `@busA`, `@busB`, `@busC`, `@neutral` and `@ground` of the panel it sits in.
 */
export type DeviceNode = string;

/**
 * When a path inside a device conducts: always; while a break-off tab is intact; in one position of its handle; while a
 * ground-fault device is reset; at its face (reset, or tied to LOAD); while a breaker is on; or only through a load.
 */
export type PathWhen =
  | "always"
  | "hot-tab"
  | "neutral-tab"
  | "on"
  | "off"
  | "up"
  | "down"
  | "straight"
  | "crossed"
  | "reset"
  | "face"
  | "breaker-on"
  | "load";

export interface DevicePath {
  readonly a: DeviceNode;
  readonly b: DeviceNode;
  readonly when: PathWhen;
  /** The current through it is summed by the sensor of the device, toward `b`. */
  readonly sensed?: true;
  /** What it uses of the watts of its device, where several paths share them. */
  readonly watts?: number;
}

/** What a person plugs into, or what the device itself uses: one outlet, or a half that exists only where a tab is off. */
export interface DeviceOutlet {
  readonly half?: Half;
  readonly hot: DeviceNode;
  readonly neutral: DeviceNode;
  readonly ground?: DeviceNode;
}

export interface SensingType {
  /** Class A personnel protection (trips at 6 mA), arc-fault only, or equipment protection. */
  readonly class: "personnel" | "arc-fault" | "equipment";
  /** Also detects arcs. */
  readonly arcFault: boolean;
  /** Which conductors its contacts open. */
  readonly opens: readonly ("hot" | "neutral")[];
  readonly line: { readonly hot: readonly DeviceNode[]; readonly neutral?: DeviceNode };
  readonly load: { readonly hot: readonly DeviceNode[]; readonly neutral?: DeviceNode };
}

export type DeviceFamily =
  | "receptacle"
  | "ground-fault-receptacle"
  | "ground-fault-blank"
  | "switch"
  | "dimmer"
  | "timer"
  | "combination"
  | "luminaire"
  | "fan"
  | "alarm"
  | "appliance"
  | "breaker"
  | "fuse"
  | "neutral-bar"
  | "ground-bar"
  | "lugs"
  | "disconnect";

export interface DeviceType {
  readonly id: string;
  readonly title: string;
  /** Short words under its name on the sheet. */
  readonly caption: string;
  readonly family: DeviceFamily;
  /** Id in the glyph sheet. */
  readonly glyph: string;
  readonly where: "box" | "panel";
  /** Yokes counted by box fill; 0 for what hangs outside the box or sits in a panel. */
  readonly yokes: number;
  /** Single-gang widths that its yoke covers. */
  readonly gangs: number;
  readonly terminals: readonly TerminalType[];
  readonly paths: readonly DevicePath[];
  readonly outlets: readonly DeviceOutlet[];
  /** Positions of its handle, first = the one it is drawn in; empty when it has none. */
  readonly positions: readonly ("on" | "off" | "up" | "down" | "straight" | "crossed")[];
  readonly sensing?: SensingType;
  /** Facts that a device of this type starts with. */
  readonly defaults: Partial<Device>;
  /** Where its numbers come from. */
  readonly source: string;
}
