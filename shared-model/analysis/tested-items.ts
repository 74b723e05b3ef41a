import { findDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { parseOutlet } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import type { RecordStage, RecordTest } from "../model/test-record.ts";
import { outletsOf, type PlacedOutlet } from "../queries/outlets-of.ts";
import { installationAt } from "../queries/test-record.ts";
import { JsonReader, shown } from "../solver/circuit/json-reader.ts";
import { Named } from "../solver/circuit/named-items.ts";

const wording = catalogue({
  noTestNoReset: (text: Part) => `${text} has no TEST and no RESET`,
  noGround: (name: Part) => `${name} has no ground contact`,
  severalCalled: (count: Part, name: Part, ids: Part) => `${count} items are called ${name}: give an id, one of ${ids}`,
  isOutlets: (name: Part, count: Part, halves: Part) => `${name} is ${count} outlets: name ${halves}`,
  noOutlet: (name: Part) => `${name} is no outlet, luminaire or appliance`,
  or: " or ",
  unknownAsFound: (name: Part) => `Nothing drawn as found has the id or name ${name}: check it`,
  unknownHere: (name: Part) => `Nothing drawn here has the id or name ${name}: check it`,
  unknownInProposed: (name: Part) => `Nothing drawn in proposed has the id or name ${name}: check it`,
});

/** What is tested: where it goes in the record, and how it is called. */
interface Found {
  readonly point: string;
  readonly item: string;
  readonly box: string;
}

/** Finds what a test is made at, by id or by a name that only one thing has in the wiring of that stage. */
export class TestedItemReader extends JsonReader {
  protected readonly project: Project;
  private readonly named = new Map<RecordStage, Named>();

  constructor(project: Project) {
    super();
    this.project = project;
  }

  protected find(input: unknown, at: string, stage: RecordStage, test: RecordTest): Found | undefined {
    const text = this.text(input, at);
    if (text === undefined) return undefined;
    const named = this.namedAt(stage);
    if (test === "own-test" || test === "reset") {
      const all = named.devices(text);
      const able = all.filter(({ type }) => findDeviceType(type)?.sensing !== undefined);
      if (all.length > 0 && able.length === 0) {
        this.refuse("wrong-kind", at, wording.noTestNoReset(text));
        return undefined;
      }
      return this.only(
        text,
        at,
        stage,
        able.map(({ id, name }) => ({ point: id as string, item: name })),
      );
    }
    if (test === "dead" || test === "continuity" || test === "note") return this.anything(text, at, stage);
    const outlet = this.outlet(text, at, stage);
    if (outlet === undefined) return undefined;
    const isVolts =
      test === "hot-ground" || test === "neutral-ground" || test === "plug-in-button" || test === "polarity";
    if (isVolts && outlet.ground === undefined) {
      this.refuse("no-contact", at, wording.noGround(outlet.name));
      return undefined;
    }
    return { point: outlet.key, item: outlet.name, box: this.boxOf(stage, outlet.key) };
  }

  /** An outlet, else a device, else a box or panel. */
  private anything(text: string, at: string, stage: RecordStage): Found | undefined {
    const named = this.namedAt(stage);
    const outlets = named.outlets(text).map(({ key, name }) => ({ point: key as string, item: name }));
    const devices = named.devices(text).map(({ id, name }) => ({ point: id as string, item: name }));
    const all = Object.values<Enclosure>(installationAt(this.project, stage).enclosures);
    const byId = all.filter(({ id }) => id === text);
    const boxes = (byId.length > 0 ? byId : all.filter(({ name }) => name === text)).map(({ id, name }) => ({
      point: id as string,
      item: name,
    }));
    const points = new Map([...outlets, ...devices, ...boxes].map((one) => [one.point, one]));
    return this.only(text, at, stage, [...points.values()]);
  }

  private only(
    text: string,
    at: string,
    stage: RecordStage,
    found: readonly { readonly point: string; readonly item: string }[],
  ): Found | undefined {
    const [first] = found;
    if (first === undefined) this.unknown(text, at, stage);
    else if (found.length === 1) return { ...first, box: this.boxOf(stage, first.point) };
    else
      this.ambiguous(
        text,
        at,
        found.map(({ point }) => point),
      );
    return undefined;
  }

  protected outlet(text: string, at: string, stage: RecordStage): PlacedOutlet | undefined {
    const named = this.namedAt(stage);
    const found = named.outlets(text);
    const [device] = named.devices(text);
    if (found.length === 1) return found[0];
    if (found.length > 1)
      this.ambiguous(
        text,
        at,
        found.map(({ key }) => key),
      );
    else if (device === undefined) this.unknown(text, at, stage);
    else {
      const halves = outletsOf(device).map(({ name }) => `"${name}"`);
      const message =
        halves.length > 1
          ? wording.isOutlets(device.name, halves.length, halves.join(wording.or))
          : wording.noOutlet(device.name);
      this.refuse("wrong-kind", at, message);
    }
    return undefined;
  }

  private unknown(text: string, at: string, stage: RecordStage): void {
    const unknown =
      stage === "before"
        ? wording.unknownAsFound
        : this.project.proposed === undefined
          ? wording.unknownHere
          : wording.unknownInProposed;
    this.refuse("unknown-item", at, unknown(shown(text)));
  }

  private ambiguous(text: string, at: string, points: readonly string[]): void {
    const ids = points.slice(0, 5).map((point) => `"${point}"`);
    this.refuse("ambiguous-name", at, wording.severalCalled(points.length, shown(text), ids.join(", ")));
  }

  private namedAt(stage: RecordStage): Named {
    let named = this.named.get(stage);
    if (named === undefined) {
      named = new Named(installationAt(this.project, stage));
      this.named.set(stage, named);
    }
    return named;
  }

  private boxOf(stage: RecordStage, point: string): string {
    const { enclosures } = installationAt(this.project, stage);
    const { device } = parseOutlet(point as never);
    const own = Object.values<Enclosure>(enclosures).find(({ id, devices }) => id === point || device in devices);
    return own?.name ?? "";
  }
}
