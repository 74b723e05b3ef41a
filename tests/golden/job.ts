import type { PropertyValue } from "../../shared-model/commands/command-args.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box, Panel } from "../../shared-model/model/enclosure.ts";
import { type Edition, emptyProject } from "../../shared-model/model/project.ts";
import { boxId, deviceId, spliceId } from "../builders/ids.ts";
import { SampleDrawing } from "../builders/samples/sample-drawing.ts";

/** A small job in a dwelling: panel P in the basement, main bond in it, and whatever a drawing adds by real commands. */
export class Job extends SampleDrawing {
  static in(title: string, edition: Edition = 2020): Job {
    return new Job(emptyProject(title, edition), "as-found")
      .roomAt("below", "Basement", "utility", "basement-unfinished")
      .panelAt(0, 0, "P", "panel-16", "Basement");
  }

  /** The wiring as found started as proposed; what follows is the plan. */
  plan(): Job {
    return new Job(this.run("start-proposed", {}).project, "proposed");
  }

  facts(device: string, facts: Readonly<Partial<Record<keyof Device & string, PropertyValue>>>): this {
    for (const [field, value] of Object.entries(facts))
      this.set({ kind: "device", id: deviceId(device) }, field, value);
    return this;
  }

  boxFacts(
    box: string,
    facts: Readonly<Partial<Record<(keyof Box & string) | (keyof Panel & string), PropertyValue>>>,
  ): this {
    for (const [field, value] of Object.entries(facts)) this.set({ kind: "enclosure", id: boxId(box) }, field, value);
    return this;
  }

  /** A duplex or single device at the end of a run: hot, neutral and ground of the cable straight on it. */
  endOfRun(cable: string, box: string, device: string, [hot, neutral]: readonly [string, string] = ["H1", "N1"]): this {
    return this.onto(cable, box, `${device}.${hot}`, `${device}.${neutral}`).land(`${cable}.cu@${box}`, `${device}.G`);
  }

  /** The same connector on several joints of a box. */
  connectors(box: string, connector: string, ...joints: readonly string[]): this {
    for (const joint of joints)
      this.run("change-connector", { enclosure: boxId(box), splice: spliceId(joint), connector });
    return this;
  }

  /** An end that is capped on purpose, for later. */
  spare(text: string): this {
    const { enclosure, key } = this.end(text);
    return this.run("mark-spare", { enclosure, end: key, spare: true });
  }
}
