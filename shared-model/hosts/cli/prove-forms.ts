import type { AskedBy, ProtectionLine, ProtectionSchedule } from "../../analysis/prove-state.ts";
import { onOneLine } from "../../format/json-path.ts";
import { PROOF_TESTS, type Verdict } from "../../solver/circuit/proof-answers.ts";
import { inputName } from "./read-input.ts";
import { table } from "./table.ts";

/**
 * As scripts read it. `requiredBy` is a section of the code, "wish", "cannot-tell" where the room is not known, or null.
 * `proof` is that of `device`, null where no device bears on the outlet; with `bySetting` one or another of `protectedBy`
 * protects as switches stand.
 */
export function provedAsJson(file: string, { state, edition, lines }: ProtectionSchedule): object {
  const names = new Map(lines.map(({ proof: { standing } }) => [standing.outlet.key, standing.outlet.name]));
  return {
    file,
    state,
    edition,
    outlets: lines.map(({ proof, room, askedBy, protectedBy, told, tests, reason }) => {
      const { standing, verdict, devices } = proof;
      const one = devices.find(({ device }) => device === told?.id);
      return {
        id: standing.outlet.key,
        name: standing.outlet.name,
        room: room ?? null,
        requiredBy: requiredBy(askedBy),
        protectedBy: protectedBy.map(({ name }) => name),
        protectedByIds: protectedBy.map(({ id }) => id),
        bySetting: verdict === "by-setting",
        device: told?.name ?? null,
        proof: tests,
        residuals: {
          loadPerAmpere: one === undefined ? null : rounded(one.balance),
          leakPerAmpere: one === undefined ? null : rounded(one.detection),
        },
        offenders: (one?.offenders ?? []).map(({ outlet, share }) => ({
          id: outlet,
          name: names.get(outlet) ?? outlet,
          perAmpere: rounded(share),
        })),
        reason,
      };
    }),
  };
}

/** To a tenth of a thousandth: what is beyond is noise of the arithmetic. */
const rounded = (share: number): number => Math.round(share * 10_000) / 10_000;

function requiredBy(askedBy: AskedBy): string | null {
  switch (askedBy.kind) {
    case "section":
      return askedBy.section;
    case "wish":
      return "wish";
    case "room-unknown":
      return "cannot-tell";
    case "nobody":
      return null;
  }
}

const SIGNS: Readonly<Record<Verdict, string>> = { pass: "pass", fail: "FAIL", "cannot-tell": "?" };

/** As a person reads it: a table, then a sentence for each outlet. */
export function provedAsText(file: string, schedule: ProtectionSchedule): string {
  const { state, edition, isListHeld, lines } = schedule;
  const blocks = [
    [`${inputName(file)}: edition ${edition}, ${state === "as-found" ? "as found" : "proposed"}`],
    lines.length === 0 ? ["There is no outlet in it."] : tableOf(lines),
    lines.map(({ proof, reason }) => `${proof.standing.outlet.name}: ${reason}`),
    [
      ...(isListHeld ? [] : [`Where edition ${edition} requires protection is not held here: only wishes are known.`]),
      summary(lines),
      "Computed from the drawing with loads removed; nothing was measured. Press TEST and see what goes dead.",
    ],
  ];
  return blocks
    .filter((block) => block.length > 0)
    .map((block) => `${block.map(onOneLine).join("\n")}\n`)
    .join("\n");
}

const tableOf = (lines: readonly ProtectionLine[]): readonly string[] =>
  table([
    ["outlet", "box", "room", "required by", "protected by", ...PROOF_TESTS, "told of"],
    ...lines.map(({ proof, room, askedBy, protectedBy, told, tests }) => [
      proof.standing.outlet.name,
      proof.standing.enclosure.name,
      room ?? "-",
      requiredBy(askedBy) ?? "-",
      protectedBy.length === 0
        ? "-"
        : protectedBy.map(({ name }) => name).join(proof.verdict === "by-setting" ? " or " : ", "),
      ...PROOF_TESTS.map((test) => (told === undefined ? "-" : SIGNS[tests[test]])),
      told?.name ?? "no device",
    ]),
  ]);

function summary(lines: readonly ProtectionLine[]): string {
  const asked = lines.filter(({ askedBy: { kind } }) => kind === "section" || kind === "wish");
  const proved = asked.filter(({ isProtected }) => isProtected);
  const count = (outlets: number): string => `${outlets} outlet${outlets === 1 ? "" : "s"}`;
  const told = `${count(lines.length)}; protection is required or wished for ${asked.length} of them and proved for ${proved.length} of these.`;
  const unknown = lines.filter(({ askedBy: { kind } }) => kind === "room-unknown").length;
  return unknown === 0
    ? told
    : `${told} Whether it is required for ${unknown} more cannot be told: no room is entered.`;
}
