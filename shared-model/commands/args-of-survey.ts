import {
  SURVEY_ARRANGEMENTS,
  SURVEY_ITEM_KINDS,
  SURVEY_LAMPS,
  type SurveyedReading,
  type SurveyFacts,
  type SurveyItem,
  type SurveyKnown,
  type SurveyLamp,
  type SurveySwitch,
} from "../model/survey.ts";
import {
  byKind,
  type Check,
  either,
  flag,
  idText,
  listOf,
  nameText,
  numberFrom,
  oneOf,
  optional,
  outletText,
  record,
  textUpTo,
  wholeFrom,
} from "./args-shape.ts";

const word = textUpTo(130);
const outlets = listOf(outletText);
const point: Check = either(
  oneOf(["ground"]),
  record<{ readonly cable: string; readonly conductor: string }>({ cable: idText, conductor: idText }),
);

const item: Check = record<SurveyItem>({
  id: word,
  name: nameText,
  kind: oneOf(SURVEY_ITEM_KINDS),
  lamp: optional(oneOf(SURVEY_LAMPS)),
  switches: optional(listOf(word)),
});

const facts: Check = record<SurveyFacts>({
  groups: optional(listOf(listOf(item, 1))),
  switchesHere: optional(wholeFrom(0, 100)),
  lamps: optional(
    listOf(record<{ readonly item: string; readonly lamp: SurveyLamp }>({ item: word, lamp: oneOf(SURVEY_LAMPS) })),
  ),
  referenceProved: optional(textUpTo(200)),
  known: optional(
    listOf(
      record<SurveyKnown>({
        cable: idText,
        leadsTo: either(oneOf(["panel"]), listOf(word, 1)),
        how: textUpTo(200),
      }),
    ),
  ),
});

/** Form of what makes a reading part of a survey. */
export const surveyedShape: Check = record<SurveyedReading>({
  box: optional(idText),
  arrangement: optional(oneOf(SURVEY_ARRANGEMENTS)),
  test: byKind({
    pair: { from: point, to: point },
    works: { items: listOf(word) },
    current: { cable: idText, conductor: idText },
    "test-lamp": { cable: idText, lightGlows: flag },
    look: { cable: idText, feedThere: flag },
    breaker: { cable: idText, breaker: idText, wentDead: flag },
    facts: { facts },
    "breaker-off": { breaker: idText, dead: outlets, stillLive: optional(outlets) },
    drop: { loadAt: outletText, at: outletText, volts: numberFrom(-1000, 1000) },
    opened: { at: outletText, dead: outlets },
  }),
  joined: optional(listOf(idText)),
  switches: optional(listOf(record<SurveySwitch>({ switch: word, on: flag }))),
  off: optional(listOf(idText)),
  nothingPlugged: optional(flag),
});
