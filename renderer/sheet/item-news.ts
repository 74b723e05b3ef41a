import type { CannotTell, Finding, Subject as FoundSubject } from "../../shared-model/answers/finding.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { OutletKey } from "../../shared-model/model/ids.ts";
import { parseOutlet } from "../../shared-model/model/ids.ts";
import { answerWords } from "../state/answer-words.ts";

type Answer = Finding | CannotTell;

/** What the checks say of each thing of a box, in words, by "device d1", "splice s1", "cable c1", "end c1.bk.a", "jumper j1". */
export type ItemNews = ReadonlyMap<string, string>;

/** A terminal and an outlet count with their device, an entry with its cable: as the signs of the sheet stand. */
export function itemNews({ sheaths }: Pick<BoxDrawing, "sheaths">, answers: readonly Answer[]): ItemNews {
  const groups = new Map<string, Answer[]>();
  for (const answer of answers) {
    const [subject] = answer.subjects;
    const key = subject && keyOf(sheaths, subject);
    if (key === undefined) continue;
    const list = groups.get(key);
    if (list === undefined) groups.set(key, [answer]);
    else list.push(answer);
  }
  return new Map([...groups].map(([key, list]) => [key, answerWords(list)]));
}

function keyOf(sheaths: BoxDrawing["sheaths"], { kind, id }: FoundSubject): string | undefined {
  if (kind === "outlet") return `device ${parseOutlet(id as OutletKey).device}`;
  if (kind === "terminal") return `device ${id.split(".")[0]}`;
  if (kind !== "entry") return `${kind} ${id}`;
  const cable = sheaths.find(({ entry }) => entry === id)?.cable;
  return cable && `cable ${cable}`;
}
