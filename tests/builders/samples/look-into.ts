import { openSession } from "../../../shared-model/analysis/session.ts";
import type { Finding } from "../../../shared-model/answers/finding.ts";
import type { Project, StateName } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { sectionProof } from "../../../shared-model/solver/circuit/section-proof.ts";
import type { Section } from "../../../shared-model/solver/section.ts";
import { allSections } from "../../../shared-model/solver/sections.ts";
import { deviceId } from "../ids.ts";

export const findingsOf = (project: Project, state: StateName): readonly Finding[] =>
  openSession(project).report(state).findings;

/** "box-overfull B1", by rule and first subject, sorted. */
export const inShort = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ rule, subjects }) => `${rule} ${subjects[0]?.name}`).sort();

export const isSerious = ({ severity }: Finding): boolean => severity === "danger" || severity === "violation";

const sectionsOf = (project: Project, state: StateName): readonly Section[] =>
  allSections(getInstallation(project, state));

/** The section of a drawing that has only one. */
export function onlySection(project: Project, state: StateName): Section {
  const [section, ...others] = sectionsOf(project, state);
  if (section === undefined || others.length > 0) throw new Error("The drawing has not one section.");
  return section;
}

/** Outlets by the devices that protect them, sorted: "R2 by R1b", "L1 by nothing". */
export function proofs(project: Project, state: StateName): readonly string[] {
  return sectionsOf(project, state)
    .flatMap((section) => {
      const names = new Map(section.sensingDevices().map(({ device }) => [device.id, device.name]));
      return sectionProof(section).outlets.map(({ standing: { outlet }, protectedBy }) => {
        const by = protectedBy.map((id) => names.get(id)).join(" and ");
        return `${outlet.name} by ${by === "" ? "nothing" : by}`;
      });
    })
    .sort();
}

/** Names of the outlets that some switch position makes live with the contacts of a device open, as after its TEST. */
export function liveWithOpen(project: Project, state: StateName, device: string): readonly string[] {
  const section = onlySection(project, state);
  const reach = section.contactsOpen(deviceId(device));
  return section
    .outlets()
    .filter(({ outlet }) => reach.isLive({ device: outlet.device.id, node: outlet.hot }))
    .map(({ outlet }) => outlet.name)
    .sort();
}
