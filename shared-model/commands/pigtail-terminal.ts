import { catalogue, type Part } from "../lib/catalogue.ts";
import type { EndKey, TerminalName } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import { type EndFacts, getEndFacts } from "../queries/end-facts.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { landedAt } from "../queries/landings.ts";
import { nameOfTerminal } from "../queries/terminals-of.ts";
import { isThicker } from "../units/wire-size.ts";
import { makeJumper } from "./add-jumper.ts";
import { catalogText, flag, idText, nameText, optional, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { enclosureOr, noSuchPlace } from "./find-or-refuse.ts";
import { idsInUse } from "./fresh-ids.ts";
import { assumed } from "./make-device.ts";
import { moveEnds, written } from "./move-ends.ts";
import { makeSplice, noSuchConnector } from "./splice-ends.ts";

type Args = CommandArgs["pigtail-terminal"];

const wording = catalogue({
  nothingLanded: (terminal: Part) => `Nothing is landed on ${terminal}. Land a conductor there first.`,
  pigtail: (terminal: Part) => `Pigtail ${terminal}`,
});

/**
 * Moves all ends on a terminal into a new splice and brings one jumper from it to the terminal. The jumper is made like
 * the thickest conductor that was there.
 */
export const pigtailTerminal = defineCommand<Args>({
  id: "pigtail-terminal",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    device: idText,
    terminal: catalogText,
    splice: idText,
    spliceName: nameText,
    connector: catalogText,
    connectorAssumed: optional(flag),
    jumper: idText,
    jumperName: nameText,
  }),
  label(project, { state, enclosure, device, terminal }) {
    const found = getInstallation(project, state).enclosures[enclosure]?.devices[device];
    return wording.pigtail(found === undefined ? terminal : nameOfTerminal(found, terminal as TerminalName));
  },
  refuse(project, { state, enclosure, device, terminal: name, splice, connector, jumper }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    const terminal = name as TerminalName;
    const missing = noSuchPlace(found, { kind: "terminal", device, terminal, hole: 1 });
    if (missing !== undefined) return missing;
    if (landedAt(found.enclosure, device, terminal).length === 0) {
      const where = nameOfTerminal(written(found.enclosure.devices[device]), terminal);
      return refusal("nothing-landed", wording.nothingLanded(where));
    }
    return noSuchConnector(connector) ?? idsInUse(project, splice, jumper);
  },
  apply(draft, args, before) {
    const { state, enclosure: id, device, splice } = args;
    const installation = getInstallation(before, state);
    const enclosure = written(installation.enclosures[id]);
    const terminal = args.terminal as TerminalName;
    const ends = landedAt(enclosure, device, terminal).map((landing) => landing.end);
    const { awg, colour, material, stranded } = thickest(ends.map((end) => getEndFacts(installation, enclosure, end)));
    const { spliceName: name, connector, connectorAssumed } = args;
    makeSplice(draft, state, id, { id: splice, name, connector, connectorAssumed }, before);
    moveEnds(draft, state, id, new Map<EndKey, At>(ends.map((end) => [end, { kind: "splice", splice }])), before);
    const jumper = {
      id: args.jumper,
      name: args.jumperName,
      awg,
      colour,
      material,
      stranded,
      order: nextOrder(enclosure.jumpers),
      evidence: assumed(["awg", "colour", "material", "stranded"]),
    };
    makeJumper(draft, state, id, jumper, { kind: "splice", splice }, { kind: "terminal", device, terminal, hole: 1 });
  },
});

const thickest = (facts: readonly EndFacts[]): EndFacts =>
  facts.reduce((best, one) => (isThicker(one.awg, best.awg) ? one : best));
