import type { SpliceMember } from "../queries/connector-takes.ts";

/** Joints without a connector; of what is in them a rule of its own tells. */
export const NO_CONNECTOR: ReadonlySet<string> = new Set(["none", "taped", "soldered"]);

/** Two different metals are in it. */
export const isMixed = (members: readonly Pick<SpliceMember, "material">[]): boolean =>
  new Set(members.map(({ material }) => material)).size > 1;
