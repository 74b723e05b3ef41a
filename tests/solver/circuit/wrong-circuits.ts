import samples from "../../../assets/samples/index.json" with { type: "json" };
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import type { Installation, Project, Supply } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { buildCircuit } from "../../../shared-model/solver/circuit/build-circuit.ts";
import { type Circuit, EVERYTHING_ON } from "../../../shared-model/solver/circuit/circuit.ts";
import { withMistakes } from "../../builders/mistakes.ts";
import { Picker } from "../../builders/picker.ts";
import { openSample } from "../../builders/samples/open-sample.ts";

export interface WrongCircuit {
  readonly installation: Installation;
  readonly circuit: Circuit;
  readonly pick: Picker;
}

/** Samples with mistakes made in them, on either supply, in a setting of some breakers off and some devices tripped. */
export function* wrongCircuits(count: number): Generator<WrongCircuit> {
  const starts = samples.map(({ name }) => started(openSample(name)));
  for (let seed = 0; seed < count; seed++) {
    const pick = new Picker(seed);
    const { project } = withMistakes(pick.from(starts, starts[0] as Project), pick, 6);
    const installation = getInstallation(project, "proposed");
    const supply: Supply = pick.chance(0.3) ? { system: "208Y/120" } : project.supply;
    const wired = buildCircuit(installation, supply);
    const off = wired.overcurrent.filter(() => pick.chance(0.2)).map(({ device }) => device);
    const tripped = wired.sensors.filter(() => pick.chance(0.2)).map(({ device }) => device);
    const circuit = wired.inSetting({ ...EVERYTHING_ON, off: new Set(off), tripped: new Set(tripped) });
    yield { installation, circuit, pick };
  }
}

function started(project: Project): Project {
  if (project.proposed !== undefined) return project;
  const done = runCommand(project, { command: "start-proposed", args: {} });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.project;
}
