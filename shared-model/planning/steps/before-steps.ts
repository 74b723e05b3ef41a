import type { ScopeBox, ScopeBreaker, ScopeItem } from "../../answers/scope.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { Load } from "../../model/load.ts";
import type { Installation, Project } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { listed } from "../../rules/rule-parts.ts";
import { loadsOn } from "../../solver/circuit/loads-on.ts";
import type { Section } from "../../solver/section.ts";
import { BEFORE_WORDS as wording } from "./before-words.ts";
import { outletReadings, worksReading } from "./commissioning-words.ts";
import { deadReadings, withoutGroundWords } from "./dead-pairs.ts";
import { noCurrent } from "./no-current.ts";
import { isTriedBothWays } from "./panel-steps.ts";
import type { StepDraft } from "./step-draft.ts";
import { benchOf } from "./test-bench.ts";

/** Stage 1 of the whole job: people are told. */
export function tell(
  installation: Installation,
  sections: readonly Section[],
  breakers: readonly ScopeBreaker[],
  panels: readonly string[],
): StepDraft {
  const all = panels.length > 0 ? everythingIn(installation) : inSections(installation, sections);
  const kept = all
    .filter(({ thing }) => (thing.priority ?? "none") !== "none")
    .map(({ kind, thing: { id, name } }): ScopeItem => ({ kind, id, name }));
  const names = [...new Set(kept.map(({ name }) => name))];
  return {
    id: "tell",
    stage: 1,
    kind: "tell",
    text: wording.tell,
    items: kept,
    details: [
      ...(breakers.length === 0 ? [] : [wording.off(listed(breakers.map(breakerWords)))]),
      ...(panels.length === 0 ? [] : [wording.offAll(listed(panels))]),
      ...(names.length === 0 ? [] : [wording.notForgotten(listed(names))]),
    ],
  };
}

type Using = { readonly kind: "load" | "device"; readonly thing: Load | Device };

function inSections(installation: Installation, sections: readonly Section[]): readonly Using[] {
  const loads = loadsOn(installation.loads);
  return sections.flatMap((section) =>
    section
      .outlets()
      .flatMap(({ outlet }): readonly Using[] => [
        ...(loads.get(outlet.device.id) ?? []).map((load) => ({ kind: "load" as const, thing: load })),
        { kind: "device", thing: outlet.device },
      ]),
  );
}

/** With the main of a panel open, what hangs on other circuits stops as well. */
const everythingIn = ({ loads, enclosures }: Installation): readonly Using[] => [
  ...Object.values(loads).map((thing) => ({ kind: "load" as const, thing })),
  ...Object.values(enclosures).flatMap(({ devices }) =>
    Object.values(devices).map((thing) => ({ kind: "device" as const, thing })),
  ),
];

export function breakerWords({ name, ratingA, panel, isFuse }: ScopeBreaker): string {
  if (ratingA === undefined) return (isFuse === true ? wording.fuse : wording.breaker)(name, panel.name);
  return (isFuse === true ? wording.fuseRated : wording.breakerRated)(name, ratingA, panel.name);
}

/** A breaker is opened and locked, a fuse taken out: it can be put back by anyone who finds it. */
function openWords(breaker: ScopeBreaker): string {
  const others = breaker.withPoles.map((pole) => pole.name);
  const words = breakerWords(breaker);
  if (breaker.isFuse === true)
    return others.length === 0 ? wording.takeOut(words) : wording.takeOutTogether(words, listed(others));
  return others.length === 0 ? wording.open(words) : wording.openTogether(words, listed(others));
}

/** What every outlet of a section shows before anything is touched, with lamps on and nothing running. */
export function recordBefore(
  project: Project,
  section: Section,
  breakers: readonly ScopeBreaker[],
): readonly StepDraft[] {
  const off = new Set(breakers.map(({ device }) => device));
  const bench = benchOf(section, project.supply);
  const { circuit } = bench.run(bench.atRest);
  const fed = new Set(
    section.breakers().flatMap(({ device }) => (off.has(device.id) ? section.circuitOf(device.id).outlets : [])),
  );
  return bench.outlets.flatMap((outlet): readonly StepDraft[] => {
    if (!fed.has(outlet.key)) return [];
    const home = section.enclosureOf(outlet.device.id);
    const box = home === undefined ? undefined : section.enclosures.find(({ id }) => id === home);
    return [
      {
        id: `before:${outlet.key}`,
        stage: 1,
        kind: "record",
        ...(box !== undefined && { box: { id: box.id, name: box.name } }),
        items: [{ kind: "device", id: outlet.device.id, name: outlet.device.name }],
        text: outlet.receptacle ? wording.measure(outlet.name) : wording.works(outlet.name),
        readings: outlet.receptacle
          ? outletReadings(outlet, bench.read(circuit, outlet), true)
          : [worksReading(outlet, bench.isOn(circuit, outlet))],
        ifNot: wording.writeDown,
      },
    ];
  });
}

