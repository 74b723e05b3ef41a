import { catalogue } from "../../lib/catalogue.ts";
import type { SurveyItem } from "../../model/survey.ts";
import type { Menu, Option } from "./assignments.ts";
import type { BoxAtHand, CableAtHand } from "./box-at-hand.ts";
import { UNLISTED } from "./evidence.ts";
import { givesPower } from "./joined-circuit.ts";
import type { Lead } from "./lead.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { LIVE_FROM_V, type SurveyPriors } from "./survey-values.ts";

const wording = catalogue({
  light: "a light",
  outlets: "outlets that are not listed",
});

const UNNAMED_LIGHT: SurveyItem = { id: UNLISTED.light, name: wording.light, kind: "light" };
const UNNAMED_OUTLETS: SurveyItem = { id: UNLISTED.outlets, name: wording.outlets, kind: "outlet" };

/** What each cable of a box may be, by structure: the odds that hold before anything is read. */
export function menuOf(box: BoxAtHand, sorted: SortedReadings, priors: SurveyPriors, nominalV: number): Menu {
  const { cables, groups, switchesHere } = box;
  const everywhere = (odds: number): readonly number[] => cables.map(() => odds);
  const where = (is: (cable: CableAtHand) => boolean, odds: number, else_ = 0): readonly number[] =>
    cables.map((cable) => (is(cable) ? odds : else_));
  const isThreeWire = ({ isThreeWire: is }: CableAtHand): boolean => is;
  const option = (lead: Omit<Lead, "key" | "items"> & Partial<Lead>, odds: readonly number[]): readonly Option[] =>
    odds.some((one) => one > 0)
      ? [
          {
            lead: {
              key: [
                lead.kind,
                lead.reversed && "reversed",
                lead.openNeutral && "open-neutral",
                lead.off && "off",
                lead.travels && "travels",
                lead.group,
              ]
                .filter((part) => part !== undefined)
                .join(" "),
              items: [],
              ...lead,
            },
            odds,
          },
        ]
      : [];

  const { none, one, two } = priors.sources;
  const loopFed = switchesHere > 0 ? priors.loopFed : priors.loopFedWithoutSwitch;
  // Switches that were tried both ways, and currents in whites, call for what they would tell.
  const tried = sorted.taken.some(
    ({ survey }) => survey.arrangement === "A2" && survey.switches?.some(({ on }) => !on),
  );
  const flows = (place: number): boolean =>
    sorted.atCable[place]?.some((read) => read.kind === "current" && read.flows) === true;
  const sources = [
    ...option({ kind: "supply" }, everywhere(1)),
    ...option({ kind: "supply", reversed: true }, everywhere(priors.reversed)),
    ...option({ kind: "supply", openNeutral: true }, everywhere(priors.openNeutral)),
    ...option({ kind: "supply", off: true }, everywhere(none / one)),
    ...option({ kind: "multiwire-supply" }, where(isThreeWire, priors.multiwireOfThree)),
    ...option({ kind: "multiwire-supply", reversed: true }, where(isThreeWire, 0, priors.multiwireOfTwo)),
    ...option({ kind: "switched-supply" }, everywhere(tried ? priors.switched : 0)),
    ...option(
      { kind: "switched-supply", travels: true },
      cables.map((cable, place) => (cable.isThreeWire && bothHot(sorted, place) ? priors.travellersOfThree : 0)),
    ),
    ...option({ kind: "loop-fed" }, everywhere(loopFed)),
  ];

  const room = cables.length - 1;
  const isShort = groups.length < room;
  const rare = isShort ? 10 : 1;
  const listed = groups.flatMap((items, group) =>
    option({ kind: isLeg(items, switchesHere) ? "leg" : "feeds", items, group }, everywhere(1)),
  );
  const legs = listed.filter(({ lead }) => lead.kind === "leg").length;
  const legsWanted = Math.min(cables.length, Math.max(0, switchesHere - legs));
  const specials = [
    ...option(
      { kind: "feeds", items: [UNNAMED_OUTLETS] },
      everywhere(isShort ? priors.unlistedWhereListIsShort : priors.unlisted),
    ),
    ...option({ kind: "leg", items: [UNNAMED_LIGHT] }, everywhere(legsWanted > 0 && isShort ? 1 : 0)),
    ...option({ kind: "loop" }, everywhere(rare * priors.loop)),
    ...option({ kind: "travellers" }, where(isThreeWire, priors.travellersOfThree)),
    ...option({ kind: "dead" }, everywhere(rare * priors.dead)),
    ...option(
      { kind: "other-neutral" },
      cables.map((_, place) => (flows(place) ? priors.otherNeutral : 0)),
    ),
  ];
  return {
    cables: cables.length,
    sources,
    groups: listed,
    specials,
    two: cables.length > 1 ? two / one : 0,
    omitted: isShort ? priors.omitted : 1,
    legsWanted: isShort ? legsWanted : 0,
    legMiscount: priors.legMiscount,
    // Which of two travellers is hot is not known while something is joined to one.
    givesPower: new Set(
      sources.flatMap(({ lead }) => (lead.travels !== true && givesPower(lead, nominalV) ? [lead] : [])),
    ),
    joinings: sorted.joinings.map((joining) => joining.cables),
  };
}

/** Each of two wires of a cable was read live by low-impedance meter, whether at once or one after the other. */
function bothHot({ atCable }: SortedReadings, place: number): boolean {
  const live = (atCable[place] ?? []).flatMap((read) =>
    read.kind === "figure" && read.settles && read.probe.kind === "volts" && read.value >= LIVE_FROM_V
      ? [read.probe.from, read.probe.to]
      : [],
  );
  return live.includes("b") && live.includes("r");
}

/** Lights alone, with no switch on the way: what a switch of this box is to control. */
const isLeg = (items: readonly SurveyItem[], switchesHere: number): boolean =>
  switchesHere > 0 && items.every(({ kind, switches = [] }) => kind === "light" && switches.length === 0);
