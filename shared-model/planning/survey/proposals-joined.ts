import type { SurveyProposal } from "../../answers/survey.ts";
import type { SurveySwitch } from "../../model/survey.ts";
import { allOn, gainOfJoining } from "./gains.ts";
import { harmOfJoining, leadsLeft, mayClose } from "./harm.ts";
import { isSource } from "./lead.ts";
import { ProposalGround } from "./proposal-ground.ts";
import { JOIN_WORDS as wording } from "./proposal-words.ts";
import { STEPS } from "./survey-words.ts";

/** Minutes of work. Modelling values. */
const MINUTES = { join: 7, eachJoined: 1, eachItem: 0.5 } as const;

/** Ways to be solved for pairs of cables, at most: each costs some hundredths of a millisecond. */
const MOST_SOLVED = 400;

/** Tests with cables joined to the proved supply. */
export class JoinedProposals extends ProposalGround {
  /** One or two cables joined to the proved supply, while off; on again, what works is listed. */
  joinings(): readonly SurveyProposal[] {
    const { inference } = this;
    const supply = this.places().find(
      (cable) => this.isLive(cable) && leadsLeft(inference, cable).every((lead) => inference.menu.givesPower.has(lead)),
    );
    if (supply === undefined) return [];
    const may = this.unsettled().filter((cable) => cable !== supply && this.mayBeJoined(supply, cable));
    const secondFeed = this.places().some((cable) => cable !== supply && leadsLeft(inference, cable).some(isSource));
    // Where more was listed than there are cables, a cable may hold several: one at a time tells which.
    const tooMany = this.box.groups.length > this.box.cables.length - 1;
    const around = allOn(inference);
    const sets: (readonly number[])[] = may.map((cable) => [cable]);
    if (!secondFeed && !tooMany)
      for (const [index, one] of may.entries()) for (const other of may.slice(index + 1)) sets.push([one, other]);
    const seen = new Set<string>();
    const found: SurveyProposal[] = [];
    let budget = MOST_SOLVED;
    for (const cables of sets) {
      const kinds = cables.map((cable) => inference.alike(cable)).sort((p, q) => p - q);
      if (seen.has(kinds.join())) continue;
      seen.add(kinds.join());
      const ways = cables.reduce((product, cable) => product * leadsLeft(inference, cable).length, 1);
      if (cables.length > 1) {
        budget -= ways;
        if (budget < 0) break;
      }
      const bits = gainOfJoining(inference, cables, around);
      const harm = harmOfJoining(inference, [supply, ...cables], this.nominalV, this.isOpenDead);
      if (harm === undefined) found.push(this.joining(supply, cables, bits, around.switches));
    }
    return found;
  }

  /** Whether joining one cable does no harm under any guess that is left; why not, where it does, is noted. */
  private mayBeJoined(supply: number, cable: number): boolean {
    const harm = harmOfJoining(this.inference, [supply, cable], this.nominalV, this.isOpenDead);
    if (harm === undefined) return true;
    const isLoop = harm.leads.some(mayClose);
    const { id, name } = this.cable(cable);
    this.refuse(
      {
        key: `join ${id}`,
        words: wording.join(name, this.cable(supply).name),
        remedy: isLoop ? wording.ohmsFirst(name) : "",
      },
      harm,
    );
    return false;
  }

  private joining(
    supply: number,
    cables: readonly number[],
    bits: number,
    switches: readonly SurveySwitch[],
  ): SurveyProposal {
    const ids = [supply, ...cables].map((cable) => this.cable(cable).id);
    const names = this.names(cables);
    const isSwitched = switches.length > 0;
    return this.made({
      key: `join ${ids.slice(1).join(" ")}`,
      words: wording.joinAndList(names, this.cable(supply).name),
      bits,
      minutes: MINUTES.join + cables.length * MINUTES.eachJoined + this.box.groups.flat().length * MINUTES.eachItem,
      powerCycles: 1,
      exposure: "outlet",
      steps: [
        ...this.dead(),
        {
          arrangement: "A1",
          words: wording.joints(this.jointWords(supply, cables)),
        },
        ...(isSwitched ? [{ arrangement: "A1", words: STEPS.switchesOn } as const] : []),
        this.noShort(),
        ...this.powerOn("A3"),
        {
          arrangement: "A3",
          words: isSwitched ? wording.listSwitched : wording.list,
        },
        this.offAgain(),
      ],
      wanted: {
        arrangement: "A3",
        instrument: "plug-in-tester",
        joined: ids,
        tests: [{ kind: "works", items: [] }],
      },
    });
  }

  /** Which wire goes to which: by what is proved of the supply, not by colour alone. */
  private jointWords(supply: number, cables: readonly number[]): string {
    const own = this.cable(supply);
    const left = leadsLeft(this.inference, supply);
    const names = this.names(cables);
    const reversed = left.filter((lead) => lead.reversed === true);
    const three = cables.filter((cable) => this.cable(cable).isThreeWire);
    const red =
      three.length === 0
        ? own.isThreeWire
          ? wording.redCapped(own.name)
          : ""
        : own.isThreeWire
          ? wording.redToRed(this.names(three))
          : wording.redToHot(this.names(three));
    if (reversed.length === left.length) return wording.jointReversed(names, own.name, red);
    const doubt = reversed.length > 0 ? wording.doubt(own.name) : "";
    return wording.joint(names, own.name, red, doubt);
  }
}
