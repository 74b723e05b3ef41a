import type { SurveyProposal } from "../../answers/survey.ts";
import { gainAtCable, groundOutcomes, lampOutcomes } from "./gains.ts";
import { harmOfSwitch, harmOfTestLamp, leadsLeft } from "./harm.ts";
import { NO_REFERENCE } from "./proposal-ground.ts";
import { TRAP_WORDS as wording } from "./proposal-words.ts";
import { JoinedProposals } from "./proposals-joined.ts";

/** Minutes of work. Modelling values. */
const MINUTES = { look: 15, ohms: 2, testLamp: 8 } as const;

/** Tests of a live cable that may be a supply with its hot on white, or the switch end of a loop. */
export class TrapProposals extends JoinedProposals {
  /** Reversed supply or white-fed loop: looked into the luminaire's box, ohms to ground, or a test lamp; never a switch. */
  trap(): readonly SurveyProposal[] {
    const { inference, nominalV } = this;
    const found: SurveyProposal[] = [];
    for (const cable of this.places()) {
      if (!this.isLive(cable)) continue;
      const left = leadsLeft(inference, cable);
      const isTrap = left.some(({ kind }) => kind === "loop-fed") && left.some(({ kind }) => kind !== "loop-fed");
      const name = this.cable(cable).name;
      if (!left.every(({ kind }) => kind === "loop-fed"))
        this.refuse(
          { key: `switch ${this.cable(cable).id}`, words: wording.switch(name) },
          harmOfSwitch(inference, cable, nominalV),
        );
      if (!isTrap) continue;
      if (!this.box.hasReference && !this.refused.some(({ key }) => key === NO_REFERENCE))
        this.refused.push(this.needsReference());
      const id = this.cable(cable).id;
      found.push(
        this.made({
          key: `look ${id}`,
          words: wording.look(name),
          bits: gainAtCable(inference, cable, ({ kind }) => new Map([[String(kind === "loop-fed"), 1]])),
          minutes: MINUTES.look,
          powerCycles: 0,
          exposure: "dead",
          steps: [
            this.off(),
            {
              arrangement: "A1",
              words: wording.open,
            },
          ],
          wanted: { arrangement: "A1", instrument: "by-eye", tests: [{ kind: "look", cable: id, feedThere: false }] },
        }),
        ...this.groundOhms(cable),
      );
      const harm = harmOfTestLamp(inference, cable, nominalV);
      const words = wording.testLamp(name);
      if (harm !== undefined) {
        this.refuse({ key: `test-lamp ${id}`, words }, harm);
        continue;
      }
      found.push(
        this.made({
          key: `test-lamp ${id}`,
          words,
          bits: gainAtCable(inference, cable, (lead) => lampOutcomes(lead, nominalV)),
          minutes: MINUTES.testLamp,
          powerCycles: 1,
          exposure: "outlet",
          steps: [
            ...this.dead(),
            {
              arrangement: "A1",
              words: wording.connect(name),
            },
            ...this.powerOn("A2"),
            {
              arrangement: "A2",
              words: wording.brightness,
            },
            this.offAgain(),
          ],
          wanted: {
            arrangement: "A2",
            instrument: "test-lamp",
            tests: [{ kind: "test-lamp", cable: id, lightGlows: false }],
          },
        }),
      );
    }
    return found;
  }

  /** Dead: a neutral that comes from the panel has no ohms to ground, the far side of a lamp has some. */
  private groundOhms(cable: number): readonly SurveyProposal[] {
    const name = this.cable(cable).name;
    if (!this.cable(cable).hasGround || this.isRead(cable, "ohms", "b", "ground")) return [];
    return [
      this.made({
        key: `ground ${this.cable(cable).id}`,
        words: wording.groundOhms(name),
        bits: gainAtCable(this.inference, cable, (lead) => groundOutcomes(lead, this.nominalV)),
        minutes: MINUTES.ohms,
        powerCycles: 0,
        exposure: "dead",
        steps: [
          ...this.dead(),
          {
            arrangement: "A1",
            words: wording.groundOhmsStep(name),
          },
        ],
        wanted: {
          arrangement: "A1",
          instrument: "continuity",
          tests: (["b", "w"] as const).map((wire) => this.pairTest(cable, wire, "ground")),
        },
      }),
    ];
  }
}