/** Stage 2: one instruction for every handle, with the poles that go with it. */
export function isolate(breakers: readonly ScopeBreaker[]): readonly StepDraft[] {
  return breakers.map((breaker): StepDraft => {
    const { device, name, panel, withPoles, multiwire } = breaker;
    const others = withPoles.map((pole) => pole.name);
    return {
      id: `isolate:${device}`,
      stage: 2,
      kind: "isolate",
      box: panel,
      items: [device, ...withPoles.map((pole) => pole.device)].map(
        (id, index): ScopeItem => ({ kind: "device", id, name: index === 0 ? name : (others[index - 1] ?? id) }),
      ),
      text: openWords(breaker),
      details: [
        ...(breaker.notFound ? [wording.findBreaker(name)] : []),
        ...(multiwire ? [wording.sharedNeutral] : []),
      ],
      cautions: multiwire ? ["WRK1", "WRK4"] : ["WRK1"],
    };
  });
}

/** HP1, for each circuit that comes to a box, and HP2. */
export function proveDead(installation: Installation, box: ScopeBox): readonly StepDraft[] {
  const enclosure = installation.enclosures[box.enclosure];
  if (enclosure === undefined) return [];
  const at = { box: { id: box.enclosure, name: box.name }, stage: 2 };
  const readings = deadReadings(installation, enclosure);
  const switches = inOrder(enclosure.devices).filter((device) => isTriedBothWays(device, box));
  const several = box.breakers.length > 1;
  const passing = whatPasses(installation, enclosure);
  // With what is ahead of a panel open all of it is dead at once, and it is measured once.
  const circuits = box.breakers.length === 0 || box.isPanel ? [undefined] : box.breakers;
  return [
    ...circuits.map(
      (breaker): StepDraft => ({
        ...at,
        id: `HP1:${box.enclosure}:${breaker?.device ?? "none"}`,
        kind: "hold",
        hold: "HP1",
        items: [{ kind: "enclosure", id: box.enclosure, name: box.name }],
        text: verifyWords(box, breaker),
        details: [
          ...(breaker?.notFound ? [wording.findBreaker(breaker.name)] : []),
          wording.tester,
          wording.everyConductor,
          ...withoutGroundWords(installation, enclosure),
          ...(several && !box.isPanel
            ? [wording.circuits(box.breakers.length, listed(box.breakers.map(({ name }) => name)))]
            : []),
          ...(switches.length === 0 ? [] : [wording.otherPosition(listed(switches.map(({ name }) => name)))]),
          ...passing,
          ...(box.isPanel ? [wording.panelLive] : []),
        ],
        readings,
        ifNot: wording.anotherWay,
        cautions: ["WRK1", "WRK2", "WRK3", "WRK7"],
      }),
    ),
    ...noCurrent(installation, enclosure, box),
  ];
}

function verifyWords({ name, isPanel }: ScopeBox, breaker: ScopeBreaker | undefined): string {
  if (isPanel) return wording.verifyPanel(name);
  return breaker === undefined ? wording.verifyUnknown(name) : wording.verify(name, breaker.name);
}

/** Cables that go through a box whole, with where they can be proved dead. */
function whatPasses(installation: Installation, { passThroughs }: Enclosure): readonly string[] {
  return Object.values(passThroughs).flatMap(({ cable: id }) => {
    const cable = installation.cables[id];
    if (cable === undefined) return [];
    const names = [cable.sides.a, cable.sides.b].flatMap((side) =>
      "enclosure" in side ? (installation.enclosures[side.enclosure]?.name ?? []) : [],
    );
    return [wording.passes(cable.name, listed(names))];
  });
}
