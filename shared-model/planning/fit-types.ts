import { findDeviceType, getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { inSentence } from "../lib/in-sentence.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { Project } from "../model/project.ts";
import { roomKindsOf } from "../queries/outlets-of.ts";
import type { MakeUpRefusal } from "./joint-group.ts";

const wording = catalogue({
  isOneAlready: (name: Part) => `${name} is a ground-fault device already.`,
  noType: (name: Part, rating: Part) =>
    `The stock has no ground-fault receptacle for the place of ${name}, ${rating}. Protect the circuit by a ground-fault breaker, or at another outlet before it.`,
  notInABox: (name: Part) => `${name} is not in a box.`,
  notAReceptacle: (name: Part, what: Part) =>
    `${name} is no receptacle (${what}): a ground-fault receptacle does not do its work. Fit one at a receptacle before it, a blank-face device, or a ground-fault breaker.`,
  ratingUnknown: "whose rating is not recorded",
  split: (name: Part) =>
    `${name} has a tab removed, so that its halves hang on different conductors, and a ground-fault receptacle has no tab. Fit one before it or a ground-fault breaker, or join the halves first.`,
});

export const notABox = ({ name }: Device): MakeUpRefusal => ({
  code: "not-in-a-box",
  message: wording.notInABox(name),
});

export const noTypeWords = ({ name, ratingA }: Device): string =>
  wording.noType(name, ratingA === undefined ? wording.ratingUnknown : `${ratingA} A`);

/** Why no ground-fault receptacle can take the place of a device at all. */
export function whyUnfit(device: Device, where: string): MakeUpRefusal | undefined {
  const { family, title } = getDeviceType(device.type);
  if (where !== "box") return notABox(device);
  if (family === "ground-fault-receptacle" || family === "ground-fault-blank")
    return { code: "is-one-already", message: wording.isOneAlready(device.name) };
  if (family !== "receptacle")
    return {
      code: "not-a-receptacle",
      message: wording.notAReceptacle(device.name, inSentence(title)),
    };
  if (device.hotTab === "removed" || device.neutralTab === "removed")
    return {
      code: "split",
      message: wording.split(device.name),
    };
  return undefined;
}

/** By the rating of the face, for the weather where the place asks for it; with arc-fault detection second. */
export function typesFor(project: Project, box: Box, device: Device): readonly string[] {
  const outdoors = device.weatherResistant === true || roomKindsOf(project, box, device).has("outdoor");
  const rating = device.ratingA === 20 ? 20 : device.ratingA === 15 || device.ratingA === undefined ? 15 : undefined;
  if (rating === undefined) return [];
  const plain = `gfci-receptacle-${outdoors ? "wr-" : ""}${rating}`;
  const both = `dual-function-receptacle-${rating}`;
  return [plain, ...(outdoors ? [] : [both])].filter((type) => findDeviceType(type) !== undefined);
}
