import type { CommandCall } from "../../answers/command-call.ts";
import type { SurveyedCable, SurveyTakeOver } from "../../answers/survey.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { LONGEST_TITLE, shorten } from "../../lib/shorten.ts";
import type { Box } from "../../model/enclosure.ts";
import { type ConductorKey, cableEnd, type Side } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { itemWords, listWords } from "./survey-words.ts";

const wording = catalogue({
  leadsTo: (cable: Part, items: Part) => `${cable} leads to ${items}.`,
  supplies: (cable: Part, box: Part) => `${cable} supplies ${box}.`,
  tag: (cable: Part, tag: Part) => `${cable}: tag “${tag}”.`,
  takeOver: (cables: Part, box: Part) => `Take over ${cables} of ${box} as surveyed`,
});

/** Letters that a tag takes, see the facts of an end. */
const MOST_TAG = 80;

/**
 * Roles that are settled as commands on as found, in one step: tags at the box and which cable supplies it, marked as
 * measured, or as told where no reading was taken; where a cable leaves the drawing, what it leads to. Far ends that are drawn stay: where they are not what was
 * measured (`differs`), a person settles it.
 */
export function takeOverOf(
  installation: Installation,
  box: Box,
  cables: readonly SurveyedCable[],
  differs: ReadonlySet<string>,
): SurveyTakeOver | undefined {
  const settled = cables.filter(({ role }) => role !== undefined);
  if (settled.length === 0) return undefined;
  const state = "as-found";
  const calls: CommandCall[] = [];
  const words: string[] = [];
  const [supply, ...more] = settled.filter(({ role }) => role?.kind.endsWith("supply"));
  if (supply !== undefined && more.length === 0) {
    const intent = { ...installation.intent.boxes[box.id], supply: supply.id };
    const { protect = {} } = intent;
    const others = Object.fromEntries(Object.entries(protect).filter(([cable]) => cable !== supply.id));
    calls.push({
      command: "set-box-intent",
      args: { state, enclosure: box.id, intent: { ...intent, ...("protect" in intent && { protect: others }) } },
    });
    words.push(wording.supplies(supply.name, box.name));
  }
  for (const { id, name, role, tag, isTold } of settled) {
    const evidence = isTold === true ? "told" : "measured";
    const cable = installation.cables[id];
    if (cable === undefined || role === undefined) continue;
    const sides = (["a", "b"] as const).filter((side) => isIn(cable.sides[side], box));
    for (const side of sides)
      for (const key of Object.keys(cable.conductors) as ConductorKey[]) {
        const end = cableEnd(id, key, side);
        if (cable.conductors[key]?.grounding === true || box.places[end] === undefined) continue;
        const target = { kind: "end", enclosure: box.id, id: end };
        calls.push({
          command: "set-property",
          args: { state, target, field: "tag", value: shorten(tag, MOST_TAG), evidence },
        });
      }
    words.push(wording.tag(name, tag));
    const far: Side = sides[0] === "a" ? "b" : "a";
    const side = cable.sides[far];
    if ("outside" in side && role.items.length > 0) {
      const outside = itemWords(role.items);
      if (side.outside !== outside)
        calls.push({ command: "move-cable-side", args: { state, cable: id, side: far, to: { outside } } });
      words.push(wording.leadsTo(name, outside));
    }
    if (!differs.has(id))
      calls.push({
        command: "mark-evidence",
        args: { state, target: { kind: "cable", id }, field: "sides", evidence },
      });
  }
  const title = wording.takeOver(listWords(settled.map(({ name }) => name)), box.name);
  return { call: { command: "run-together", args: { title: shorten(title, LONGEST_TITLE), calls } }, words };
}

const isIn = (side: Installation["cables"][never]["sides"]["a"], box: Box): boolean =>
  "enclosure" in side && side.enclosure === box.id;
