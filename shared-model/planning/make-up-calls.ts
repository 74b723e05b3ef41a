import type { CommandCall } from "../answers/command-call.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, parseEnd, type SpliceId } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import type { StateName } from "../model/project.ts";
import { makeFresh } from "../rules/fix-parts.ts";
import type { JointPlan, PlannedAt, PlannedSplice } from "./joint-plan.ts";

const CAPPED: At = { kind: "capped" };

/**
 * A plan as commands, each of which runs on what those before made: new splices first, so that no splice that stays is
 * ever empty; then ends into splices that stay, ends onto terminals; jumpers that nothing needs go last.
 * @param enclosure As it is when they run: after a device was replaced.
 */
export function makeUpCalls(enclosure: Enclosure, state: StateName, plan: JointPlan): readonly CommandCall[] {
  const fresh = makeFresh(enclosure);
  const where = { state, enclosure: enclosure.id };
  const call = (command: string, args: object): CommandCall => ({ command, args: { ...where, ...args } });
  const calls: CommandCall[] = [];
  const renames = plan.splices.flatMap(({ home, group }) => {
    const name = home === undefined ? undefined : enclosure.splices[home]?.name;
    if (home === undefined || name === undefined || state !== "proposed") return [];
    const isOfGroup = name.startsWith(group) && /^\d*$/.test(name.slice(group.length));
    return saysNothing(name) && !isOfGroup ? [home] : [];
  });
  const names = new Set(
    Object.values(enclosure.splices).flatMap(({ id, name }) => (renames.includes(id) ? [] : [name])),
  );
  const spliceNames = plan.splices.map((splice) =>
    splice.home === undefined || renames.includes(splice.home) ? freeName(splice, names) : undefined,
  );
  const letters = freeLetters(enclosure);
  const ids = plan.splices.map(({ home }) => home ?? (fresh("s").id as SpliceId));
  const atOf = (to: PlannedAt): At => ("at" in to ? to.at : { kind: "splice", splice: ids[to.splice] as SpliceId });
  const isNew = (to: PlannedAt): boolean => "splice" in to && plan.splices[to.splice]?.home === undefined;

  // A jumper that moves with both ends could meet itself half-way.
  for (const [end] of plan.moved) {
    const parsed = parseEnd(end);
    if (parsed?.of !== "jumper" || parsed.side !== "a" || !plan.moved.has(jumperEnd(parsed.jumper, "b"))) continue;
    if (!wouldEmpty(enclosure, plan, end)) calls.push(call("cap-end", { end }));
  }
  const made = new Map<number, EndKey[]>(plan.splices.map((splice, number) => [number, [...splice.ends]]));
  for (const { awg, colour, sides } of plan.newJumpers) {
    const { id, name: long } = fresh("j");
    const name = letters.next().value ?? long;
    const [from, to] = sides.map((side) => (isNew(side) ? CAPPED : atOf(side)));
    calls.push(call("add-jumper", { jumper: id, name, awg, colour, from, to }));
    sides.forEach((side, index) => {
      if ("splice" in side && isNew(side))
        made.get(side.splice)?.push(jumperEnd(id as JumperId, index === 0 ? "a" : "b"));
    });
  }
  plan.splices.forEach((splice, number) => {
    if (splice.home !== undefined) return;
    const name = spliceNames[number];
    calls.push(
      call("splice-ends", { splice: ids[number], name, connector: splice.connector, ends: made.get(number) ?? [] }),
    );
  });
  for (const [end, to] of plan.moved) {
    if (isNew(to)) continue;
    const at = atOf(to);
    if (at.kind === "splice") calls.push(call("join-splice", { end, splice: at.splice }));
    else if (at.kind === "capped") calls.push(call("cap-end", { end }));
    else calls.push(call("land-end", { end, at }));
  }
  if (plan.removedJumpers.length > 0)
    calls.push({
      command: "remove-items",
      args: { state, items: plan.removedJumpers.map((id) => ({ kind: "jumper", id })) },
    });
  for (const { home, connector, connectorChanges } of plan.splices)
    if (home !== undefined && connectorChanges) calls.push(call("change-connector", { splice: home, connector }));
  plan.splices.forEach(({ home }, number) => {
    const name = spliceNames[number];
    if (home === undefined || name === undefined || name === enclosure.splices[home]?.name) return;
    calls.push({ command: "rename-item", args: { state, item: { kind: "splice", id: home }, name } });
  });
  return calls;
}

/**
 * A letter, a word of the card or a number in turn: a joint that becomes another by the plan is called by what it is then.
 * What a person named stays.
 */
const saysNothing = (name: string): boolean => /^([A-Z]{1,2}\d*|.*-s\d+)$/.test(name);

/** Short names for pigtails and links, as a card has them: the letters that nothing in the box is called by. */
function* freeLetters({ splices, jumpers, devices }: Enclosure): Generator<string, undefined> {
  const taken = new Set(
    [splices, jumpers, devices]
      .flatMap((table) => Object.values<{ readonly name: string }>(table))
      .map(({ name }) => name),
  );
  for (const letter of "abcdefghijklmnopqrstuvwxyz") if (!taken.has(letter)) yield letter;
  return undefined;
}

/** Whether capping an end early would take away the splice that it is in. */
function wouldEmpty({ places }: Enclosure, plan: JointPlan, end: EndKey): boolean {
  const at = places[end]?.at;
  if (at?.kind !== "splice" || !plan.splices.some(({ home }) => home === at.splice)) return false;
  const others = (Object.keys(places) as EndKey[]).filter((one) => {
    const there = places[one]?.at;
    return one !== end && there?.kind === "splice" && there.splice === at.splice;
  });
  return others.every((one) => plan.moved.has(one));
}

function freeName({ word }: PlannedSplice, taken: Set<string>): string {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? word : `${word}-${number}`;
    if (taken.has(name)) continue;
    taken.add(name);
    return name;
  }
}
