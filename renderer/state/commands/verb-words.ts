import type { CommandId } from "../../../shared-model/commands/command-args.ts";
import { laterWording } from "./later-words.ts";
import type { SubjectKind } from "./subjects.ts";

/** How a command is given in the field: by what it is about, or by lines of its own. */
export type VerbWay =
  /** What it is about is asked for; `does` tells its line among all that can be done with that. */
  | { readonly of: SubjectKind; readonly does: RegExp; readonly also?: string }
  /** Choosing the thing shows it with its facts, where the rest is done. */
  | { readonly of: SubjectKind; readonly shows: true; readonly also?: string }
  /** It belongs to a finding. */
  | { readonly findings: true; readonly also?: string }
  /** The field has lines of its own for it. */
  | { readonly own: true };

const OWN: VerbWay = { own: true };

export const VERB_WAYS: Readonly<Record<CommandId, VerbWay>> = {
  "place-enclosure": OWN,
  "place-device": { of: "enclosure", does: /^Add a device/, also: laterWording.addReceptacleSwitchBreakerLuminaire },
  "route-cable": { of: "enclosure", does: /^Run a cable/, also: laterWording.addRouteDrawCable },
  "place-load": { of: "device", does: /^Plug a load/, also: "appliance" },
  "add-ring": { of: "box", does: /^Add a ring/, also: laterWording.mudRingPlasterRingExtensionRaised },
  "remove-ring": { of: "ring", does: /^Take it off/ },
  "add-label": { of: "any", does: /^Write a label/, also: laterWording.stickerWrite },
  "move-enclosures": { of: "enclosure", does: /^Move .* on the sheet/ },
  "pin-enclosures": { of: "enclosure", does: /\b(un)?pin\b|\blet\b.*\bmove\b/i },
  "move-device": { of: "device", does: /^Move / },
  "replace-device": { of: "device", does: /^Replace /, also: laterWording.exchangeSwapChange },
  "paste-items": OWN,
  "move-load": { of: "load", does: /^Plug .* in elsewhere/ },
  "move-cable-side": { of: "cable", does: /^Move the end/, also: "reroute" },
  "bend-cable": { of: "cable", does: /\bbends?\b|\bstraight/i },
  "move-splice": { of: "splice", does: /by hand/ },
  "rename-item": { of: "any", shows: true, also: laterWording.nameCall },
  "remove-items": { of: "any", does: /^Remove /, also: laterWording.deleteTakeAway },
  "land-end": { of: "end", does: /^Land .*…$/, also: laterWording.connectTerminateWire },
  "lift-end": { of: "end", does: /loose$/, also: laterWording.disconnectLoose },
  "cap-end": { of: "end", does: /^Cap /, also: laterWording.wireNutAlone },
  "mark-spare": { of: "end", does: /spare/ },
  "splice-ends": { of: "end", does: /^New splice with/, also: laterWording.jointJoinWireNutConnector },
  "join-splice": { of: "splice", does: /^Join /, also: laterWording.wireNutConnector },
  "leave-splice": { of: "end", does: /out of its splice/ },
  "change-connector": { of: "splice", does: /^Change the connector/, also: laterWording.wireNutTwistOnLeverPush },
  "add-jumper": OWN,
  "pigtail-terminal": { of: "device", does: /^Pigtail (?!or )/, also: "tail" },
  "add-pass-through": { of: "cable", does: /unbroken/, also: laterWording.loopUncut },
  "remove-pass-through": { of: "pass-through", does: /^Stop running/ },
  "set-property": { of: "any", shows: true, also: laterWording.factsPropertyEditVolumeRating },
  "mark-evidence": { of: "any", shows: true, also: laterWording.seenMeasuredToldAssumedEvidence },
  "add-reading": { of: "end", does: /^Record a reading/, also: laterWording.measureVoltageMeterTest },
  "change-reading": { of: "any", shows: true, also: "measure" },
  "remove-reading": { of: "any", shows: true, also: "measure" },
  "attach-photo": { of: "enclosure", does: /^Attach photos/, also: laterWording.pictureImageCameraEvidence },
  "describe-photo": { of: "photo", shows: true, also: laterWording.pictureCaption },
  "remove-photo": { of: "photo", shows: true, also: laterWording.pictureDelete },
  "set-directory-line": { of: "device", does: /directory line/, also: laterWording.panelScheduleLegend },
  "set-box-intent": { of: "box", does: /meant to do/, also: laterWording.supplyFeed },
  "set-outlet-wish": { of: "device", does: /^Wish protection/, also: "gfci" },
  "add-room": OWN,
  "assign-room": { of: "enclosure", does: /in a room/ },
  "set-edition": OWN,
  "set-amendment": OWN,
  "remove-amendment": OWN,
  "start-proposed": OWN,
  "reset-proposed": OWN,
  "discard-proposed": OWN,
  "settle-held-back": { findings: true },
  "acknowledge-finding": { findings: true, also: "accept" },
  "withdraw-acknowledgement": { findings: true },
  "run-together": OWN,
};

/** What the field says beside commands. */
export const VERB_SAYS = {
  readOnly: laterWording.thisDrawingWasWrittenByA,
  inFindings: laterWording.inTheFindings,
  notNow: laterWording.noneOfItCanBeDone,
  nothingToUndo: laterWording.thereIsNothingToUndo,
  nothingToRedo: laterWording.thereIsNothingToDoAgain,
  selectFirst: laterWording.selectSomethingFirst,
  nothingDrawn: laterWording.nothingIsDrawnYet,
  noProposed: laterWording.proposedIsNotStarted,
  noFindings: laterWording.thereAreNoFindingsToIt,
} as const;

export const noneYet = (thing: string): string => laterWording.thereIsNoInThisDrawing(thing);
export const which = (title: string, thing: string): string => laterWording.which(title, thing);
