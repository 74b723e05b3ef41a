import type { OutletKey } from "../model/ids.ts";
import type { Joining, PathStep, Section } from "../solver/section.ts";
import { type UngroundedFace, ungroundedFaces } from "./no-ground.ts";
import { enclosuresOfStep } from "./path-words.ts";

/** What joins neutral and ground in boxes and between them. What a panel says of itself is told once, there. */
export const joinedOutsidePanels = (section: Section): readonly Joining[] =>
  section.neutralsOnGround().filter(({ by }) => !isOfPanel(section, by));

function isOfPanel({ installation }: Section, by: PathStep): boolean {
  const [first, last] = enclosuresOfStep(by).map((id) => installation.enclosures[id]);
  if (by.kind !== "cable") return first?.kind === "panel";
  const grounding = installation.cables[by.cable]?.conductors[by.conductor]?.grounding === true;
  return grounding && (first?.kind === "panel" || last?.kind === "panel");
}

/** Whether the ground that came along with the supply of a receptacle is on the neutral instead of a ground. */
export const hasNeutralForGround = (section: Section, { device, ground, neverHad }: UngroundedFace): boolean =>
  !neverHad && section.reach().isGrounded({ device: device.id, node: ground });

/** Outlets of those: none has a ground once the two are parted. */
export const outletsWithNeutralForGround = (section: Section): readonly OutletKey[] =>
  ungroundedFaces(section)
    .filter((face) => hasNeutralForGround(section, face))
    .flatMap(({ outlets }) => outlets.map(({ outlet }) => outlet.key));
