import type { Cable } from "../../../shared-model/model/cable.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { asId, type EndKey, type EntryId } from "../../../shared-model/model/ids.ts";
import type { Installation, Project, StateName } from "../../../shared-model/model/project.ts";
import { getInstallation } from "../../../shared-model/queries/installation-of.ts";
import { usualConnector } from "../../../shared-model/queries/usual-connector.ts";
import type { Colour } from "../../../shared-model/units/colour.ts";
import type { WireSize } from "../../../shared-model/units/wire-size.ts";
import { Drawing, type Spot } from "../drawing-by-commands.ts";
import { boxId, cableId, jumperId, spliceId } from "../ids.ts";

/** Jumpers of a joint: what each is called and where it goes. */
type Pigtails = Readonly<Record<string, Spot>>;

interface Made {
  readonly awg?: WireSize;
  readonly colour?: Colour;
}

/** A drawing with the make-ups of the trade: joints with pigtails, grounds of a box, a switch and its light. */
export class MakeUp extends Drawing {
  readonly #in: StateName;

  constructor(project: Project, state: StateName) {
    super(project, state);
    this.#in = state;
  }

  get installation(): Installation {
    return getInstallation(this.project, this.#in);
  }

  enclosure(name: string): Enclosure {
    const found = this.installation.enclosures[boxId(name)];
    if (found === undefined) throw new Error(`No ${name}.`);
    return found;
  }

  cableNamed(name: string): Cable {
    const found = this.installation.cables[cableId(name)];
    if (found === undefined) throw new Error(`No cable ${name}.`);
    return found;
  }

  /** A nonmetallic box whose clamps are part of it holds a cable by them. */
  override cable(name: string, from: string, to: string, options: Parameters<Drawing["cable"]>[3] = {}): this {
    super.cable(name, from, to, options);
    if (options.means !== undefined) return this;
    for (const box of [from, to]) {
      const enclosure = this.enclosure(box);
      const isPartOfIt = enclosure.kind === "box" && enclosure.internalClamps === "included-in-marked-volume";
      const id = asId<EntryId>(`e-${name}`);
      if (isPartOfIt) this.set({ kind: "entry", enclosure: enclosure.id, id }, "means", "integral-clamp");
    }
    return this;
  }

  /** Black on the breaker, white and bare on the bars. */
  home(cable: string, breaker: string, panel = "P"): this {
    return this.land(`${cable}.bk@${panel}`, `${breaker}.OUT`)
      .land(`${cable}.wh@${panel}`, `${panel} neutral.BAR`)
      .land(`${cable}.cu@${panel}`, `${panel} ground.BAR`);
  }

  /** A splice of cable ends with a jumper to each place, in the first twist-on of the stock that takes them all. */
  joint(box: string, name: string, ends: readonly string[], pigtails: Pigtails = {}, made: Made = {}): this {
    const { awg = "12", colour = "black" } = made;
    const enclosure = boxId(box);
    const [first, ...others] = Object.entries(pigtails);
    const tails = ends.length > 1 || first === undefined ? Object.entries(pigtails) : others;
    if (ends.length > 1 || first === undefined) this.splice(name, box, "unknown", ...ends);
    else {
      const [jumper, spot] = first;
      const to = this.at(enclosure, spot);
      const from = { kind: "capped" } as const;
      this.run("add-jumper", { enclosure, jumper: jumperId(jumper), name: jumper, awg, colour, from, to });
      this.splice(name, box, "unknown", ...ends, `${jumper}.a`);
    }
    for (const [jumper, spot] of tails) this.jumper(jumper, box, `splice ${name}`, spot, { awg, colour });
    return this.fitConnector(box, name);
  }

  /** As `joint`, but a single end with a single place to go is landed there. */
  meet(box: string, name: string, ends: readonly string[], pigtails: Pigtails, made: Made = {}): this {
    const [end, spot] = [ends[0], Object.values(pigtails)[0]];
    const isDirect = ends.length === 1 && Object.keys(pigtails).length === 1;
    if (isDirect && end !== undefined && spot !== undefined) return this.land(end, spot);
    return this.joint(box, name, ends, pigtails, made);
  }

  /** Puts the first twist-on of the stock that takes what is joined now on a splice; none of them does: leaves it. */
  fitConnector(box: string, name: string): this {
    const { places } = this.enclosure(box);
    const splice = spliceId(name);
    const members = (Object.keys(places) as EndKey[]).filter((end) => {
      const at = places[end]?.at;
      return at?.kind === "splice" && at.splice === splice;
    });
    const connector = usualConnector(this.installation, this.enclosure(box), members);
    return connector === "unknown" ? this : this.run("change-connector", { enclosure: boxId(box), splice, connector });
  }

  /**
   * Grounds of a box: bare ends, a pigtail to each device, and one to the metal. A single bare end goes straight to a
   * single place, and is left capped where there is none.
   */
  grounds(box: string, cables: readonly string[], devices: readonly string[] = [], awg: WireSize = "12"): this {
    const enclosure = this.enclosure(box);
    const ends = cables.map((cable) => `${cable}.cu@${box}`);
    const isMetal = enclosure.kind === "box" && enclosure.material === "metal";
    const spots = [...devices.map((device) => `${device}.G`), ...(isMetal ? ["bond"] : [])];
    const pigtails = Object.fromEntries(spots.map((each, index) => [`${box}g${index + 1}`, each]));
    if (ends.length === 1 && spots.length === 0) return this;
    return this.meet(box, `${box}e`, ends, pigtails, { awg, colour: "bare" });
  }

  /** Two cables through a duplex by its screws, as it was long done: hot pair and neutral pair, the tabs carry on. */
  throughScrews(box: string, from: string, onward: string, device: string): this {
    return this.land(`${from}.bk@${box}`, `${device}.H1`)
      .land(`${from}.wh@${box}`, `${device}.N1`)
      .land(`${onward}.bk@${box}`, `${device}.H2`)
      .land(`${onward}.wh@${box}`, `${device}.N2`);
  }

  /** Hot and neutral of a cable on the two screws of a device, `H`/`N` or `H1`/`N1` or `LINE_H`/`LINE_N`. */
  onto(cable: string, box: string, hot: Spot, neutral: Spot): this {
    return this.land(`${cable}.bk@${box}`, hot).land(`${cable}.wh@${box}`, neutral);
  }

  /**
   * Hots joined with a pigtail, whites joined with a pigtail, so that the device can be taken out and the rest stays on;
   * straight on the device where there is one cable.
   */
  pigtailed(box: string, cables: readonly string[], hot: Spot, neutral: Spot, awg: WireSize = "12"): this {
    const all = (conductor: string) => cables.map((cable) => `${cable}.${conductor}@${box}`);
    return this.meet(box, `${box}h`, all("bk"), { [`${box}p`]: hot }, { awg }).meet(
      box,
      `${box}n`,
      all("wh"),
      { [`${box}q`]: neutral },
      { awg, colour: "white" },
    );
  }

  /** A single-pole switch of box `box`: fed by the first cable, on to the others unswitched, its light on `leg`. */
  switched(box: string, cables: readonly string[], device: string, leg: string, awg: WireSize = "12"): this {
    const all = (conductor: string) => cables.map((cable) => `${cable}.${conductor}@${box}`);
    return this.meet(box, `${box}h`, all("bk"), { [`${box}p`]: `${device}.C` }, { awg })
      .joint(box, `${box}n`, [...all("wh"), `${leg}.wh@${box}`], {}, { awg, colour: "white" })
      .land(`${leg}.bk@${box}`, `${device}.L`);
  }
}
