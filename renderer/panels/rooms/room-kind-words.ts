import type { RoomKind } from "../../../shared-model/model/room.ts";
import { wording } from "./words.ts";

/** What a person calls the kinds of place that the tables of required protection tell apart. */
export const ROOM_KIND_WORDS: Readonly<Record<RoomKind, string>> = {
  bathroom: wording.bathroom,
  "kitchen-counter": wording.kitchenCounter,
  "kitchen-other": wording.kitchenElsewhere,
  "sink-zone": wording.nearASink,
  laundry: wording.laundry,
  garage: wording.garage,
  "accessory-building": wording.accessoryBuilding,
  outdoor: wording.outdoors,
  "crawl-space": wording.crawlSpace,
  "basement-unfinished": wording.basementUnfinished,
  "basement-finished": wording.basementFinished,
  boathouse: wording.boathouse,
  "tub-shower-zone": wording.nearATubOrShower,
  "damp-wet-indoor": wording.dampOrWetIndoors,
  "food-prep-with-sink": wording.foodPreparationWithSink,
  bedroom: wording.bedroom,
  living: wording.livingRoom,
  dining: wording.diningRoom,
  family: wording.familyRoom,
  den: wording.den,
  library: wording.library,
  sunroom: wording.sunroom,
  recreation: wording.recreationRoom,
  closet: wording.closet,
  hallway: wording.hallway,
  attic: wording.attic,
  utility: wording.utilityRoom,
  stair: wording.stair,
};
