import { asId, type EntryId } from "../../../shared-model/model/ids.ts";
import { emptyProject } from "../../../shared-model/model/project.ts";
import { boxId, cableId } from "../ids.ts";
import { SampleDrawing } from "../samples/sample-drawing.ts";

/** A drawing of its own needs an edition; the program starts new drawings with the same. */
const EDITION = 2023;

/** A common box as the program offers it: made up, with cables that lead out of the drawing, and nothing claimed as seen. */
export class TemplateDrawing extends SampleDrawing {
  static begin(title: string): TemplateDrawing {
    return new TemplateDrawing(emptyProject(title, EDITION), "as-found");
  }

  /** A cable that leaves the drawing from a box, held as the box holds cables. */
  stub(name: string, box: string, to: string, item: string): this {
    const enclosure = this.enclosure(box);
    const clamps = enclosure.kind === "box" ? enclosure.internalClamps : "none";
    const means =
      clamps === "included-in-marked-volume"
        ? "integral-clamp"
        : clamps === "none"
          ? "external-connector"
          : "internal-clamp";
    const a = { enclosure: boxId(box), newEntry: asId<EntryId>(`e-${name}`), means } as const;
    return this.run("route-cable", { id: cableId(name), item, name, a, b: { outside: to } });
  }

  /** The cable that brings the supply. */
  feed(name: string, box: string, item: string): this {
    return this.stub(name, box, "the supply", item).run("set-box-intent", {
      enclosure: boxId(box),
      intent: { supply: cableId(name) },
    });
  }

  /** A capped end that is left so on purpose. */
  spare(end: string): this {
    const { enclosure, key } = this.end(end);
    return this.run("mark-spare", { enclosure, end: key, spare: true });
  }

  covered(box: string, cover: string): this {
    return this.set({ kind: "enclosure", id: boxId(box) }, "cover", cover);
  }
}
