import type { RoomKind } from "../../../shared-model/model/room.ts";
import { wording } from "./words.ts";

/** What a person calls the kinds of place that the tables of required protection tell apart. */
export const ROOM_KIND_WORDS: Readonly<Record<RoomKind, string>> = {
  bathroom: "bathroom",
  "kitchen-counter": wording.kitchenCounter,
  "kitchen-other": wording.kitchenElsewhere,
  "sink-zone": wording.nearASink,
  laundry: "laundry",
  garage: "garage",
  "accessory-building": wording.accessoryBuilding,
  outdoor: "outdoors",
  "crawl-space": wording.crawlSpace,
  "basement-unfinished": wording.basementUnfinished,
  "basement-finished": wording.basementFinished,
  boathouse: "boathouse",
  "tub-shower-zone": wording.nearATubOrShower,
  "damp-wet-indoor": wording.dampOrWetIndoors,
  "food-prep-with-sink": wording.foodPreparationWithSink,
  bedroom: "bedroom",
  living: wording.livingRoom,
  dining: wording.diningRoom,
  family: wording.familyRoom,
  den: "den",
  library: "library",
  sunroom: "sunroom",
  recreation: wording.recreationRoom,
  closet: "closet",
  hallway: "hallway",
  attic: "attic",
  utility: wording.utilityRoom,
  stair: "stair",
};
