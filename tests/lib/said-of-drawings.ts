/** What the core says of drawings. Loaded anew for each language, since words are chosen when modules load. */
import samples from "../../assets/samples/index.json" with { type: "json" };
import { energise } from "../../shared-model/analysis/energise.ts";
import { proveState } from "../../shared-model/analysis/prove-state.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { Act } from "../../shared-model/answers/energised.ts";
import type { Finding } from "../../shared-model/answers/finding.ts";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { outletsOf } from "../../shared-model/queries/outlets-of.ts";
import { helpWords } from "../../shared-model/rules/help/words-of-rule.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import { ruleExamples } from "../builders/rule-examples/index.ts";
import { openSample } from "../builders/samples/open-sample.ts";

/** Sentences by where they stand: "finding box-overfull", "proof". */
export type Said = readonly (readonly [where: string, text: string])[];

/** The directory of the house names kinds of outlets in place of rooms. */
function houseByKinds(): Project {
  const house = openSample("house-twelve-circuits");
  const directory = Object.fromEntries(
    Object.keys(house.asFound.directory).map((breaker) => [breaker, "Lights, outlets, fan and smoke detectors"]),
  );
  return { ...house, asFound: { ...house.asFound, directory } };
}

/** Every drawing that is looked at, by name; each is made anew. */
export const drawings: ReadonlyMap<string, () => Project> = new Map([
  ...samples.map(({ file }) => {
    const name = file.replace(/[.]loadside$/, "");
    return [name, () => openSample(name)] as const;
  }),
  ["house-by-kinds", houseByKinds] as const,
  ...Object.entries(ruleExamples).flatMap(([rule, { wrong, right }]) => [
    [`${rule} wrong`, () => wrong().project()] as const,
    [`${rule} right`, () => right().project()] as const,
  ]),
]);

const statesOf = ({ proposed }: Project): readonly StateName[] =>
  proposed === undefined ? ["as-found"] : ["as-found", "proposed"];

interface Found {
  readonly said: Said;
  readonly findings: readonly Finding[];
  /** Keys of what cannot be told. */
  readonly open: readonly string[];
}

const found = new Map<string, Found>();

/** What is found, and what cannot be told, in every state of a drawing. */
export function findingsIn(name: string, project: Project): Found {
  let known = found.get(name);
  if (known === undefined) {
    known = check(project);
    found.set(name, known);
  }
  return known;
}

function check(project: Project): Found {
  const session = openSession(project);
  const reports = statesOf(project).map((state) => session.report(state));
  const findings = reports.flatMap((report) => report.findings);
  return {
    findings,
    open: reports.flatMap(({ couldNotTell }) => couldNotTell.map(({ key }) => key)),
    said: [
      ...findings.flatMap(({ rule, message, fix, offers = [] }) => [
        [`finding ${rule}`, message] as const,
        ...[...(fix === undefined ? [] : [fix]), ...offers].map(({ title }) => [`fix of ${rule}`, title] as const),
      ]),
      ...reports
        .flatMap(({ couldNotTell }) => couldNotTell)
        .flatMap(({ rule, message, missing, toDo }) =>
          [message, missing, ...(toDo === undefined ? [] : [toDo])].map(
            (text) => [`cannot tell ${rule}`, text] as const,
          ),
        ),
      ...reports
        .flatMap(({ ledgers }) => Object.values(ledgers))
        .flatMap(({ reason }) => (reason === undefined ? [] : [["ledger", reason] as const])),
    ],
  };
}

/** Why each outlet is protected or not. */
export const proofsIn = (_name: string, project: Project): Said =>
  statesOf(project).flatMap((state) =>
    proveState(project, state).lines.map(({ reason }) => ["proof", reason] as const),
  );

/** Samples, and one example of a fault in three: what is said here hangs on few things. */
const isEnergised = (name: string): boolean =>
  !name.includes(" ") || (name.endsWith(" wrong") && ruleIds.indexOf(name.split(" ")[0] ?? "") % 3 === 0);

/** What stands beside a drawing that is energised: what is operated, what opens, and what each TEST and RESET does. */
export function energisedIn(name: string, project: Project): Said {
  if (!isEnergised(name)) return [];
  return statesOf(project).flatMap((state) => {
    const installation = getInstallation(project, state);
    const devices = Object.values(installation.enclosures).flatMap((enclosure) => Object.values(enclosure.devices));
    const outlets = devices.flatMap((device) => outletsOf(device)).slice(0, 2);
    const acts: readonly (Act | undefined)[] = [
      undefined,
      ...devices.slice(0, 6).flatMap(({ id: device }): Act[] => [
        { kind: "own-test", device },
        { kind: "reset", device },
      ]),
      ...outlets.flatMap(({ key: outlet }): Act[] => [
        { kind: "plug-in-button", outlet },
        { kind: "leak", outlet, contact: "hot", mA: 0 },
        { kind: "leak", outlet, contact: "hot", mA: 8 },
      ]),
    ];
    return acts.flatMap((act): Said => {
      const told = energise(installation, project.supply, NOTHING, act === undefined ? {} : { act });
      return [
        ...told.operables.map(({ kind, note }) => [`operable ${kind}`, note] as const),
        ...told.assumptions.map((text) => ["assumption", text] as const),
        ...told.otherwise.map((text) => ["other order", text] as const),
        ...[...told.opened.flat(), ...told.mayOpen].map(({ why }) => ["opened", why] as const),
        ...(told.act === undefined ? [] : told.act.devices.map(({ why }) => ["act", why] as const)),
      ];
    });
  });
}

const NOTHING = { off: [], positions: {}, tripped: [], idle: [] } as const;

/** What rules say of themselves, and what stands beside their examples. */
export const helpSaid: Said = [
  ...rules.flatMap(({ id, summary, why, messages }) =>
    [summary, why, ...Object.values<string>(messages)].map(
      (text) => [`rule ${id}`, text.replace(/\{\w+\}/g, "")] as const,
    ),
  ),
  ...Object.entries(helpWords).flatMap(([id, words]) =>
    Object.values<string>({ ...words }).map((text) => [`help ${id}`, text] as const),
  ),
];

/** Marks on the terminals of devices: "LINE", "H", "COM". */
export const marks: readonly string[] = deviceTypes.flatMap(({ terminals }) =>
  terminals.flatMap(({ group, label }) => [group, label].flatMap((mark) => mark ?? [])),
);

export const ruleIds: readonly string[] = rules.map(({ id }) => id);
