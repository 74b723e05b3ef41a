import type { DeviceType } from "../../catalog/device-type.ts";

/** What a device must be or have for a field to mean anything on it. */
export type DeviceTrait =
  | "in-box"
  | "yoke"
  | "receptacle"
  | "hot-tab"
  | "neutral-tab"
  | "entry-choice"
  | "line-load"
  | "dimmer"
  | "breaker"
  | "user";

const CHANGEABLE: ReadonlySet<string> = new Set(["side-screw", "clamp-plate", "push-in"]);
const USERS: ReadonlySet<string> = new Set(["luminaire", "fan", "alarm", "appliance"]);

/** Whether devices of a type have a trait. */
export function hasTrait(type: DeviceType, trait: DeviceTrait): boolean {
  switch (trait) {
    case "in-box":
      return type.where === "box";
    case "yoke":
      return type.yokes > 0;
    case "receptacle":
      return type.outlets.length > 0 && type.yokes > 0;
    case "hot-tab":
    case "neutral-tab":
      return type.paths.some((path) => path.when === trait);
    case "entry-choice":
      return type.where === "box" && type.terminals.some((terminal) => CHANGEABLE.has(terminal.entryKind));
    case "dimmer":
      return type.family === "dimmer";
    case "line-load":
      return type.where === "box" && type.sensing !== undefined;
    case "breaker":
      return type.family === "breaker" || type.family === "fuse";
    case "user":
      return USERS.has(type.family);
  }
}
