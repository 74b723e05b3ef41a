import type { CommandCall } from "../../answers/command-call.ts";
import type { SupplyAnswer, SupplyAsk } from "../../answers/supply.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { runCommand } from "../../commands/run-command.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import {
  cableEnd,
  type DeviceId,
  type EnclosureId,
  type EndKey,
  type Side,
  type TerminalName,
} from "../../model/ids.ts";
import type { Installation, Point, Project } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { getInstallation } from "../../queries/installation-of.ts";
import { landedAt } from "../../queries/landings.ts";
import { breakerRating } from "./breaker-rating.ts";
import { type SupplyWires, supplyWires } from "./supply-wires.ts";

const wording = catalogue({
  draw: (panel: Part, cable: Part) => `Draw panel ${panel} for ${cable}`,
  run: (cable: Part, panel: Part) => `Run ${cable} to ${panel}`,
  notSeen: "drawn, not seen",
  breakerNotRead: (cable: Part) =>
    `The breaker that feeds ${cable} was not found: which one it is and its rating were not read.`,
  noCable: "This cable is not in the drawing any more. Pick another one.",
  noPanel: "This panel is not in the drawing any more. Pick another one.",
  noHole: (panel: Part) => `The bars of ${panel} have no free hole left. Add a bar to it first.`,
  noBar: (panel: Part) => `${panel} has no bar for the neutral or the ground. Place one in it first.`,
  noRating: (cable: Part) =>
    `The thickness of ${cable} does not tell the rating of its breaker. Draw the panel by hand, with the breaker that is there.`,
});

/** The panel item that is drawn where nobody has seen one. */
const PANEL = "panel-16";

type PlaceFor = (project: Project, installation: Installation, item: string) => Point;

const refused = (why: string): SupplyAnswer => ({ ok: false, why });

/**
 * A panel at the side of a cable that leads out of the drawing, new or one that is there, with a breaker on which its
 * conductors are landed. Nothing of it was seen: every fact carries the mark "assumed", and the breaker a note.
 * @param placeFor Where on the sheet something new of the stock could go.
 */
export function drawSupply(document: Project, ask: SupplyAsk, placeFor: PlaceFor): SupplyAnswer {
  const before = ask.after === undefined ? undefined : runCommand(document, ask.after);
  if (before?.ok === false) return refused(before.refusal.message);
  const project = before?.project ?? document;
  const installation = getInstallation(project, ask.state);
  const cable = installation.cables[ask.cable];
  if (cable === undefined) return refused(wording.noCable);
  const wires = supplyWires(installation, cable);
  if (typeof wires === "string") return refused(wires);
  const bySize = breakerRating(project.edition, cable);
  const ratingA = ask.ratingA ?? bySize.ratingA;
  if (ratingA === undefined) return refused(wording.noRating(cable.name));
  const there = ask.panel === undefined ? undefined : installation.enclosures[ask.panel];
  if (ask.panel !== undefined && there?.kind !== "panel") return refused(wording.noPanel);
  const panel = there?.id ?? ask.fresh.panel.id;
  const name = there?.name ?? ask.fresh.panel.name;
  const landings = there === undefined ? onNewBars(ask, cable, wires) : onBarsOf(there, cable, wires);
  if (typeof landings === "string") return refused(landings);
  return {
    ok: true,
    title: there === undefined ? wording.draw(name, cable.name) : wording.run(cable.name, name),
    calls: [
      ...(there === undefined ? newPanel(project, ask, placeFor) : []),
      ...breakers(ask, panel, cable, wires, ratingA),
      ...led(ask, panel, cable, wires.side),
      ...[...onBreakers(ask, cable, wires), ...landings].flatMap((landing) => landed(ask, panel, landing)),
    ],
    panel: name,
    ratingA,
    smaller: bySize.smaller.filter((one) => one < ratingA),
  };
}

const assumed = { evidence: "assumed" } as const;

function newPanel(project: Project, { state, fresh }: SupplyAsk, placeFor: PlaceFor): readonly CommandCall[] {
  const { id, name } = fresh.panel;
  const at = placeFor(project, getInstallation(project, state), PANEL);
  const target = { kind: "enclosure", id } as const;
  return [
    {
      command: "place-enclosure",
      args: { state, id, item: PANEL, name, at, note: wording.notSeen, bars: fresh.bars },
    },
    ...["spaces", "supply", "mainBond"].map((field) => ({
      command: "mark-evidence",
      args: { state, target, field, ...assumed },
    })),
  ];
}

