/** Photos in the file of a drawing: they come back as they went, and whatever they hold, nothing else is lost for them. */
import { expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { parsePlain, parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { boxId } from "../builders/ids.ts";
import { TINY_JPEG } from "../builders/tiny-jpeg.ts";
import { withValue } from "./small-document.ts";

const photo = (more: object = {}) => ({
  id: "f1",
  name: "Open box",
  mediaType: "image/jpeg",
  base64: TINY_JPEG,
  order: 0,
  ...more,
});

const withPhotos = (...photos: readonly object[]): Project =>
  ({
    ...laundryAsFound(),
    attachments: Object.fromEntries(photos.map((one, index) => [`f${index + 1}`, { ...one, id: `f${index + 1}` }])),
  }) as Project;

test("a photo with its words comes back as it was saved, by both ways of reading", () => {
  const told = { caption: "Five cables", takenAt: "2026-05-04", by: "Pat Example", enclosure: boxId("B1") };
  const text = textToSave(withPhotos(photo(told), photo()));
  const parsed = parseProject(text);
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  expect(textToSave(parsed.value.project)).toBe(text);
  expect(parsePlain(text)?.project).toEqual(parsed.value.project);
  expect(Object.values(parsed.value.project.attachments)[0]).toEqual(photo(told));
});

test.each([
  ["an SVG", Buffer.from("<svg onload='alert(1)'/>").toString("base64")],
  ["nothing", ""],
  ["a header that would unfold to 4 billion pixels", "/9j/wAALCP////8BAREA"],
])("a picture that is %s costs the drawing nothing: it opens, and is checked as without it", (_, base64) => {
  const project = withPhotos(photo({ base64 }));
  const parsed = parseProject(textToSave(project));
  expect(parsed.ok).toBe(true);
  expect(openSession(project).report().findings).toEqual(openSession(laundryAsFound()).report().findings);
});

test.each<[string, object, string]>([
  ["not base64", photo({ base64: "<svg>" }), "/attachments/f1/base64"],
  ["of another type", photo({ mediaType: "image/svg+xml" }), "/attachments/f1/mediaType"],
  ["of a box that is nowhere", photo({ enclosure: "gone" }), "/attachments/f1/enclosure"],
  ["captioned by no text", photo({ caption: 7 }), "/attachments/f1/caption"],
])("a photo that is %s is refused with its place", (_, wrong, path) => {
  const parsed = parseProject(withValue("/attachments", { f1: wrong as never }));
  expect(parsed.ok ? [] : parsed.problems.map((one) => one.path)).toContain(path);
});
