import { properties } from "../../../shared-model/commands/catalog/properties.ts";
import type { ItemRef, PropertyTarget } from "../../../shared-model/commands/command-args.ts";
import type { EvidenceMark } from "../../../shared-model/model/evidence.ts";
import { asId, type EndKey, type LabelId } from "../../../shared-model/model/ids.ts";
import { type Edition, emptyProject } from "../../../shared-model/model/project.ts";
import type { RoomKind } from "../../../shared-model/model/room.ts";
import { boxId, cableId, deviceId, roomId } from "../ids.ts";
import { MakeUp } from "./make-up.ts";

/** Columns and rows of the sheet of a sample, so far apart that boxes of every kind stay clear of each other. */
const COLUMN = 1248;
const ROW = 1008;

/** What a person decides or calls, not what was found out. */
const DECIDED: ReadonlySet<string> = new Set(["note", "notes", "roomId", "zones"]);

interface Placing {
  readonly room?: string;
  readonly note?: string;
}

/** A drawing that ships, drawn by real commands, with places on the sheet and a mark for every fact. */
export class SampleDrawing extends MakeUp {
  static empty(title: string, edition: Edition): SampleDrawing {
    return new SampleDrawing(emptyProject(title, edition), "as-found");
  }

  /** The same drawing with its second account of the wiring started; what follows edits that one. */
  proposing(): SampleDrawing {
    const started = this.run("start-proposed", {});
    return new SampleDrawing(started.project, "proposed");
  }

  notes(...sentences: readonly string[]): this {
    return this.set({ kind: "project" }, "notes", sentences.join(" "));
  }

  roomAt(grade: "above" | "at" | "below", name: string, ...kinds: readonly RoomKind[]): this {
    return this.room(name, ...kinds).set({ kind: "room", id: roomId(name) }, "grade", grade);
  }

  /** A box at a column and row of the sheet. */
  boxAt(column: number, row: number, name: string, item: string, placing: Placing = {}): this {
    return this.box(name, item, { ...placing, at: { x: column * COLUMN, y: row * ROW } });
  }

  volumeUnknown(box: string): this {
    return this.set({ kind: "enclosure", id: boxId(box) }, "volume", { kind: "unknown" });
  }

  /** The service panel, with the main bond in it. */
  panelAt(column: number, row: number, name: string, item: string, room: string): this {
    this.panel(name, item, { at: { x: column * COLUMN, y: row * ROW }, set: { mainBond: "here" } });
    return this.set({ kind: "enclosure", id: boxId(name) }, "roomId", roomId(room));
  }

  /** A breaker in a space. Its leg follows the space as buses are commonly laid out: spaces 1 and 2 on A, 3 and 4 on B. */
  breakerIn(slot: number, name: string, panel: string, options: { ratingA?: number; type?: string } = {}): this {
    const legAt = (space: number) => (Math.ceil(space / 2) % 2 === 1 ? "A" : "B");
    const poles = options.type?.endsWith("-2") === true ? [slot, slot + 2] : [slot];
    const target: PropertyTarget = { kind: "device", id: deviceId(name) };
    return this.breaker(name, panel, options).set(target, "slot", slot).set(target, "legs", poles.map(legAt));
  }

  /** Another device in the place of one, its conductors on the terminals that correspond. */
  replace(device: string, id: string, type: string): this {
    return this.run("replace-device", { device: deviceId(device), id: deviceId(id), type, name: id });
  }

  /** Another name for a splice or jumper that stays what it is. */
  call(item: ItemRef, name: string): this {
    return this.run("rename-item", { item, name });
  }

  plate(id: string, wording: string, device: string, requiredBy: string): this {
    const on = { device: deviceId(device) };
    return this.run("add-label", { id: asId<LabelId>(id), wording, on, requiredBy });
  }

  directory(lines: Readonly<Record<string, string>>): this {
    for (const [breaker, text] of Object.entries(lines))
      this.run("set-directory-line", { device: deviceId(breaker), text });
    return this;
  }

  /** How everything about these boxes is known: what they are, their devices, where each end is. */
  know(evidence: EvidenceMark, ...boxes: readonly string[]): this {
    for (const name of boxes) {
      const { id: enclosure, devices, entries, places, splices, ...rest } = this.enclosure(name);
      const mark = (target: PropertyTarget, entity: object, ...more: readonly string[]): void => {
        const recorded = properties[target.kind].map(({ field }) => field).filter((field) => field in entity);
        for (const field of [...recorded.filter((one) => !DECIDED.has(one)), ...more])
          this.run("mark-evidence", { target, field, evidence });
      };
      mark({ kind: "enclosure", id: enclosure }, rest);
      for (const entry of Object.values(entries)) mark({ kind: "entry", enclosure, id: entry.id }, entry);
      for (const device of Object.values(devices))
        if (!device.type.endsWith("-bar")) mark({ kind: "device", id: device.id }, device, "type");
      for (const [id, place] of Object.entries(places)) mark({ kind: "end", enclosure, id: id as EndKey }, place, "at");
      for (const splice of Object.values(splices)) mark({ kind: "splice", id: splice.id }, splice, "connector");
    }
    return this;
  }

  /** How it is known what these cables are made of. */
  knowCables(evidence: EvidenceMark, ...cables: readonly string[]): this {
    for (const name of cables)
      for (const field of ["construction", "conductors"])
        this.run("mark-evidence", { target: { kind: "cable", id: cableId(name) }, field, evidence });
    return this;
  }

  /** Everything as told, but what `know` says afterwards. */
  knowAll(evidence: EvidenceMark): this {
    const { enclosures, cables } = this.installation;
    return this.know(evidence, ...Object.values(enclosures).map(({ name }) => name)).knowCables(
      evidence,
      ...Object.values(cables).map(({ name }) => name),
    );
  }
}
