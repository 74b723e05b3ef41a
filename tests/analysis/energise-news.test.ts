/** An answer that continues the one before is the answer from the drawing alone, after any edits and settings. */
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { energise } from "../../shared-model/analysis/energise.ts";
import { Energiser } from "../../shared-model/analysis/energiser.ts";
import type { Act, EnergiseAsk, Energised, EnergisedNews, Operated } from "../../shared-model/answers/energised.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import type { DeviceId } from "../../shared-model/model/ids.ts";
import type { Project, StateName } from "../../shared-model/model/project.ts";
import { withNews } from "../../shared-model/queries/energised-news.ts";
import { findInstallation } from "../../shared-model/queries/installation-of.ts";
import { guardedHouse } from "../bench/guarded-house.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { deviceId } from "../builders/ids.ts";
import { type PhysicsFault, physicsCircuit, physicsFaults } from "../builders/physics-circuit.ts";
import { callOf, type RandomStep, randomSteps } from "../builders/random-commands.ts";
import { withRoom } from "../same-seed.ts";

const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 300 : 12;
const ON: Operated = { off: [], positions: {}, tripped: [], idle: [] };
let answers = 0;
let continued = 0;
let spared = 0;

/** A window that follows a worker. */
class Window {
  private readonly energiser = new Energiser();
  private kept: Energised | undefined;

  follow(project: Project, state: StateName, operated: Operated, ask: EnergiseAsk): EnergisedNews | undefined {
    const installation = findInstallation(project, state);
    if (installation === undefined) return undefined;
    const news = structuredClone(this.energiser.answer(state, installation, project.supply, operated, ask));
    this.kept = withNews(this.kept, news);
    // Nothing of a copy is known by identity.
    const fresh = structuredClone(installation);
    expect(this.kept).toEqual(energise(fresh, { ...project.supply }, operated, ask));
    answers++;
    if (!news.whole) continued++;
    spared += Object.keys(this.kept.boxes).length - Object.keys(news.boxes).length;
    return news;
  }

  get tripped(): readonly DeviceId[] {
    return this.kept?.tripped ?? [];
  }
}

type Turn =
  | { readonly kind: "edit"; readonly step: RandomStep }
  | { readonly kind: "state" }
  | { readonly kind: "operate"; readonly which: number; readonly how: number };

const turns: fc.Arbitrary<readonly Turn[]> = randomSteps(12).chain((steps) =>
  fc
    .array(fc.record({ which: fc.nat(40), how: fc.nat(5), state: fc.nat(9) }), { minLength: 12, maxLength: 12 })
    .map((others) =>
      others.flatMap(({ which, how, state }, i): readonly Turn[] => {
        const step = steps[i];
        const operate = { kind: "operate", which, how } as const;
        return [
          operate,
          ...(step ? [{ kind: "edit", step } as const] : []),
          ...(state === 0 ? [{ kind: "state" } as const] : []),
        ];
      }),
    ),
);

function play(start: Project, all: readonly Turn[]): void {
  let project = start;
  let state: StateName = "as-found";
  let operated = ON;
  const window = new Window();
  window.follow(project, state, operated, {});
  all.forEach((turn, index) => {
    let act: Act | undefined;
    if (turn.kind === "edit") {
      const done = runCommand(project, callOf(project, turn.step, index));
      if (done.ok) project = done.project;
    } else if (turn.kind === "state" && project.proposed !== undefined)
      state = state === "as-found" ? "proposed" : "as-found";
    else if (turn.kind === "operate") [operated, act] = operate(project, state, operated, turn);
    window.follow(project, state, operated, act === undefined ? {} : { act });
    operated = { ...operated, tripped: window.tripped };
  });
}

