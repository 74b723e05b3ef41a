import type { SurveyProposal } from "../../answers/survey.ts";
import { gainAtCable, groundOutcomes, lampOutcomes } from "./gains.ts";
import { harmOfSwitch, harmOfTestLamp, leadsLeft } from "./harm.ts";
import { NO_REFERENCE } from "./proposal-ground.ts";
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
          `switch ${this.cable(cable).id}`,
          `Put a switch between the wires of ${name}`,
          harmOfSwitch(inference, cable, nominalV),
        );
      if (!isTrap) continue;
      if (!this.box.hasReference && !this.refused.some(({ key }) => key === NO_REFERENCE))
        this.refused.push(this.needsReference());
      const id = this.cable(cable).id;
      found.push(
        this.made({
          key: `look ${id}`,
          words: `Look into the luminaire's box for the feed of ${name}, power off`,
          bits: gainAtCable(inference, cable, ({ kind }) => new Map([[String(kind === "loop-fed"), 1]])),
          minutes: MINUTES.look,
          powerCycles: 0,
          exposure: "dead",
          steps: [
            this.off(),
            {
              arrangement: "A1",
              words: "Open the luminaire's box. Is the feed there, with the white of this cable spliced to a black?",
            },
          ],
          wanted: { arrangement: "A1", instrument: "by-eye", tests: [{ kind: "look", cable: id, feedThere: false }] },
        }),
        ...this.groundOhms(cable),
      );
      const harm = harmOfTestLamp(inference, cable, nominalV);
      const words = `Put a 60 W test lamp across ${name} while dead, then energise`;
      if (harm !== undefined) {
        this.refuse(`test-lamp ${id}`, words, harm);
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
              words: `Connect the test lamp through a fused lead across the two wires of ${name}, capped.`,
            },
            ...this.powerOn("A2"),
            {
              arrangement: "A2",
              words:
                "Full brightness and about 120 V: a supply with hot and neutral reversed. Both lamps dim, 40 to 80 V: a loop, fed from the light. An LED lamp beyond may stay dark.",
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
        words: `Measure ohms from black and from white of ${name} to ground, dead`,
        bits: gainAtCable(this.inference, cable, (lead) => groundOutcomes(lead, this.nominalV)),
        minutes: MINUTES.ohms,
        powerCycles: 0,
        exposure: "dead",
        steps: [
          ...this.dead(),
          {
            arrangement: "A1",
            words: `Ohms from each wire of ${name} to ground. About 0 is a neutral from the panel, 10 to 40 a filament lamp; open may be an LED lamp or a breaker that is off.`,
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
