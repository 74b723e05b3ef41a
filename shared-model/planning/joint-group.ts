import type { Severity, Subject } from "../answers/finding.ts";
import type { RoomWay } from "../answers/make-up.ts";
import type { MakeUpStyle } from "../answers/make-up-intent.ts";
import type { Cable } from "../model/cable.ts";
import type { DeviceId, EndKey, TerminalName } from "../model/ids.ts";
import type { Colour } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";

/** What a rule says of a make-up. */
export interface MakeUpFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  readonly subjects: readonly Subject[];
}

export type GroupRole = "hot" | "neutral" | "ground";

/** What a joint must reach besides conductors: one of some terminals that are one point inside a device, or the metal of the box. */
export type Port =
  | { readonly kind: "terminal"; readonly device: DeviceId; readonly terminals: readonly TerminalName[] }
  | { readonly kind: "bond" };

/** Conductor ends and terminals of one enclosure that are to be one net. */
export interface JointGroup {
  /** Short word of the trade card: "HL" hot LINE, "NL" neutral LINE, "HD" hot LOAD, "ND" neutral LOAD, "SW" switched, "E" ground. */
  readonly name: string;
  readonly role: GroupRole;
  /** Ends of cables, in the order of the cables. */
  readonly ends: readonly EndKey[];
  readonly ports: readonly Port[];
  /** Neutral of a multiwire circuit: it never runs through a device. */
  readonly multiwire?: true;
  /** Least size of copper that the breaker ahead, or for grounds its table, asks of a jumper; absent where it is not known. */
  readonly leastAwg?: WireSize;
  /** Colour of new jumpers. */
  readonly colour: Colour;
}

export const USUAL_STYLE: MakeUpStyle = { direct: true, bothHoles: false, noPushIn: false };

/** Why a make-up cannot be generated: what is in the way, and what to do. */
export interface MakeUpRefusal {
  readonly code: string;
  readonly message: string;
  /** Place inside the intent, as a path; absent where it is not one line of it. */
  readonly path?: string;
  /** What the rules would say of it, where that is the reason. */
  readonly findings?: readonly MakeUpFinding[];
  /** Ways to give the box the room that it needs, where it got as far as that. */
  readonly rooms?: readonly RoomWay[];
}

export type Planned<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: MakeUpRefusal };

export const planned = <T>(value: T): Planned<T> => ({ ok: true, value });

export const refused = (code: string, message: string, path?: string): Planned<never> => ({
  ok: false,
  refusal: { code, message, ...(path !== undefined && { path }) },
});

/** Which hot conductors a cable has, in order: neither made for ground nor white or grey. */
export const hotKeysOf = ({ conductors }: Cable): readonly string[] =>
  keysInOrder(conductors).filter((key) => {
    const conductor = conductors[key as keyof typeof conductors];
    return conductor !== undefined && !conductor.grounding && !isNeutralColour(conductor.colour);
  });

export const neutralKeysOf = ({ conductors }: Cable): readonly string[] =>
  keysInOrder(conductors).filter((key) => {
    const conductor = conductors[key as keyof typeof conductors];
    return conductor !== undefined && !conductor.grounding && isNeutralColour(conductor.colour);
  });

export const groundKeysOf = ({ conductors }: Cable): readonly string[] =>
  keysInOrder(conductors).filter((key) => conductors[key as keyof typeof conductors]?.grounding === true);

const keysInOrder = (conductors: Cable["conductors"]): readonly string[] =>
  Object.entries(conductors)
    .sort(([p, a], [q, b]) => a.order - b.order || (p < q ? -1 : 1))
    .map(([key]) => key);

export const isNeutralColour = (colour: Colour): boolean => colour === "white" || colour === "grey";

export const isGroundColour = (colour: Colour): boolean => colour === "bare" || colour === "green";

/** Whether a jumper of this colour may serve a net of that role. */
export const suitsRole = (colour: Colour, role: GroupRole): boolean =>
  role === "ground"
    ? isGroundColour(colour)
    : role === "neutral"
      ? isNeutralColour(colour)
      : !isGroundColour(colour) && !isNeutralColour(colour);
