import { allowOwnWorkers, createCheckingWorker } from "../../../renderer/analysis/trusted-worker.ts";
import {
  type AnswersMessage,
  type FromWorker,
  PROTOCOL_VERSION,
  type ToWorker,
} from "../../../shared-model/analysis/protocol.ts";
import type { CommandCall } from "../../../shared-model/answers/command-call.ts";
import type { Edit } from "../../../shared-model/commands/run-command.ts";
import { runCommand } from "../../../shared-model/commands/run-command.ts";
import { parseProject } from "../../../shared-model/format/parse-project.ts";
import { textToSave } from "../../../shared-model/format/text-to-save.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { bigHouse } from "../big-house.ts";
import { denseHouse } from "../dense-house.ts";

/** Milliseconds of every run, in order. */
export interface EditTimes {
  readonly boxes: number;
  /** With proposed started, each edit of as found flows on into it, and both states are checked and compared. */
  readonly proposed: boolean;
  /** Command to next state, patches included. */
  readonly command: number[];
  /** From the start of the command until its findings are in the window: worker and both ways of the message. */
  readonly findings: number[];
}

export interface BenchResult {
  readonly edits: readonly EditTimes[];
  /** Of each house, in the order of `edits`. */
  readonly firstCheck: readonly number[];
  readonly parse: { readonly boxes: number; readonly bytes: number; readonly ms: number[] };
  readonly save: readonly number[];
  /** The same piece of arithmetic again and again, all through the run: what this machine's clock and load do. */
  readonly noise: readonly number[];
}

declare global {
  interface Window {
    bench(rounds: number): Promise<BenchResult>;
    /** A building as a file holds it. */
    houseText(boxes: number): string;
    /** A building with half as many cables again, as a file holds it. */
    denseText(boxes: number): string;
  }
}

allowOwnWorkers();

window.houseText = (boxes) => textToSave(bigHouse(boxes));

window.denseText = (boxes) => textToSave(denseHouse(boxes));

window.bench = async (rounds) => {
  const houses = [false, true].flatMap((proposed) => [100, 1000].map((boxes) => new House(boxes, proposed)));
  const noise: number[] = [];
  const firstCheck: number[] = [];
  for (const house of houses) firstCheck.push(await house.open());
  for (const house of houses) for (let warm = 0; warm < 40; warm++) await house.edit(false);
  // Sizes take turns, so that whatever else the machine does falls on both.
  for (let round = 0; round < rounds; round++) {
    noise.push(calibrate());
    for (const house of houses) for (let step = 0; step < 4; step++) await house.edit(true);
  }
  const large = bigHouse(1000);
  const text = textToSave(large);
  const parse: number[] = [];
  const save: number[] = [];
  for (let run = 0; run < 25; run++) {
    const start = performance.now();
    const parsed = parseProject(text);
    const middle = performance.now();
    if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
    textToSave(parsed.value.project);
    if (run < 5) continue;
    parse.push(middle - start);
    save.push(performance.now() - middle);
  }
  for (const house of houses) house.close();
  return {
    edits: houses.map((house) => house.times),
    firstCheck,
    parse: { boxes: 1000, bytes: text.length, ms: parse },
    save,
    noise,
  };
};

function calibrate(): number {
  const start = performance.now();
  let sum = 0;
  for (let n = 1; n < 400_000; n++) sum += Math.sqrt(n) % 7;
  if (sum < 0) throw new Error("Arithmetic has failed.");
  return performance.now() - start;
}

/** A house that is edited box by box, each change followed by its contrary, and checked by the worker of the window. */
class House {
  readonly times: EditTimes;
  private project: Project;
  private revision = 0;
  private step = 0;
  private readonly worker = createCheckingWorker();
  private done: (message: AnswersMessage) => void = () => {};

  constructor(
    readonly boxes: number,
    proposed: boolean,
  ) {
    this.project = bigHouse(boxes);
    if (proposed) this.project = this.run({ command: "start-proposed", args: {} }).project;
    this.times = { boxes, proposed, command: [], findings: [] };
    this.worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      if (data.type === "answers" && data.revision === this.revision) this.done(data);
      if (data.type === "need-snapshot") throw new Error("The worker has lost the document.");
    };
    this.post({ type: "hello", version: PROTOCOL_VERSION });
  }

  async open(): Promise<number> {
    const start = performance.now();
    await this.answersTo({ type: "snapshot", project: this.project, revision: this.revision });
    return performance.now() - start;
  }

  async edit(measured: boolean): Promise<void> {
    const call = this.nextCall();
    const start = performance.now();
    const edit = this.run(call);
    const middle = performance.now();
    const base = this.revision;
    this.revision = base + 1;
    this.project = edit.project;
    await this.answersTo({ type: "patches", base, revision: base + 1, patches: edit.patches });
    if (!measured) return;
    this.times.command.push(middle - start);
    this.times.findings.push(performance.now() - start);
  }

  close(): void {
    this.worker.terminate();
  }

  private post(message: ToWorker): void {
    this.worker.postMessage(message);
  }

  private answersTo(message: ToWorker): Promise<AnswersMessage> {
    return new Promise((resolve) => {
      this.done = resolve;
      this.post(message);
    });
  }

  private run(call: CommandCall): Edit {
    const result = runCommand(this.project, call);
    if (!result.ok) throw new Error(`${call.command}: ${result.refusal.message}`);
    return result;
  }

  /** A joint opened and made again, a volume changed and changed back; every box has its turn, far apart. */
  private nextCall(): CommandCall {
    const turn = Math.floor(this.step / 4);
    const number = (turn * 37) % this.boxes;
    const box = `b${number}`;
    const end = `c${number}.bk.b`;
    const volume = (volumeIn3: number): CommandCall => ({
      command: "set-property",
      args: {
        state: "as-found",
        target: { kind: "enclosure", id: box },
        field: "volume",
        value: { kind: "marked", volumeIn3 },
      },
    });
    const calls: readonly CommandCall[] = [
      { command: "leave-splice", args: { state: "as-found", enclosure: box, end } },
      { command: "join-splice", args: { state: "as-found", enclosure: box, end, splice: `${box}-x` } },
      volume(100_000),
      volume(340_000),
    ];
    return calls[this.step++ % 4] as CommandCall;
  }
}
