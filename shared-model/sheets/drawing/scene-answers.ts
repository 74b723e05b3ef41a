import type { FillLedger } from "../../answers/fill.ts";
import type { Severity } from "../../answers/finding.ts";
import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type ConductorKey, cableEnd, type DeviceId, type EnclosureId } from "../../model/ids.ts";
import { toDecimal } from "../../units/volume.ts";

/** Gravest first. */
const ORDER: readonly Severity[] = ["danger", "violation", "caution", "advice"];

/** The gravest of what the checks say of a box and what is in it. */
export function worstAt({ state, findings }: SheetInput, box: Enclosure): Severity | undefined {
  const all = (state === "proposed" ? findings.proposed : findings.asFound) ?? [];
  const ids = new Set<string>([
    box.id,
    ...[box.devices, box.splices, box.places, box.jumpers, box.entries].flatMap((table) => Object.keys(table)),
  ]);
  const own = all.filter(({ subjects }) => subjects.some(({ id }) => ids.has(id))).map(({ severity }) => severity);
  return ORDER.find((severity) => own.includes(severity));
}

export const ledgerOf = ({ state, fill }: SheetInput, id: EnclosureId): FillLedger | undefined =>
  (state === "proposed" ? fill.proposed : fill.asFound)?.find(({ enclosure }) => enclosure === id)?.ledger;

/** How full a box is, 1 is full; undefined where that is not known. */
export function ratioOf(ledger: FillLedger | undefined): number | undefined {
  if (ledger === undefined || ledger.available === undefined || ledger.verdict === "not-applicable") return undefined;
  return toDecimal(ledger.total) / Math.max(toDecimal(ledger.available), 0.0001);
}

/** Whether all insulated conductors of a cable lie behind a ground-fault device, at one end at least. */
export function isOnLoad({ shownRoles }: SheetInput, cable: Cable): boolean {
  const insulated = (Object.keys(cable.conductors) as ConductorKey[]).filter(
    (key) => !cable.conductors[key]?.grounding,
  );
  if (insulated.length === 0) return false;
  return (["a", "b"] as const).some((side) => {
    const at = cable.sides[side];
    const behind = "enclosure" in at ? shownRoles[at.enclosure]?.behind : undefined;
    return behind !== undefined && insulated.every((key) => behind[cableEnd(cable.id, key, side)] !== undefined);
  });
}

/** Names of outlets that a device protects besides its own. */
export const protectedElsewhere = ({ protection }: SheetInput, device: DeviceId): readonly string[] =>
  protection.rows
    .filter(({ protectedBy, outlet }) => protectedBy.some(({ id }) => id === device) && outlet.id !== device)
    .map(({ outlet }) => outlet.name);
