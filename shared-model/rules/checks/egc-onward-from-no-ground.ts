import type { CommandCall } from "../../answers/command-call.ts";
import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import type { Section } from "../../solver/section.ts";
import { fixIn, fixTogether } from "../fix-parts.ts";
import { type GroundGroup, groundsOf } from "../grounds.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { isGroundFaultFace, type UngroundedFace, ungroundedFaces } from "../no-ground.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  joined:
    "{outlet} in {box} has no ground, and {wires} joins its ground screw to {others}: a fault in one makes the metal of the others live. Detach and cap {wires}.",
});

const wording = catalogue({
  cap: (ends: Part) => `Detach and cap ${ends}`,
  inBox: (end: Part, box: Part) => `${end} in ${box}`,
});

/** One finding for everything that is joined, at the ground-fault receptacle where there is one. */
export const egcOnwardFromNoGround = defineRule({
  id: "egc-onward-from-no-ground",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Where no ground comes from the panel, no ground wire may join outlets to each other.",
  why: "A ground wire that leads to no ground carries a fault instead of clearing it: whatever touches the live conductor at one outlet stands at the ground slot of the next. A ground-fault receptacle without a ground must not pass a ground wire on to what it feeds, nor may the receptacles behind it be joined by one.",
  messages,
  sections: everyJudgedEdition("406.4(D)(2)", "sourced"),
  check({ section, state, report }) {
    const linked = ungroundedFaces(section).flatMap((face) => {
      const group = groundsOf(section, face.box).groupAtTerminal(face.device.id, face.ground);
      return !face.neverHad || group === undefined || group.ends.length === 0 ? [] : { face, group };
    });
    const told = new Set<string>();
    for (const { face, group } of linked.sort(groundFaultFirst)) {
      if (told.has(face.device.id)) continue;
      const others = joinedElsewhere(section, face);
      if (others.length === 0) continue;
      for (const { id } of others) told.add(id);
      const { installation } = section;
      const net = linked.filter((one) => one.face === face || others.some(({ id }) => id === one.face.device.id));
      report({
        subjects: [subject("device", face.device)],
        message: fillIn(messages.joined, {
          outlet: face.device.name,
          box: face.box.name,
          wires: listed(group.ends.map((end) => nameOfEnd(installation, face.box, end))),
          others: listed(others.map(({ name }) => name)),
        }),
        ...fixIn(state, () => capFix(section, net, state)),
        ...basisOf(...group.ends.map((end) => marksOn(face.box.places[end] ?? {}, "at"))),
      });
    }
  },
});

interface Linked {
  readonly face: UngroundedFace;
  readonly group: GroundGroup;
}

const groundFaultFirst = (one: Linked, other: Linked): number =>
  Number(isGroundFaultFace(other.face.device)) - Number(isGroundFaultFace(one.face.device)) ||
  one.face.device.name.localeCompare(other.face.device.name, "en", { numeric: true });

/** What has a ground screw in another box, and metal joins the two. */
function joinedElsewhere(section: Section, { device, box, ground }: UngroundedFace) {
  const reach = section.reach();
  return section.enclosures
    .filter(({ id }) => id !== box.id)
    .flatMap((enclosure) => inOrder(enclosure.devices))
    .filter((other) => {
      const screw = terminalsOf(other).find(({ purpose }) => purpose === "ground");
      const spot = { device: device.id, node: ground };
      return screw !== undefined && reach.areJoined(spot, { device: other.id, node: screw.name });
    });
}

function capFix(section: Section, net: readonly Linked[], state: StateName): Fix | undefined {
  const calls: CommandCall[] = [];
  const ends: string[] = [];
  for (const { face, group } of net) {
    const plan = new MakeUpPlan(section.installation, face.box, state);
    for (const end of group.ends) {
      plan.land(end, { kind: "capped" });
      ends.push(wording.inBox(nameOfEnd(section.installation, face.box, end), face.box.name));
    }
    const fix = plan.fix(() => "");
    if (fix === undefined) return undefined;
    const { command, args } = fix.call;
    calls.push(...(command === "run-together" ? (args as { calls: readonly CommandCall[] }).calls : [fix.call]));
  }
  return fixTogether(wording.cap(listed(ends)), calls);
}
