import type { RoomWay } from "../../../shared-model/answers/make-up.ts";
import { formatVolume } from "../../../shared-model/units/volume.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly rooms: readonly RoomWay[];
  /** Undefined where the box must get room: it cannot be left as it is. */
  readonly leave?: (() => void) | undefined;
  readonly take: (title: string) => void;
}

/** How the box gets the room that it needs, each way with what its fill is then. Nothing where it has room enough. */
export function RoomChoice({ rooms, leave, take }: Props) {
  if (rooms.length === 0) return null;
  return (
    <Section title={wording.room}>
      <div className="part-body">
        {rooms.map(({ title, taken, fill }) => (
          <Way key={title} words={title} fill={fill} on={taken} choose={() => take(title)} />
        ))}
        {leave !== undefined && <Way words={wording.leaveBox} on={rooms.every(({ taken }) => !taken)} choose={leave} />}
      </div>
    </Section>
  );
}

interface WayProps {
  readonly words: string;
  readonly fill?: RoomWay["fill"];
  readonly on: boolean;
  readonly choose: () => void;
}

function Way({ words, fill, on, choose }: WayProps) {
  return (
    <label className="make-up-side make-up-room">
      <input type="radio" name="make-up-room" checked={on} onChange={choose} />
      <span>
        {words}
        {fill?.available !== undefined && (
          <small className="fig"> {wording.fills(formatVolume(fill.total), formatVolume(fill.available))}</small>
        )}
      </span>
    </label>
  );
}