function operate(
  project: Project,
  state: StateName,
  operated: Operated,
  { which, how }: Extract<Turn, { readonly kind: "operate" }>,
): readonly [Operated, Act | undefined] {
  const devices = Object.values(findInstallation(project, state)?.enclosures ?? {}).flatMap((one) =>
    Object.keys(one.devices),
  ) as DeviceId[];
  const device = devices[which % Math.max(1, devices.length)];
  if (device === undefined) return [operated, undefined];
  const over = <T>(list: readonly T[], one: T): readonly T[] =>
    list.includes(one) ? list.filter((other) => other !== one) : [...list, one];
  switch (how) {
    case 0:
      return [{ ...operated, off: over(operated.off, device) }, undefined];
    case 1:
      return [{ ...operated, idle: over(operated.idle, device) }, undefined];
    case 2:
      return [{ ...operated, positions: { ...operated.positions, [device]: which % 2 } }, undefined];
    case 3:
      return [operated, { kind: "own-test", device }];
    case 4:
      return [operated, { kind: "reset", device }];
    default:
      return [{ ...operated, tripped: over(operated.tripped, device) }, undefined];
  }
}

describe("what continues an answer", () => {
  test("is the answer from scratch: random edits and settings of the laundry circuit", {
    timeout: withRoom(600_000),
  }, () => {
    fc.assert(
      fc.property(turns, (all) => play(laundryAsFound(), all)),
      { numRuns: RUNS },
    );
  });

  test("is the answer from scratch: random settings of wrong drawings", { timeout: withRoom(600_000) }, () => {
    fc.assert(
      fc.property(fc.constantFrom(...physicsFaults), turns, (fault: PhysicsFault, all) =>
        play(physicsCircuit(fault).project, all),
      ),
      { numRuns: RUNS },
    );
  });

  test("tells nothing of what stands as it stood: one breaker of three", () => {
    const project = guardedHouse(60);
    const { enclosures, cables } = project.asFound;
    const window = new Window();
    expect(window.follow(project, "as-found", ON, {})?.whole).toBe(true);
    expect(Object.keys(window.follow(project, "as-found", ON, {})?.boxes ?? {})).toEqual([]);
    const panel = Object.values(enclosures).find(({ kind }) => kind === "panel");
    const breaker = Object.values(panel?.devices ?? {}).find(({ type }) => type.startsWith("breaker"))?.id as DeviceId;
    const told = window.follow(project, "as-found", { ...ON, off: [breaker] }, {});
    // Twenty boxes hang on it, and it stands in its panel.
    expect(Object.keys(told?.boxes ?? {})).toHaveLength(21);
    expect(Object.keys(cables)).toHaveLength(60);
    expect(Object.keys(told?.cables ?? {})).toHaveLength(20);
  });

  test("without the answer that it continues it is refused", () => {
    const { asFound, supply } = physicsCircuit().project;
    const energiser = new Energiser();
    energiser.answer("as-found", asFound, supply, ON, {});
    const news = energiser.answer("as-found", asFound, supply, { ...ON, tripped: [deviceId("R1")] }, {});
    expect(news.whole).toBe(false);
    expect(() => withNews(undefined, news)).toThrow(/without the one that it continues/);
  });

  test("the other state, and whatever follows a fault, is told whole", () => {
    const { asFound, proposed, supply } = physicsCircuit().propose().project;
    if (proposed === undefined) throw new Error("No proposed state.");
    const energiser = new Energiser();
    const whole = (state: StateName): boolean =>
      energiser.answer(state, state === "proposed" ? proposed : asFound, supply, ON, {}).whole;
    expect([whole("as-found"), whole("as-found"), whole("proposed"), whole("as-found")]).toEqual([
      true,
      false,
      true,
      true,
    ]);
    expect(() => energiser.answer("as-found", asFound, supply, null as never, {})).toThrow();
    expect(whole("as-found")).toBe(true);
  });
});

afterAll(() => {
  // Otherwise the test looked at nothing.
  expect(answers).toBeGreaterThan(300);
  expect(continued).toBeGreaterThan(answers / 2);
  expect(spared).toBeGreaterThan(answers);
});
