import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { At } from "../../../shared-model/model/place.ts";
import { findDevice } from "../../../shared-model/queries/find-item.ts";
import { outletsOf } from "../../../shared-model/queries/outlets-of.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { energiseStore } from "../../state/energise/energise-store.ts";
import { leadWords, standsWords } from "../../state/energise/energise-words.ts";
import { chooseOutlet, leadPlaceAt, pickLeadPlace, putLead } from "../../state/energise/instruments.ts";
import { operablesOf, operate, pressReset, pressTest } from "../../state/energise/operating.ts";
import { turnTo } from "../../state/session-store.ts";
import { type Action, act, LINE } from "../action.ts";
import type { BoxItem } from "../box-items.ts";
import { say } from "../gesture-store.ts";
import type { Subject } from "../sheet-subject.ts";
import { RESET_KEY, TERMINAL_KEY, TEST_KEY } from "./lit-items.ts";
import { wording } from "./words.ts";

/**
 * A press, Enter or Space on something in an energised box. `terminal` is the terminal that a press was on.
 * @returns False where it means what it means otherwise.
 */
export function pressLit({ key, subject }: BoxItem, terminal: At | undefined): boolean {
  const { inHand } = energiseStore.get();
  if (inHand !== undefined) return placeLead(key, subject, terminal);
  if (subject.kind !== "device") return false;
  if (key.startsWith(TEST_KEY)) pressTest(subject.id);
  else if (key.startsWith(RESET_KEY)) pressReset(subject.id);
  else return pressDevice(subject.id);
  turnTo("energise");
  return true;
}

/** An outlet takes the tester; anything else that is operated goes over. */
function pressDevice(id: DeviceId): boolean {
  const device = findDevice(shownInstallation(), id)?.device;
  const [outlet] = device === undefined ? [] : outletsOf(device);
  if (outlet?.receptacle) {
    chooseOutlet(outlet.key);
    turnTo("energise");
    say(wording.thePlugInTesterIsAt(outlet.name));
    return true;
  }
  const [first] = operablesOf(id);
  if (first === undefined || !operate(first)) return false;
  turnTo("energise");
  say(wording.was(first.name, standsWords(first)));
  return true;
}

function placeLead(key: string, subject: BoxItem["subject"], at: At | undefined): boolean {
  const { inHand } = energiseStore.get();
  const box = subject.enclosure && shownInstallation().enclosures[subject.enclosure];
  if (inHand === undefined || box === undefined) return false;
  const put = (place: Parameters<typeof putLead>[1]): true => {
    putLead(inHand, place);
    if (place !== undefined) say(wording.on(inHand, leadWords(place)));
    return true;
  };
  switch (subject.kind) {
    case "end":
      return put(leadPlaceAt(box, box.places[subject.id]?.at ?? { kind: "loose" }, subject.id));
    case "splice":
      return put({ kind: "splice", splice: subject.id });
    case "device": {
      if (key.startsWith(TERMINAL_KEY)) {
        const node = key.slice(TERMINAL_KEY.length + subject.id.length + 1);
        return put({ kind: "device", device: subject.id, node });
      }
      if (at?.kind === "terminal") return put({ kind: "device", device: at.device, node: at.terminal });
      const device = box.devices[subject.id];
      if (device !== undefined) pickLeadPlace(inHand, { device });
      return true;
    }
    default:
      return true;
  }
}

/** A line of a menu after which the pane shows what followed. */
const shown = (words: string, run: () => void): Action =>
  act(words, () => {
    run();
    turnTo("energise");
  });

/** What an energised drawing offers in the menu of a thing. */
export function litActions(subject: Subject): readonly Action[] {
  const lead = leadActions(subject);
  if (subject.kind !== "device") return lead.length > 0 ? [...lead, LINE] : [];
  const device = findDevice(shownInstallation(), subject.id)?.device;
  const operated = operablesOf(subject.id).flatMap((one): readonly Action[] => {
    if (one.kind === "ground-fault") {
      return one.stands === "set"
        ? [shown(wording.test(one.name), () => pressTest(one.device))]
        : [shown(wording.reset(one.name), () => pressReset(one.device))];
    }
    const test = one.kind === "breaker" && one.test && one.stands === "on";
    return [
      shown(wording.itIs(OVER[one.kind], one.name, standsWords(one)), () => void operate(one)),
      ...(test ? [shown(wording.test(one.name), () => pressTest(one.device))] : []),
    ];
  });
  const tests = (device === undefined ? [] : outletsOf(device)).map(({ key, name }) =>
    shown(wording.plugInTestAt(name), () => chooseOutlet(key)),
  );
  return [...operated, ...tests, ...lead, LINE];
}

const OVER = { breaker: wording.operateBreaker, switch: wording.operateSwitch, load: wording.useOrUnplug } as const;

function leadActions(subject: Subject): readonly Action[] {
  const box =
    "enclosure" in subject && subject.enclosure ? shownInstallation().enclosures[subject.enclosure] : undefined;
  if (box === undefined) return [];
  const put = (lead: "V" | "COM") => (): void => {
    if (subject.kind === "end")
      putLead(lead, leadPlaceAt(box, box.places[subject.id]?.at ?? { kind: "loose" }, subject.id));
    else if (subject.kind === "splice") putLead(lead, { kind: "splice", splice: subject.id });
    else if (subject.kind === "device") {
      const device = box.devices[subject.id];
      if (device !== undefined) pickLeadPlace(lead, { device });
    } else pickLeadPlace(lead, { enclosure: box });
  };
  return [shown(wording.redLeadVHere, put("V")), shown(wording.blackLeadComHere, put("COM"))];
}
