import { acknowledgeFinding } from "./acknowledge-finding.ts";
import { addJumper } from "./add-jumper.ts";
import { addLabel } from "./add-label.ts";
import { addPassThrough } from "./add-pass-through.ts";
import { addReading } from "./add-reading.ts";
import { addRing } from "./add-ring.ts";
import { addRoom } from "./add-room.ts";
import { assignRoom } from "./assign-room.ts";
import { attachPhoto } from "./attach-photo.ts";
import { bendCable } from "./bend-cable.ts";
import { capEnd } from "./cap-end.ts";
import { changeConnector } from "./change-connector.ts";
import { changeReading } from "./change-reading.ts";
import type { CommandArgs, CommandId } from "./command-args.ts";
import type { Command } from "./define-command.ts";
import { describePhoto } from "./describe-photo.ts";
import { discardProposed } from "./discard-proposed.ts";
import { joinSplice } from "./join-splice.ts";
import { landEnd } from "./land-end.ts";
import { leaveSplice } from "./leave-splice.ts";
import { liftEnd } from "./lift-end.ts";
import { markEvidence } from "./mark-evidence.ts";
import { markSpare } from "./mark-spare.ts";
import { moveCableSide } from "./move-cable-side.ts";
import { moveDevice } from "./move-device.ts";
import { moveEnclosures } from "./move-enclosures.ts";
import { moveLoad } from "./move-load.ts";
import { moveSplice } from "./move-splice.ts";
import { pasteItems } from "./paste-items.ts";
import { pigtailTerminal } from "./pigtail-terminal.ts";
import { pinEnclosures } from "./pin-enclosures.ts";
import { placeDevice } from "./place-device.ts";
import { placeEnclosure } from "./place-enclosure.ts";
import { placeLoad } from "./place-load.ts";
import { removeAmendment } from "./remove-amendment.ts";
import { removeItems } from "./remove-items.ts";
import { removePassThrough } from "./remove-pass-through.ts";
import { removePhoto } from "./remove-photo.ts";
import { removeReading } from "./remove-reading.ts";
import { removeRing } from "./remove-ring.ts";
import { renameItem } from "./rename-item.ts";
import { replaceDevice } from "./replace-device.ts";
import { resetProposed } from "./reset-proposed.ts";
import { routeCable } from "./route-cable.ts";
import { runTogether } from "./run-together.ts";
import { setAmendment } from "./set-amendment.ts";
import { setBoxIntent } from "./set-box-intent.ts";
import { setDirectoryLine } from "./set-directory-line.ts";
import { setEdition } from "./set-edition.ts";
import { setOutletWish } from "./set-outlet-wish.ts";
import { setProperty } from "./set-property.ts";
import { settleHeldBack } from "./settle-held-back.ts";
import { spliceEnds } from "./splice-ends.ts";
import { startProposed } from "./start-proposed.ts";
import { withdrawAcknowledgement } from "./withdraw-acknowledgement.ts";

/** Every command by its id. The compiler notices a missing one. */
export const commands: { readonly [I in CommandId]: Command<CommandArgs[I]> } = {
  "place-enclosure": placeEnclosure,
  "move-enclosures": moveEnclosures,
  "pin-enclosures": pinEnclosures,
  "rename-item": renameItem,
  "remove-items": removeItems,
  "place-device": placeDevice,
  "move-device": moveDevice,
  "replace-device": replaceDevice,
  "paste-items": pasteItems,
  "place-load": placeLoad,
  "move-load": moveLoad,
  "route-cable": routeCable,
  "move-cable-side": moveCableSide,
  "bend-cable": bendCable,
  "land-end": landEnd,
  "lift-end": liftEnd,
  "cap-end": capEnd,
  "mark-spare": markSpare,
  "splice-ends": spliceEnds,
  "join-splice": joinSplice,
  "leave-splice": leaveSplice,
  "change-connector": changeConnector,
  "add-jumper": addJumper,
  "pigtail-terminal": pigtailTerminal,
  "set-property": setProperty,
  "mark-evidence": markEvidence,
  "add-ring": addRing,
  "remove-ring": removeRing,
  "add-pass-through": addPassThrough,
  "remove-pass-through": removePassThrough,
  "set-box-intent": setBoxIntent,
  "set-outlet-wish": setOutletWish,
  "set-directory-line": setDirectoryLine,
  "add-room": addRoom,
  "assign-room": assignRoom,
  "set-edition": setEdition,
  "set-amendment": setAmendment,
  "remove-amendment": removeAmendment,
  "move-splice": moveSplice,
  "add-label": addLabel,
  "add-reading": addReading,
  "change-reading": changeReading,
  "remove-reading": removeReading,
  "attach-photo": attachPhoto,
  "describe-photo": describePhoto,
  "remove-photo": removePhoto,
  "start-proposed": startProposed,
  "reset-proposed": resetProposed,
  "discard-proposed": discardProposed,
  "settle-held-back": settleHeldBack,
  "acknowledge-finding": acknowledgeFinding,
  "withdraw-acknowledgement": withdrawAcknowledgement,
  "run-together": runTogether,
};

export const isCommandId = (id: string): id is CommandId => Object.hasOwn(commands, id);
