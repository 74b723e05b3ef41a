import type { ScopeBox, ScopeBreaker, ScopeItem } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type EndKey, parseEnd } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { listed } from "../../rules/rule-parts.ts";
import { loadsOn } from "../../solver/circuit/loads-on.ts";
import type { Section } from "../../solver/section.ts";
import { outletReadings, worksReading } from "./commissioning-words.ts";
import { deadReadings } from "./dead-pairs.ts";
import type { StepDraft } from "./step-draft.ts";
import { benchOf } from "./test-bench.ts";
import { classOfEnd, endsOf } from "./wire-classes.ts";

/** Stage 1 of the whole job: people are told. */
export function tell(
  installation: Installation,
  sections: readonly Section[],
  breakers: readonly ScopeBreaker[],
): StepDraft {
  const loads = loadsOn(installation.loads);
  const all = sections.flatMap((section) =>
    section
      .outlets()
      .flatMap(({ outlet }) => [
        ...(loads.get(outlet.device.id) ?? []).map((load) => ({ kind: "load" as const, thing: load })),
        { kind: "device" as const, thing: outlet.device },
      ]),
  );
  const kept = all
    .filter(({ thing }) => (thing.priority ?? "none") !== "none")
    .map(({ kind, thing: { id, name } }): ScopeItem => ({ kind, id, name }));
  const names = [...new Set(kept.map(({ name }) => name))];
  return {
    id: "tell",
    stage: 1,
    kind: "tell",
    text: "Tell the occupants what will be off and for how long.",
    items: kept,
    details: [
      ...(breakers.length === 0 ? [] : [`Off: ${listed(breakers.map(breakerWords))}.`]),
      ...(names.length === 0 ? [] : [`Must not be forgotten: ${listed(names)}.`]),
    ],
  };
}

export const breakerWords = ({ name, ratingA, panel }: ScopeBreaker): string =>
  `breaker ${name}${ratingA === undefined ? "" : `, ${ratingA} A,`} in ${panel.name}`;

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
        text: outlet.receptacle
          ? `Before the work, measure ${outlet.name} and write it down.`
          : `Before the work, see that ${outlet.name} works and write it down.`,
        readings: outlet.receptacle
          ? outletReadings(outlet, bench.read(circuit, outlet), true)
          : [worksReading(outlet, bench.isOn(circuit, outlet))],
        ifNot: "Write down what is found: a fault that was there before is not ours.",
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
      text: `Open ${breakerWords(breaker)}${others.length === 0 ? "" : ` together with ${listed(others)}`}; lock and tag.`,
      details: multiwire ? ["Its circuit shares a neutral: all poles are opened before anything is parted."] : [],
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
  const switches = inOrder(enclosure.devices).filter(({ type }) => (findDeviceType(type)?.positions.length ?? 0) > 0);
  const several = box.breakers.length > 1;
  const circuits = box.breakers.length === 0 ? [undefined] : box.breakers;
  return [
    ...circuits.map(
      (breaker): StepDraft => ({
        ...at,
        id: `HP1:${box.enclosure}:${breaker?.device ?? "none"}`,
        kind: "hold",
        hold: "HP1",
        items: [{ kind: "enclosure", id: box.enclosure, name: box.name }],
        text:
          breaker === undefined
            ? `${box.name}: verify dead. No breaker of it is drawn: find what feeds it first.`
            : `${box.name}: verify dead with ${breaker.name} open.`,
        details: [
          "Tester proved on a live source, then here, then on the live source again.",
          "Every insulated conductor to every other, to ground and to the box.",
          ...(several
            ? [
                `${box.breakers.length} circuits come to this box: ${listed(box.breakers.map(({ name }) => name))}. Each is proved dead by itself.`,
              ]
            : []),
          ...(switches.length === 0
            ? []
            : [`Once more with ${listed(switches.map(({ name }) => name))} in the other position.`]),
          ...(box.isPanel ? ["The supply side of a panel stays live with its breakers open."] : []),
        ],
        readings,
        ifNot: "Live: another circuit or another way in. Stop and find it.",
        cautions: ["WRK1", "WRK2", "WRK3", "WRK7"],
      }),
    ),
    ...noCurrent(installation, enclosure, box),
  ];
}

const wireOf = (end: EndKey): string => {
  const parsed = parseEnd(end);
  return parsed?.of === "jumper" ? parsed.jumper : end;
};

const isFirstOfWire = (
  { end }: { readonly end: EndKey },
  i: number,
  all: readonly { readonly end: EndKey }[],
): boolean => all.findIndex((one) => wireOf(one.end) === wireOf(end)) === i;

/** Whites that are parted: the return of another circuit would show in them. */
function noCurrent(installation: Installation, enclosure: Enclosure, box: ScopeBox): readonly StepDraft[] {
  const parted = endsOf(box).flatMap((change) => {
    const end = (change.item.was ?? change.item.id) as EndKey;
    if (change.detach === 0 || enclosure.places[end] === undefined) return [];
    return classOfEnd(installation, enclosure, end) === "neutral" ? [{ end, change }] : [];
  });
  if (parted.length === 0) return [];
  return [
    {
      id: `HP2:${box.enclosure}`,
      stage: 3,
      kind: "hold",
      hold: "HP2",
      box: { id: box.enclosure, name: box.name },
      items: parted.map(({ change }) => change.item),
      text: `${box.name}: clamp meter on every white before it is parted: no current.`,
      // Both ends of a pigtail may be parted: the current in it is one.
      readings: parted.filter(isFirstOfWire).map(({ end }) => ({
        id: `clamp:${end}`,
        what: nameOfEnd(installation, enclosure, end),
        expect: "0 A",
      })),
      ifNot:
        "Current in a dead circuit: the return of another circuit comes through here. Find that breaker and open it.",
      cautions: ["WRK2", "WRK4"],
    },
  ];
}
