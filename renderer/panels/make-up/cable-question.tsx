import type { CableHereAnswer } from "../../../shared-model/answers/make-up.ts";
import type { CableId, ConductorKey, DeviceId } from "../../../shared-model/model/ids.ts";
import { type CableUse, legOf, protectOf, usageOf, withSide, withUse } from "../../state/make-up/intent-edits.ts";
import { changeMakeUp } from "../../state/make-up/making-up.ts";
import type { BoxForm } from "./box-form.ts";
import { LeftFields } from "./left-fields.tsx";
import { SideChoice } from "./side-choice.tsx";
import { wording } from "./words.ts";

/** One cable of the box: what it is for, and which side of the ground-fault device it goes to. */
export function CableQuestion({ form, cable }: { readonly form: BoxForm; readonly cable: CableHereAnswer }) {
  const { job, answer, intent, hasGuard, change } = form;
  const protect = protectOf(intent, cable.id);
  const decide = (side: boolean): void => {
    const next = withSide(intent, cable.id, { protect: side });
    changeMakeUp({
      ...job,
      intent: next,
      left: side ? job.left.filter((one) => one.cable !== cable.id) : job.left,
    });
  };
  const legs = answer.cables.find(({ id }) => id === intent.supply.cable)?.hots ?? [];
  const isWanting = protect !== true && cable.wanting.length > 0;
  return (
    <div className="make-up-question">
      <p className="make-up-what">
        <strong>{cable.name}</strong> {wording.leadsTo(cable.leadsTo)}
        {cable.feeds.length > 0 && `, ${wording.cableFeeds(cable.feeds.join(", "))}`}
      </p>
      <UseChoice form={form} cable={cable} />
      {legs.length > 1 && protect !== undefined && cable.hots.length === 1 && (
        <select
          className="field small"
          aria-label={wording.legOf(cable.name)}
          value={legOf(intent, cable.id) ?? intent.supply.leg ?? legs[0]?.id}
          onChange={({ target }) => change(withSide(intent, cable.id, { leg: target.value as ConductorKey }))}
        >
          {legs.map((leg) => (
            <option key={leg.id} value={leg.id}>
              {leg.name}
            </option>
          ))}
        </select>
      )}
      {hasGuard && protect !== undefined && <SideChoice name={cable.name} protect={protect} onChange={decide} />}
      {hasGuard && (
        // Its room stays when the reason goes, so that the next choice is where the hand was going.
        <p className="make-up-note" data-past={protect !== cable.protect || undefined}>
          {cable.why}
        </p>
      )}
      {isWanting && !hasGuard && (
        <p className="make-up-note">{wording.asked(cable.wanting.join(", "), cable.wanting.length)}</p>
      )}
      {isWanting && hasGuard && (
        <LeftFields
          cable={cable.id}
          name={cable.name}
          wanting={cable.wanting}
          left={job.left}
          onChange={(left) => changeMakeUp({ ...job, left })}
        />
      )}
    </div>
  );
}

/** Written into one text, so that a list can choose among them. */
const keyOf = (use: CableUse): string =>
  use.as === "switched" || use.as === "travellers"
    ? `${use.as} ${use.by}`
    : use.as === "by-loop"
      ? `${use.as} ${use.loop}`
      : use.as;

function readUse(key: string): CableUse {
  const [as, id = ""] = key.split(" ");
  if (as === "switched" || as === "travellers") return { as, by: id as DeviceId };
  if (as === "by-loop") return { as, loop: id as CableId };
  return { as: as as "downstream" | "loop" | "none" };
}

/** A box without a switch or a light of its own feeds its cables on: nothing is asked. */
function UseChoice({
  form: { answer, intent, change },
  cable,
}: {
  readonly form: BoxForm;
  readonly cable: CableHereAnswer;
}) {
  const use = usageOf(intent, cable.id);
  const switches = answer.devices.filter(({ kind }) => kind === "switch");
  const loops = intent.loops.filter((loop) => loop.cable !== cable.id);
  const mayLoop = answer.devices.some(({ kind }) => kind === "user") || loops.length > 0 || use.as !== "downstream";
  if (switches.length === 0 && !mayLoop) return null;
  const lines: readonly (readonly [CableUse, string])[] = [
    [{ as: "downstream" }, wording.fedOn],
    ...switches.map(({ id, name }) => [{ as: "switched", by: id }, wording.switchedBy(name)] as const),
    ...switches.map(({ id, name }) => [{ as: "travellers", by: id }, wording.travellersOf(name)] as const),
    [{ as: "loop" }, wording.switchLoop],
    ...loops.map(
      (loop) =>
        [
          { as: "by-loop", loop: loop.cable },
          wording.byLoop(answer.cables.find(({ id }) => id === loop.cable)?.name ?? loop.cable),
        ] as const,
    ),
    ...(use.as === "none" ? [[use, wording.noUse] as const] : []),
  ];
  return (
    <select
      className="field small"
      aria-label={wording.feedsOf(cable.name)}
      value={keyOf(use)}
      onChange={({ target }) => change(withUse(intent, cable.id, readUse(target.value)))}
    >
      {lines.map(([one, words]) => (
        <option key={keyOf(one)} value={keyOf(one)}>
          {words}
        </option>
      ))}
    </select>
  );
}
