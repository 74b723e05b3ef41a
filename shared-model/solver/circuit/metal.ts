import type { BranchPart } from "./circuit.ts";

/** Branches that join the metal of the wiring where they are closed: conductors and what they are joined and opened by. */
export const JOINED_METAL: ReadonlySet<BranchPart["kind"]> = new Set(["conductor", "jumper", "joint", "contact"]);

/** The same with what joins it to the ground outside: all that carries current without using any. */
export const ALL_METAL: ReadonlySet<BranchPart["kind"]> = new Set([...JOINED_METAL, "main-bond", "earth"]);
