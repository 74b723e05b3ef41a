import { wording } from "./words.ts";
/** Words of arranging boxes and of leading cables. */
export const ARRANGE_WORDS = {
  all: { "by-circuit": wording.arrangeTheDrawingByCircuit, "by-room": wording.arrangeTheDrawingByRoom },
  some: (count: number) => ({
    "by-circuit": wording.arrangeTheSelectedBoxesByCircuit(count),
    "by-room": wording.arrangeTheSelectedBoxesByRoom(count),
  }),
  circuitOf: (name: string) => wording.layOutTheCircuitOf(name),
  pin: (what: string) => wording.pinInPlace(what),
  unpin: (what: string) => wording.unpin(what),
  boxes: (count: number) => wording.boxes(count),
  section: wording.onTheSheet,
  pinned: wording.pinnedStaysWhenTheDrawingIs,
} as const;

export const BEND_WORDS = {
  action: (name: string) => wording.bendOnTheSheet(name),
  title: (name: string) => wording.bendOnTheSheet2(name),
  hint: wording.staysOpenTakeAsManySteps,
  add: wording.addABend,
  straighten: wording.straightenIt,
  move: (index: number, way: string) => wording.bend(index, way),
  remove: (index: number) => wording.bendTakeItAway(index),
  grip: wording.dragToLeadThisStretchElsewhere,
  noRoom: wording.thereIsNoRoomForA,
  bent: (name: string) => wording.isBentItKeepsThisWay(name),
} as const;

export const END_WORDS = {
  grip: wording.dragToAnotherBoxToMove,
  nothing: wording.dragItToTheBoxWhere,
  home: (box: string) => wording.whereItIsNow(box),
  otherEnd: (cable: string, box: string) => wording.notPossibleTheOtherEndOf(cable, box),
  not: (reason: string) => wording.notPossible(reason),
  to: (box: string) => wording.toItsConductorsArriveCapped(box),
  back: (cable: string) => wording.staysWhereItWas(cable),
  moved: (cable: string, box: string) => wording.endsInNowItsConductorsAre(cable, box),
  notMoved: (cable: string) => wording.staysWhereItWas2(cable),
} as const;