function breakers(
  { state, fresh }: SupplyAsk,
  enclosure: EnclosureId,
  cable: Cable,
  { poles }: SupplyWires,
  value: number,
): readonly CommandCall[] {
  return poles.flatMap(({ type }, index): readonly CommandCall[] => {
    const { id, name } = fresh.breakers[index === 0 ? 0 : 1];
    const target = { kind: "device", id } as const;
    return [
      { command: "place-device", args: { state, enclosure, id, type, name } },
      { command: "set-property", args: { state, target, field: "breakerRatingA", value, ...assumed } },
      { command: "mark-evidence", args: { state, target, field: "type", ...assumed } },
      { command: "mark-evidence", args: { state, target, field: "legs", ...assumed } },
      { command: "set-property", args: { state, target, field: "notes", value: wording.breakerNotRead(cable.name) } },
    ];
  });
}

function led(
  { state, fresh }: SupplyAsk,
  enclosure: EnclosureId,
  { id: cable }: Cable,
  side: Side,
): readonly CommandCall[] {
  const to = { enclosure, newEntry: fresh.entry, means: "external-connector" };
  const target = { kind: "cable", id: cable } as const;
  return [
    { command: "move-cable-side", args: { state, cable, side, to } },
    { command: "mark-evidence", args: { state, target, field: "sides", ...assumed } },
  ];
}

interface Landing {
  readonly end: EndKey;
  readonly device: DeviceId;
  readonly terminal: TerminalName;
  readonly hole: number;
  /** Colour that a re-identified white is marked with at its other end. */
  readonly markedAs?: string;
}

function landed({ state }: SupplyAsk, enclosure: EnclosureId, landing: Landing): readonly CommandCall[] {
  const { end, device, terminal, hole, markedAs } = landing;
  const target = { kind: "end", enclosure, id: end } as const;
  return [
    { command: "land-end", args: { state, enclosure, end, at: { kind: "terminal", device, terminal, hole } } },
    { command: "mark-evidence", args: { state, target, field: "at", ...assumed } },
    ...(markedAs === undefined
      ? []
      : [{ command: "set-property", args: { state, target, field: "markedAs", value: markedAs, ...assumed } }]),
  ];
}

/** The hots, in their order, on the terminals of the breakers. */
const onBreakers = ({ fresh }: SupplyAsk, { id }: Cable, { poles, side }: SupplyWires): readonly Landing[] =>
  poles.flatMap(({ type, hots }, index) =>
    hots.map(({ key, markedAs }, pole) => ({
      end: cableEnd(id, key, side),
      device: fresh.breakers[index === 0 ? 0 : 1].id,
      terminal: (getDeviceType(type).terminals[pole]?.name ?? "OUT") as TerminalName,
      hole: 1,
      ...(markedAs !== undefined && { markedAs }),
    })),
  );

/** Conductors that go to bars, with the kind of bar. */
const barEnds = ({ id }: Cable, { neutrals, grounds, side }: SupplyWires) =>
  [
    ...neutrals.map((key) => ({ key, kind: "neutral" as const })),
    ...grounds.map((key) => ({ key, kind: "ground" as const })),
  ].map(({ key, kind }) => ({ end: cableEnd(id, key, side), kind }));

function onNewBars({ fresh }: SupplyAsk, cable: Cable, wires: SupplyWires): readonly Landing[] {
  const used = { neutral: 0, ground: 0 };
  return barEnds(cable, wires).map(({ end, kind }) => {
    used[kind] += 1;
    const terminal = (getDeviceType(`${kind}-bar`).terminals[0]?.name ?? "BAR") as TerminalName;
    return { end, device: fresh.bars[kind], terminal, hole: used[kind] };
  });
}

/** The first free holes of the bars of a panel that is there. */
function onBarsOf(panel: Enclosure, cable: Cable, wires: SupplyWires): readonly Landing[] | string {
  const free = { neutral: freeHoles(panel, "neutral"), ground: freeHoles(panel, "ground") };
  const landings: Landing[] = [];
  for (const { end, kind } of barEnds(cable, wires)) {
    if (free[kind] === undefined) return wording.noBar(panel.name);
    const hole = free[kind].shift();
    if (hole === undefined) return wording.noHole(panel.name);
    landings.push({ end, ...hole });
  }
  return landings;
}

function freeHoles(panel: Enclosure, kind: "neutral" | "ground"): Omit<Landing, "end">[] | undefined {
  const bars = inOrder(panel.devices).filter(({ type }) => getDeviceType(type).family === `${kind}-bar`);
  if (bars.length === 0) return undefined;
  return bars.flatMap(({ id: device, type }) =>
    getDeviceType(type)
      .terminals.slice(0, 1)
      .flatMap(({ name: terminal, holes }) => {
        const taken = new Set(landedAt(panel, device, terminal).map(({ hole }) => hole));
        return Array.from({ length: holes }, (_, index) => index + 1)
          .filter((hole) => !taken.has(hole))
          .map((hole) => ({ device, terminal, hole }));
      }),
  );
}
