import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import { holdByBuilding, luminairesOn, setOnBox } from "../box-parts.ts";
import type { EditionData } from "../editions/edition-data.ts";
import { fixTogether } from "../fix-parts.ts";
import { type BoxContext, defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  notForLuminaires:
    "{lum} hangs on {box}, which is a box for devices{why}. In a wall such a box may hold a luminaire of up to {least} lb by two No. 6 screws; for anything else fit a box that is listed for luminaires.",
  tooHeavy:
    "{lum} weighs {weight} lb, and {box} may hold {most} lb. Hang it from the building, or fit a box that is marked for its weight.",
  mountingUnknown:
    "Cannot tell whether {box}, a box for devices, may hold {lum}: in a wall it may up to {least} lb, in a ceiling it may not. Record {missing}.",
  holdingUnknown:
    "Cannot tell whether {box} carries {lum}: it weighs {weight} lb, the box may hold {most} lb, and whether the building holds the luminaire is not recorded.",
});

const wording = catalogue({
  exchange: (box: Part) => `Exchange ${box} for a box of its volume that is listed for luminaires`,
  inCeiling: ", in a ceiling",
  weighs: (pounds: Part) => `, and it weighs ${pounds} lb`,
  whatWeighs: (luminaire: Part) => `what ${luminaire} weighs`,
  whetherCeiling: (box: Part) => `whether ${box} is in a wall or a ceiling`,
  whetherHeld: (luminaire: Part) => `whether the building holds ${luminaire}`,
});

/** A round or octagonal box is made for luminaires unless its listing says otherwise; a box for devices is not. */
export const luminaireBoxNotListed = defineRule({
  id: "luminaire-box-not-listed",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A luminaire must hang on a box that may hold its weight.",
  why: "The ears of a device box take two thin screws into thin metal or plastic. In a wall they hold a small light; under a ceiling they pull out in time, and the luminaire then hangs by its conductors. A box that is listed for luminaires holds 50 lb unless it is marked for another weight; what is heavier is hung from the building. Without a weight nothing is said of a box that is made for luminaires.",
  messages,
  sections: everyEdition("314.27(A)", "from-memory"),
  values: ["luminaireOnBoxLb", "luminaireOnAnyBoxLb"],
  check(context) {
    const { enclosure } = context;
    if (enclosure.kind !== "box") return;
    for (const luminaire of luminairesOn(enclosure)) {
      if (luminaire.heldByBuilding === true) continue;
      if (isForDevices(enclosure)) checkDeviceBox(context, enclosure, luminaire);
      else checkWeight(context, enclosure, luminaire);
    }
  },
});

function isForDevices({ listedFor, shape }: Box): boolean {
  if (listedFor === undefined) return shape === "device";
  return !listedFor.includes("luminaire") && !listedFor.includes("fan");
}

function checkDeviceBox({ edition, state, report, cannotTell }: BoxContext, box: Box, luminaire: Device): void {
  const { luminaireOnAnyBoxLb: least } = edition.values;
  const { weightLb: weight } = luminaire;
  const { mountedOn } = box;
  const heavy = weight !== undefined && weight > least.value;
  if (!heavy && mountedOn === "wall" && weight !== undefined) return;
  const shown = { lum: luminaire.name, box: box.name, least: least.value };
  const subjects = [subject("device", luminaire), subject("enclosure", box)];
  if (!heavy && mountedOn !== "ceiling") {
    const weightWords = wording.whatWeighs(luminaire.name);
    const placeWords = wording.whetherCeiling(box.name);
    const missing = [...(weight === undefined ? [weightWords] : []), ...(mountedOn === undefined ? [placeWords] : [])];
    if (missing.length === 0) return;
    const words = listed(missing);
    const enterAt = mountedOn === undefined ? subject("enclosure", box) : subject("device", luminaire);
    cannotTell({
      subjects,
      message: fillIn(messages.mountingUnknown, { ...shown, missing: words }),
      missing: words,
      enterAt,
    });
    return;
  }
  const why = `${mountedOn === "ceiling" ? wording.inCeiling : ""}${heavy ? wording.weighs(weight) : ""}`;
  report({
    subjects,
    message: fillIn(messages.notForLuminaires, { ...shown, why }),
    data: { ...(weight !== undefined && { weightLb: weight }) },
    ...basisOf(marksOn(box, "listedFor", "shape", "mountedOn"), marksOn(luminaire, "weightLb")),
    offers: [
      fixTogether(wording.exchange(box.name), [
        setOnBox(box, state, "listedFor", [...(box.listedFor ?? []), "luminaire"]),
      ]),
      holdByBuilding(luminaire, state),
    ],
  });
}

function checkWeight({ edition, state, report, cannotTell }: BoxContext, box: Box, luminaire: Device): void {
  const most = mostOn(box, edition);
  const { weightLb: weight, heldByBuilding } = luminaire;
  if (weight === undefined || weight <= most) return;
  const shown = { lum: luminaire.name, box: box.name, weight, most };
  const subjects = [subject("device", luminaire), subject("enclosure", box)];
  if (heldByBuilding === undefined) {
    const missing = wording.whetherHeld(luminaire.name);
    cannotTell({ subjects, message: fillIn(messages.holdingUnknown, shown), missing });
    return;
  }
  report({
    subjects,
    message: fillIn(messages.tooHeavy, shown),
    data: { weightLb: weight, mostLb: most },
    ...basisOf(marksOn(box, "luminaireWeightLb"), marksOn(luminaire, "weightLb", "heldByBuilding")),
    offers: [holdByBuilding(luminaire, state)],
  });
}

const mostOn = ({ luminaireWeightLb }: Box, { values }: EditionData): number =>
  luminaireWeightLb ?? values.luminaireOnBoxLb.value;
