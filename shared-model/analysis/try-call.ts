import type { OutletAnswer } from "../answers/circuit.ts";
import type { CommandCall } from "../answers/command-call.ts";
import type { ScopeKey } from "../answers/finding.ts";
import { type Edit, runCommand } from "../commands/run-command.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { type DeviceId, type EnclosureId, parseOutlet } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { isSerious, severityRank } from "../model/severity.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { listed } from "../rules/rule-parts.ts";
import { type CheckDelta, type CheckState, checkAll, checkEdit } from "./check-state.ts";
import type { PreviewResult } from "./protocol.ts";
import { type FormerDevices, formerKeys, type Statement, statementsOf } from "./statements.ts";

const wording = catalogue({
  bringsMore: (count: Part) => `It would bring ${count} more at danger or violation.`,
  leavesWithout: (outlets: Part) => `It would leave ${outlets} without ground-fault protection.`,
  stays: "It does not remove this finding.",
  bringsDanger: (rule: Part, message: Part) => `It would bring a danger (${rule}): ${message}`,
  bringsViolation: (rule: Part, message: Part) => `It would bring a violation (${rule}): ${message}`,
});

/** What a command would bring. */
export type Brings = Exclude<PreviewResult, { readonly refused: string }>;

export type TriedCall =
  | { readonly done: false; readonly refused: string }
  | { readonly done: true; readonly edit: Edit; readonly brings: Brings };

/**
 * Tries a command on a copy of the document and tells what it would bring in the checked state. Something is new only
 * when nothing of the kind was there before, shown or folded under its cause, under the name of a replaced device too,
 * or about more things at once, or when it is a worse danger or violation now. Severities are those of the rules: nothing is lowered for being an
 * existing condition.
 * @param former Devices of proposed that replace others, as the document stands.
 * @param mends Key of the finding that it is to mend.
 * @param fillOf An enclosure whose box fill is asked for.
 */
export function tryCall(
  checked: CheckState,
  former: FormerDevices,
  copy: Project,
  call: CommandCall,
  mends?: string,
  fillOf?: EnclosureId,
): TriedCall {
  const ran = runCommand(copy, call);
  if (!ran.ok) return { done: false, refused: ran.refusal.message };
  const delta = checkEdit(checked, ran.project, ran.patches);
  const after = delta ?? checkAll(ran.project, checked.state, checked.watch);
  const scopes = new Set([...after.scopes.keys(), ...(delta === undefined ? checked.scopes.keys() : [])]);
  const was = saidIn(checked, scopes).map((said) => ({ said, keys: formerKeys(said, former) }));
  const formerThen = withReplacedIn(after, ran.project, checked, former);
  const is = saidIn(after, scopes).map((said) => ({ said, keys: formerKeys(said, formerThen) }));

  const worstBefore = new Map<string, number>();
  for (const {
    said,
    keys: [key = said.key],
  } of was)
    worstBefore.set(key, Math.min(severityRank(said.severity), worstBefore.get(key) ?? severityRank("advice")));
  const shownAfter = shownIn(after, scopes);
  const introduces = is.flatMap(({ said, keys }) => {
    if (!shownAfter.has(said.key)) return [];
    const before = Math.min(...keys.map((key) => worstBefore.get(key) ?? Number.POSITIVE_INFINITY));
    const isNew =
      before === Number.POSITIVE_INFINITY
        ? !was.some((one) => isPartOf(said, one.said))
        : isSerious(said) && severityRank(said.severity) < before;
    return isNew ? { rule: said.rule, severity: said.severity, message: said.message } : [];
  });
  const left = new Set(is.flatMap(({ keys }) => keys));
  const isGone = ({ keys: [key] }: { readonly keys: readonly string[] }) => key !== undefined && !left.has(key);
  const shownBefore = shownIn(checked, scopes);
  const brings = {
    introduces,
    repairs: was.filter((one) => shownBefore.has(one.said.key) && isGone(one)).length,
    unprotects: unprotected(checked, after, delta === undefined, former, formerThen),
  };
  const mended = mends === undefined || was.some((one) => one.said.key === mends && isGone(one));
  const objection = judgeFix({ ...brings, mended });
  const fill = fillOf && after.own.get(fillOf)?.ledger;
  return {
    done: true,
    edit: ran,
    brings: { ...brings, ...(objection !== undefined && { objection }), ...(fill !== undefined && { fill }) },
  };
}

