import type { ArrangedMove, ArrangeProgress } from "../../shared-model/analysis/protocol.ts";
import type { WorkerClient } from "./client-contract.ts";
import type { Line, Takers } from "./worker-line.ts";

interface AtWork {
  readonly request: number;
  readonly tell: (progress: ArrangeProgress) => void;
  readonly done: (moves: readonly ArrangedMove[] | undefined) => void;
}

interface Arranger {
  readonly arrange: WorkerClient["arrange"];
  readonly takers: Takers<"arranging" | "arranged">;
  /** The worker is gone: nothing comes of what is being arranged. */
  giveUp(): void;
}

/**
 * Arranging of boxes, one at a time. It takes as long as it takes, and other answers come meanwhile: nobody waits for the
 * deadline by it.
 */
export function createArranging(line: Line): Arranger {
  let atWork: AtWork | undefined;

  function end(moves: readonly ArrangedMove[] | undefined): void {
    const ended = atWork;
    atWork = undefined;
    ended?.done(moves);
  }

  return {
    arrange(state, what, tell) {
      end(undefined);
      if (!line.isOpen()) return { moves: Promise.resolve(undefined), stop: () => {} };
      const request = line.nextRequest();
      const moves = new Promise<readonly ArrangedMove[] | undefined>((done) => {
        atWork = { request, tell, done };
      });
      line.post({ type: "arrange", request, base: line.sent(), state, what });
      return {
        moves,
        stop() {
          if (atWork?.request !== request) return;
          end(undefined);
          line.post({ type: "stop-arranging" });
        },
      };
    },
    takers: {
      arranging(message) {
        if (message.request === atWork?.request) atWork.tell(message);
      },
      arranged({ request, base, moves }) {
        if (request === atWork?.request) end(line.ifCurrent(base, moves));
      },
    },
    giveUp: () => end(undefined),
  };
}
