import fc from "fast-check";
import { describe, expect, test } from "vitest";
import samples from "../../../assets/samples/index.json" with { type: "json" };
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { type PlacedProof, proveInstallation } from "../../../shared-model/solver/circuit/proof.ts";
import type { DeviceProof } from "../../../shared-model/solver/circuit/proof-answers.ts";
import type { Section } from "../../../shared-model/solver/section.ts";
import { withMistakes } from "../../builders/mistakes.ts";
import { Picker } from "../../builders/picker.ts";
import { openSample } from "../../builders/samples/open-sample.ts";
import { type Isolation, isolationIn } from "../isolation.ts";
import { randomDrawing } from "../random-drawing.ts";

/*
 * Isolation by reachability is a second account of protection, over the same settings and without any current. Where the two
 * differ the proof is the stricter, and only for what reachability does not ask: a current that does not come back because the neutral is joined to nothing, a plugged load that
 * brings a live conductor round an open device, and more switches than are tried because those of the neutral count too.
 */
const WRONG_DRAWINGS = 300;
const RANDOM_DRAWINGS = 200;

type Why = "neutral joined to nothing" | "live through a plugged load" | "more switches than are tried";

interface Difference {
  readonly outlet: string;
  readonly device: DeviceId;
  readonly why: Why | undefined;
}

/** Devices that protect by the one account and not by the other. */
function differences(proofs: readonly PlacedProof[]): {
  readonly stricter: readonly Difference[];
  readonly looser: readonly Difference[];
} {
  const stricter: Difference[] = [];
  const looser: Difference[] = [];
  const isolations = new Map<Section, ReadonlyMap<string, Isolation>>();
  for (const { section, standing, devices } of proofs) {
    const isolation =
      isolations.get(section) ?? new Map(isolationIn(section).map((one) => [one.standing.outlet.key, one]));
    isolations.set(section, isolation);
    for (const proof of devices) {
      const reach = isolation.get(standing.outlet.key)?.tests.find(({ device }) => device === proof.device);
      if (reach === undefined) throw new Error(`${proof.device} was not tested by reachability.`);
      const byReach = standing.live && reach.protects;
      const found = { outlet: standing.outlet.key, device: proof.device };
      if (byReach && !proof.protects) stricter.push({ ...found, why: whyOf(proof, reach.reachedThroughLoad) });
      if (proof.protects && !byReach) looser.push({ ...found, why: undefined });
    }
  }
  return { stricter, looser };
}

function whyOf(proof: DeviceProof, byFixedLoad: boolean): Why | undefined {
  if (proof.neutralAdrift && proof.tests.P2 === "fail") return "neutral joined to nothing";
  if (proof.reachedThroughLoad && !byFixedLoad) return "live through a plugged load";
  return proof.tests.P2 === "cannot-tell" ? "more switches than are tried" : undefined;
}

function compare(installation: Installation, seen: Map<string, number>): void {
  const { stricter, looser } = differences(proveInstallation(installation));
  expect(looser).toEqual([]);
  expect(stricter.filter(({ why }) => why === undefined)).toEqual([]);
  for (const { why } of stricter) seen.set(why ?? "", (seen.get(why ?? "") ?? 0) + 1);
}

const starts = samples.map(({ file }): Project => {
  const project = openSample(file.replace(/[.]loadside$/, ""));
  if (project.proposed !== undefined) return project;
  const started = runCommand(project, { command: "start-proposed", args: {} });
  if (!started.ok) throw new Error(started.refusal.message);
  return started.project;
});

describe("the proof against isolation by reachability", () => {
  test("agrees with it on all samples, but for neutrals that are joined to nothing", () => {
    const seen = new Map<string, number>();
    let proved = 0;
    for (const project of starts) {
      for (const state of ["as-found", "proposed"] as const) {
        const installation = getInstallation(project, state);
        compare(installation, seen);
        proved += proveInstallation(installation).filter(({ verdict }) => verdict === "all").length;
      }
    }
    expect(proved).toBeGreaterThan(30);
    expect([...seen.keys()].filter((why) => why !== "neutral joined to nothing")).toEqual([]);
  });

  test(`is never looser on ${WRONG_DRAWINGS} wrong drawings, and every difference has its reason`, () => {
    const seen = new Map<string, number>();
    for (let seed = 0; seed < WRONG_DRAWINGS; seed++) {
      const { project } = withMistakes(starts[seed % starts.length] as Project, new Picker(seed + 1), 4);
      compare(getInstallation(project, "proposed"), seen);
    }
    expect(seen.get("neutral joined to nothing")).toBeGreaterThan(5);
  }, 120_000);

  test("nor on drawings of nothing in particular", () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(randomDrawing, (drawing) => compare(drawing.installation(), seen)),
      { numRuns: RANDOM_DRAWINGS },
    );
    expect(seen.get("neutral joined to nothing")).toBeGreaterThan(5);
  }, 120_000);
});