/**
 * Why a command is not to be taken for a repair, in sentences; undefined when nothing speaks against it. A repair may
 * not bring a danger or a violation, may not take protection from any outlet, and must remove what it is to mend.
 */
export function judgeFix({
  introduces,
  unprotects,
  mended,
}: Pick<Brings, "introduces" | "unprotects"> & { readonly mended: boolean }): string | undefined {
  const [worst, ...others] = introduces
    .filter(isSerious)
    .sort((a, b) => severityRank(a.severity) - severityRank(b.severity));
  const sentences = [
    ...(worst === undefined
      ? []
      : [(worst.severity === "danger" ? wording.bringsDanger : wording.bringsViolation)(worst.rule, worst.message)]),
    ...(others.length === 0 ? [] : [wording.bringsMore(others.length)]),
    ...(unprotects.length === 0 ? [] : [wording.leavesWithout(listed(unprotects))]),
    ...(mended ? [] : [wording.stays]),
  ];
  return sentences.length === 0 ? undefined : sentences.join(" ");
}

/**
 * Whether it says again of some things what was said of them and of more: two ends half connected, of which one was
 * landed. Not when it is worse now.
 */
function isPartOf(said: Statement, before: Statement): boolean {
  if (said.rule !== before.rule || said.subjects.length === 0) return false;
  if (severityRank(before.severity) > severityRank(said.severity)) return false;
  return said.subjects.every(({ kind, id }) => before.subjects.some((one) => one.kind === kind && one.id === id));
}

type Scopes = Pick<CheckDelta, "scopes">;

const saidIn = ({ scopes }: Scopes, keys: Iterable<ScopeKey>): readonly Statement[] =>
  [...keys].flatMap((key) => {
    const scope = scopes.get(key);
    return scope === undefined ? [] : statementsOf(scope);
  });

const shownIn = ({ scopes }: Scopes, keys: Iterable<ScopeKey>): ReadonlySet<string> =>
  new Set([...keys].flatMap((key) => scopes.get(key)?.answers.findings.map((finding) => finding.key) ?? []));

/** The command may have put devices in the place of others; it has touched every enclosure where it did. */
function withReplacedIn(
  after: CheckDelta,
  project: Project,
  { state }: CheckState,
  former: FormerDevices,
): FormerDevices {
  if (state === "as-found") return former;
  const then = new Map(former);
  const { enclosures } = getInstallation(project, state);
  for (const id of after.own.keys())
    for (const device of Object.values(enclosures[id]?.devices ?? {}))
      if (device.replaces !== undefined) then.set(device.id, device.replaces);
  return then;
}

/** Names of outlets that were protected and whose every successor is not, or that have none. */
function unprotected(
  { outlets: before }: CheckState,
  { outlets: after }: CheckDelta,
  whole: boolean,
  former: FormerDevices,
  formerThen: FormerDevices,
): readonly string[] {
  const boxes = new Set<EnclosureId>([...after.keys(), ...(whole ? before.keys() : [])]);
  const then = new Map<DeviceId, OutletAnswer[]>();
  for (const id of boxes) {
    for (const outlet of after.get(id) ?? []) {
      const { device } = parseOutlet(outlet.outlet);
      const known = formerThen.get(device) ?? device;
      then.set(known, [...(then.get(known) ?? []), outlet]);
    }
  }
  const lost = [...boxes]
    .flatMap((id) => before.get(id) ?? [])
    .filter((outlet) => {
      if (outlet.protectedBy.length === 0) return false;
      const { device, half } = parseOutlet(outlet.outlet);
      const successors = (then.get(former.get(device) ?? device) ?? []).filter((candidate) => {
        const other = parseOutlet(candidate.outlet).half;
        return half === undefined || other === undefined || other === half;
      });
      return successors.length === 0 || successors.some(({ protectedBy }) => protectedBy.length === 0);
    });
  return lost.map(({ name }) => name).sort(byName);
}

const byName = new Intl.Collator("en", { numeric: true }).compare;
