import type { DeviceId } from "../model/ids.ts";
import type { Edition, Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { amendedEdition, isSwitchedOff } from "../rules/amendments.ts";
import { outletNotProtected } from "../rules/checks/outlet-not-protected.ts";
import { getEdition } from "../rules/editions/editions.ts";
import { decisiveProof, nameOfDevice, proofWords } from "../rules/proof-words.ts";
import { requirementOf } from "../rules/required-protection.ts";
import { type PlacedProof, proveInstallation } from "../solver/circuit/proof.ts";
import {
  type DeviceProof,
  type OutletProof,
  PROOF_TESTS,
  type ProofTest,
  type Verdict,
} from "../solver/circuit/proof-answers.ts";

/** Who asks that an outlet be protected. */
export type AskedBy =
  | { readonly kind: "section"; readonly section: string }
  | { readonly kind: "wish" }
  | { readonly kind: "nobody" }
  /** Its box is in no room, so that the list of places cannot be read. */
  | { readonly kind: "room-unknown" };

export interface NamedDevice {
  readonly id: DeviceId;
  readonly name: string;
}

/** One line of the protection schedule. */
export interface ProtectionLine {
  readonly proof: PlacedProof;
  readonly room?: string;
  readonly askedBy: AskedBy;
  /** Protected in every setting in which it is live, by each of `protectedBy` or by one or another of them. */
  readonly isProtected: boolean;
  readonly protectedBy: readonly NamedDevice[];
  /** The device that `tests` are told of; absent where none bears on it. */
  readonly told?: NamedDevice;
  readonly tests: Readonly<Record<ProofTest, Verdict>>;
  readonly reason: string;
}

export interface ProtectionSchedule {
  readonly state: StateName;
  readonly edition: Edition;
  /** The edition names the places in which protection is asked; without it only wishes are known. */
  readonly isListHeld: boolean;
  readonly lines: readonly ProtectionLine[];
}

/** Outlet by outlet: who asks for its protection, what protects it, and which test fails. Sorted by box, then in it. */
export function proveState(project: Project, state: StateName): ProtectionSchedule {
  const installation = getInstallation(project, state);
  const edition = amendedEdition(getEdition(project.edition), outletNotProtected, project.amendments);
  const isJudged = !isSwitchedOff(outletNotProtected, project.amendments);
  const askedBy = ({ standing }: OutletProof): AskedBy => {
    const need = isJudged ? requirementOf(project, standing, edition) : ({ required: false } as const);
    if (need.required === true) return { kind: "section", section: need.section.section };
    if (installation.intent.outlets[standing.outlet.key]?.wish === "protect") return { kind: "wish" };
    return need.required === false ? { kind: "nobody" } : { kind: "room-unknown" };
  };
  const order = new Map(Object.values(installation.enclosures).map(({ id, order: at }) => [id, at]));
  const at = ({ standing }: OutletProof): number => order.get(standing.enclosure.id) ?? 0;
  const proofs = [...proveInstallation(installation)].sort((p, q) => at(p) - at(q));
  return {
    state,
    edition: project.edition,
    isListHeld: edition.values.protectedPlaces !== undefined,
    lines: proofs.map((proof) => lineOf(project, proof, askedBy(proof))),
  };
}

function lineOf({ rooms }: Project, proof: PlacedProof, askedBy: AskedBy): ProtectionLine {
  const { section, standing, verdict, protectedBy } = proof;
  const { roomId } = standing.enclosure;
  const room = roomId === undefined ? undefined : rooms[roomId]?.name;
  const told = decisiveProof(section, proof);
  const named = (id: DeviceId): NamedDevice => ({ id, name: nameOfDevice(section, id) });
  return {
    proof,
    ...(room !== undefined && { room }),
    askedBy,
    isProtected: verdict === "all" || verdict === "by-setting",
    protectedBy: protectedBy.map(named),
    ...(told !== undefined && { told: named(told.device) }),
    tests: testsOf(proof, told),
    reason: proofWords(section, proof, told),
  };
}

/** Without a device that bears on it there is nothing that isolates, balances or detects; and nothing that could trip. */
function testsOf(proof: OutletProof, one: DeviceProof | undefined): ProtectionLine["tests"] {
  const all = (verdict: Verdict, P6: Verdict): ProtectionLine["tests"] =>
    Object.fromEntries(PROOF_TESTS.map((test) => [test, test === "P6" ? P6 : verdict])) as ProtectionLine["tests"];
  if (proof.verdict === "not-live") return all("cannot-tell", "cannot-tell");
  if (one === undefined) return all("fail", "pass");
  if (proof.verdict !== "by-setting") return one.tests;
  const together = proof.devices.filter(({ device }) => proof.protectedBy.includes(device));
  const worst = together.map(({ tests }) => tests.P6);
  return all("pass", worst.includes("fail") ? "fail" : worst.includes("cannot-tell") ? "cannot-tell" : "pass");
}
