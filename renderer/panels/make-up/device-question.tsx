import type { DeviceHereAnswer } from "../../../shared-model/answers/make-up.ts";
import type { CableId, DeviceId } from "../../../shared-model/model/ids.ts";
import {
  type DeviceFeed,
  deviceProtected,
  type Fed,
  feedOf,
  withDevice,
  withReplacing,
  withSide,
} from "../../state/make-up/intent-edits.ts";
import type { BoxForm } from "./box-form.ts";
import { SideChoice } from "./side-choice.tsx";
import { wording } from "./words.ts";

/** One device of the box: it stays or becomes a ground-fault device; what uses current is fed by something. */
export function DeviceQuestion({ form, device }: { readonly form: BoxForm; readonly device: DeviceHereAnswer }) {
  const { intent, hasGuard, change } = form;
  const { id, name, title, kind, mayBecome } = device;
  const becomes = intent.replace.find((one) => one.device === id)?.type;
  const parts: readonly (Fed & { readonly name: string })[] = device.halves?.map((half) => ({
    device: id,
    half: half.id,
    name: half.name,
  })) ?? [{ device: id, name }];
  const isBeside = kind === "user" || (kind === "receptacle" && becomes === undefined);
  return (
    <div className="make-up-question">
      <p className="make-up-what">
        <strong>{name}</strong> {title}
      </p>
      {mayBecome.length > 0 && (
        <select
          className="field small"
          aria-label={wording.whatBecomes(name)}
          value={becomes ?? ""}
          onChange={({ target }) => become(target.value === "" ? undefined : target.value)}
        >
          <option value="">{wording.deviceStays}</option>
          {mayBecome.map((type) => (
            <option key={type.id} value={type.id}>
              {type.id === "gfci-blank" ? wording.receptacleGoes(type.name) : type.name}
            </option>
          ))}
        </select>
      )}
      {isBeside && parts.map((part) => <FeedAndSide key={part.name} form={form} part={part} hasGuard={hasGuard} />)}
    </div>
  );

  /** With the first ground-fault device each cable goes to the side that the drawing asks for; without one, all to LINE. */
  function become(type: string | undefined): void {
    const replacing = withReplacing(intent, id, type);
    const guarded = replacing.replace.length > 0 || form.answer.devices.some((one) => one.kind === "ground-fault");
    const changes = guarded !== hasGuard;
    const next = changes
      ? form.answer.cables.reduce(
          (made, cable) => withSide(made, cable.id, { protect: guarded && cable.protect }),
          replacing,
        )
      : replacing;
    const own = next.devices.filter((one) => type === undefined || one.device !== id);
    change({ ...next, devices: guarded ? own : own.map((one) => ({ ...one, protect: false })) });
  }
}

interface PartProps {
  readonly form: BoxForm;
  readonly part: Fed & { readonly name: string };
  readonly hasGuard: boolean;
}

/** A device, or half of it: what feeds it, and where it goes to with a ground-fault device here. */
function FeedAndSide({ form, part: { name, ...fed }, hasGuard }: PartProps) {
  const { intent, change } = form;
  const feed = feedOf(intent, fed);
  return (
    <>
      {fed.half !== undefined && <p className="make-up-what">{name}</p>}
      <FeedChoice form={form} fed={fed} name={name} />
      {hasGuard && feed.by !== "loop" && (
        <SideChoice
          name={name}
          protect={deviceProtected(intent, fed)}
          onChange={(protect) => change(withDevice(intent, fed, feed, protect))}
        />
      )}
    </>
  );
}

const keyOf = (feed: DeviceFeed): string => (feed.by === "always" ? feed.by : `${feed.by} ${feed.id}`);

function feedFrom(key: string): DeviceFeed {
  const [by, id = ""] = key.split(" ");
  if (by === "switch") return { by, id: id as DeviceId };
  return by === "loop" ? { by, id: id as CableId } : { by: "always" };
}

/** Asked only where there is a switch to choose. */
function FeedChoice({
  form: { answer, intent, change },
  fed,
  name,
}: Omit<PartProps, "part" | "hasGuard"> & { readonly fed: Fed; readonly name: string }) {
  const switches = answer.devices.filter(({ kind }) => kind === "switch");
  if (switches.length + intent.loops.length === 0) return null;
  const feed = feedOf(intent, fed);
  const lines: readonly (readonly [DeviceFeed, string])[] = [
    [{ by: "always" }, wording.alwaysOn],
    ...switches.map((one) => [{ by: "switch", id: one.id }, wording.switchedBy(one.name)] as const),
    ...intent.loops.map(
      ({ cable }) =>
        [
          { by: "loop", id: cable },
          wording.byLoop(answer.cables.find(({ id }) => id === cable)?.name ?? cable),
        ] as const,
    ),
  ];
  return (
    <select
      className="field small"
      aria-label={wording.feedOf(name)}
      value={keyOf(feed)}
      onChange={({ target }) => change(withDevice(intent, fed, feedFrom(target.value), deviceProtected(intent, fed)))}
    >
      {lines.map(([one, words]) => (
        <option key={keyOf(one)} value={keyOf(one)}>
          {words}
        </option>
      ))}
    </select>
  );
}
