import { findDeviceType } from "../../../shared-model/catalog/device-types.ts";
import type { EndKey } from "../../../shared-model/model/ids.ts";
import type { Installation, Project } from "../../../shared-model/model/project.ts";
import type { Selected } from "../selection.ts";
import { goTo } from "../session-store.ts";
import type { CommandLine } from "./entry.ts";
import { KIND_WORDS } from "./group-words.ts";
import { laterWording } from "./later-words.ts";

/** Everything on the sheet that has a name; choosing it goes there. A house has tens of thousands of ends, few with a tag. */
export function partLines({ enclosures, cables, loads }: Installation, { rooms }: Project): readonly CommandLine[] {
  const lines: CommandLine[] = [];
  const boxes = Object.values(enclosures);
  for (const { id, name, note, kind } of boxes)
    lines.push(lineTo({ kind: "enclosure", id }, name, note ?? KIND_WORDS[kind]));
  for (const { devices, name: box } of boxes)
    for (const { id, name, type } of Object.values(devices))
      lines.push(
        lineTo(
          { kind: "device", id },
          name,
          laterWording.inWord(findDeviceType(type)?.caption ?? laterWording.device, box),
        ),
      );
  for (const { id, name } of Object.values(cables)) lines.push(lineTo({ kind: "cable", id }, name, laterWording.cable));
  for (const { splices, name: box } of boxes)
    for (const { id, name } of Object.values(splices))
      lines.push({
        ...lineTo({ kind: "splice", id }, name, laterWording.spliceIn(box)),
        fullName: laterWording.splice(name),
      });
  for (const { places, id: enclosure, name: box } of boxes) {
    for (const end in places) {
      const tag = places[end as EndKey]?.tag;
      if (tag !== undefined)
        lines.push(lineTo({ kind: "end", enclosure, id: end as EndKey }, tag, laterWording.tagOnAnEndIn(box)));
    }
  }
  for (const { id, name } of Object.values(loads)) lines.push(lineTo({ kind: "load", id }, name, laterWording.load));
  for (const { id, name } of Object.values(rooms)) lines.push(lineTo({ kind: "room", id }, name, laterWording.room));
  return lines;
}

const lineTo = (target: Selected, title: string, note: string): CommandLine => ({
  key: `${target.kind} ${target.id}`,
  title,
  note,
  run: () => goTo(target, target.kind === "room" ? "rooms" : "details"),
});
