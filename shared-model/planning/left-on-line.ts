import type { CommandCall } from "../answers/command-call.ts";
import type { LeftOnLine } from "../answers/make-up.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { getEdition } from "../rules/editions/editions.ts";
import { requirementOf } from "../rules/required-protection.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import { sectionOf } from "../solver/sections.ts";
import { beyondCable } from "./beyond-cable.ts";

/**
 * Keeps with each outlet beyond a cable that is left on LINE who decided so and why, where it asks for protection and
 * nothing protects it now.
 */
export function leftCalls(
  project: Project,
  state: StateName,
  box: EnclosureId,
  left: readonly LeftOnLine[],
): readonly CommandCall[] {
  const installation = getInstallation(project, state);
  const section = sectionOf(installation, box);
  if (section === undefined) return [];
  const edition = getEdition(project.edition);
  const proof = sectionProof(section);
  return left.flatMap(({ cable, by, reason }) => {
    const here = cablesInto(installation.cables, box).find((one) => one.cable.id === cable);
    if (here === undefined || (by === "" && reason === "")) return [];
    const boxes = new Set(beyondCable(installation, here).boxes.map(({ id }) => id));
    return section.outlets().flatMap((standing): readonly CommandCall[] => {
      const { key } = standing.outlet;
      if (!boxes.has(standing.enclosure.id) || (proof.of(key)?.protectedBy.length ?? 0) > 0) return [];
      const isWished = installation.intent.outlets[key]?.wish === "protect";
      if (!isWished && requirementOf(project, standing, edition).required !== true) return [];
      const wish = { wish: "decided-not", ...(by !== "" && { by }), ...(reason !== "" && { reason }) };
      return [{ command: "set-outlet-wish", args: { state, outlet: key, wish } }];
    });
  });
}
