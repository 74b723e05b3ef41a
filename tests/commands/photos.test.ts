import { expect, test } from "vitest";
import { emptyHistory, record, undo } from "../../shared-model/commands/history.ts";
import { applyPatches, type RunResult, refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import { type AttachmentId, asId, type EnclosureId } from "../../shared-model/model/ids.ts";
import { PHOTO_LIMITS } from "../../shared-model/model/photo-limits.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { laundryAsFound, laundryDrawing } from "../builders/drawing.ts";
import { boxId } from "../builders/ids.ts";
import { TINY_JPEG } from "../builders/tiny-jpeg.ts";

const photo = (name: string) => asId<AttachmentId>(name);
const attach = (name: string, box: EnclosureId = boxId("B1"), base64 = TINY_JPEG) => ({
  command: "attach-photo" as const,
  args: { id: photo(name), enclosure: box, name, base64 },
});

function done(result: RunResult): Extract<RunResult, { ok: true }> {
  if (!result.ok) throw new Error(result.refusal.message);
  return result;
}

const withPhotos = (count: number, base64 = TINY_JPEG, boxes = ["B1", "B2", "B3", "B4", "B5", "B6"]): Project => {
  const made = Array.from({ length: count }, (_, index) => {
    const enclosure = boxId(boxes[index % boxes.length] ?? "B1");
    return [`f${index}`, { id: `f${index}`, name: "Photo", mediaType: "image/jpeg", base64, enclosure, order: index }];
  });
  return { ...laundryAsFound(), attachments: Object.fromEntries(made) };
};

test("a photo is attached, described, described no more, and removed; each is a step with a name", () => {
  const attached = done(runCommand(laundryAsFound(), attach("p1")));
  expect(attached.title).toBe("Attach a photo to B1");
  const described = done(
    runCommand(attached.project, {
      command: "describe-photo",
      args: { id: photo("p1"), caption: "Marked 30.3 in³", takenAt: "2026-05-04", by: "Pat Example" },
    }),
  );
  expect(described.title).toBe("Describe the photo p1");
  expect(described.project.attachments[photo("p1")]).toEqual({
    id: "p1",
    name: "p1",
    mediaType: "image/jpeg",
    base64: TINY_JPEG,
    enclosure: boxId("B1"),
    caption: "Marked 30.3 in³",
    takenAt: "2026-05-04",
    by: "Pat Example",
    order: 0,
  });
  const bare = done(
    runCommand(described.project, {
      command: "describe-photo",
      args: { id: photo("p1"), caption: null, by: "" },
    }),
  );
  expect(bare.project.attachments[photo("p1")]).toMatchObject({ takenAt: "2026-05-04" });
  expect(Object.keys(bare.project.attachments[photo("p1")] ?? {})).not.toContain("caption");
  const removed = done(runCommand(bare.project, { command: "remove-photo", args: { id: photo("p1") } }));
  expect([removed.title, removed.project.attachments]).toEqual(["Remove the photo p1", {}]);
  expect(applyPatches(removed.project, removed.inverse).attachments).toEqual(bare.project.attachments);
});

/** Header of a picture of a size, by ITU-T T.81 B.2.2: start of image, start of frame. */
const jpegOf = (width: number, height: number) =>
  Buffer.from([0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, height >> 8, height, width >> 8, width, 1, 1, 17, 0]).toString(
    "base64",
  );

test.each<[string, string]>([
  ["nothing", ""],
  ["not base64", "****"],
  ["base64 cut off", TINY_JPEG.slice(0, -3)],
  ["a text", Buffer.from("<svg onload=alert(1)>").toString("base64")],
  ["a PNG", "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJ"],
  ["a picture that would unfold to 4 billion pixels", jpegOf(65_535, 65_535)],
  ["a picture wider than photos are brought down to", jpegOf(PHOTO_LIMITS.side + 1, 10)],
  ["more characters than a photo may have", TINY_JPEG + "A".repeat(PHOTO_LIMITS.characters)],
])("no command takes %s for a photo", (_, base64) => {
  expect(refusalOf(laundryAsFound(), attach("p", boxId("B1"), base64))).toMatchObject({ code: "malformed-arguments" });
});

test("a photo as large as photos may be is taken", () => {
  expect(refusalOf(laundryAsFound(), attach("p", boxId("B1"), jpegOf(PHOTO_LIMITS.side, 10)))).toBeUndefined();
});

test("a box, and a drawing, take so many and no more", () => {
  const one = (project: Project, box: string) => refusalOf(project, attach("p", boxId(box)))?.code;
  const full = withPhotos(PHOTO_LIMITS.ofBox, TINY_JPEG, ["B1"]);
  expect([one(full, "B1"), one(full, "B2")]).toEqual(["too-many-photos", undefined]);
  expect(one(withPhotos(PHOTO_LIMITS.ofBox - 1, TINY_JPEG, ["B1"]), "B1")).toBeUndefined();
  expect(one(withPhotos(PHOTO_LIMITS.ofDrawing - 1), "B1")).toBeUndefined();
  expect(one(withPhotos(PHOTO_LIMITS.ofDrawing), "B1")).toBe("too-many-photos");
  // Few, but of a file of other origin, and heavy.
  const heavy = "A".repeat(PHOTO_LIMITS.allCharacters / 2 - TINY_JPEG.length / 2);
  expect(one(withPhotos(2, heavy, ["B2"]), "B1")).toBeUndefined();
  expect(one(withPhotos(2, `${heavy}AAAA`, ["B2"]), "B1")).toBe("too-many-photos");
});

test("a photo can be put to a box that only proposed has, and to none that is nowhere", () => {
  const proposed = laundryDrawing().propose().box("B9").project;
  expect(done(runCommand(proposed, attach("p", boxId("B9")))).title).toBe("Attach a photo to B9");
  expect(refusalOf(laundryAsFound(), attach("p", boxId("B9")))).toMatchObject({ code: "unknown-item" });
});

test("the photo of a removed box stays, of no box, and comes back to it with it", () => {
  const { project } = done(runCommand(laundryAsFound(), attach("p", boxId("B6"))));
  const items = [{ kind: "enclosure" as const, id: boxId("B6") }];
  const removed = done(runCommand(project, { command: "remove-items", args: { state: "as-found", items } }));
  expect(removed.project.attachments[photo("p")]).toMatchObject({ name: "p" });
  expect(removed.project.attachments[photo("p")]?.enclosure).toBeUndefined();
  expect(applyPatches(removed.project, removed.inverse).attachments[photo("p")]?.enclosure).toBe(boxId("B6"));
});

test("undo keeps 64 million characters of photos, whatever number of steps that is, and the newest in any case", () => {
  const heavy = "A".repeat(20 * 1024 * 1024);
  const edit = (index: number, base64: string) => ({
    title: `Step ${index}`,
    project: laundryAsFound(),
    patches: [{ op: "add" as const, path: ["attachments", `f${index}`], value: { base64 } }],
    inverse: [{ op: "remove" as const, path: ["attachments", `f${index}`] }],
  });
  let history = emptyHistory;
  for (let index = 0; index < 5; index++) history = record(history, edit(index, heavy), index * 10_000);
  expect(history.past.map(({ title }) => title)).toEqual(["Step 2", "Step 3", "Step 4"]);
  expect(history.floor).toBe(2);
  expect(undo(history)?.title).toBe("Step 4");
  const huge = record(history, edit(5, heavy.repeat(4)), 90_000);
  expect(huge.past.map(({ title }) => title)).toEqual(["Step 5"]);
});
