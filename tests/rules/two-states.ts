import { expect } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { tryFix } from "../../shared-model/analysis/try-fix.ts";
import { asId, type DeviceId, type LabelId } from "../../shared-model/model/ids.ts";
import type { Edition, Installation, Label, Project } from "../../shared-model/model/project.ts";
import type { RoomKind } from "../../shared-model/model/room.ts";
import { inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import type { Drawn } from "./rule-tester.ts";

/** Two drawings as the states of one document; the rules are asked about proposed. */
export const plan = (asFound: Drawing, proposed: Drawing): Drawn => ({
  state: "proposed",
  project: () => ({ ...asFound.project(), ...proposed.extra, proposed: proposed.installation() }),
});

/** The drawing with a proposed state that says the same. */
export const unchanged = (drawing: Drawing): Drawn => plan(drawing, drawing);

function changing(drawn: Drawn, change: (installation: Installation) => Installation): Drawn {
  const { state } = drawn;
  return {
    ...(state !== undefined && { state }),
    project: () => {
      const project = drawn.project();
      return {
        ...project,
        asFound: change(project.asFound),
        ...(project.proposed !== undefined && { proposed: change(project.proposed) }),
      };
    },
  };
}

/** Labels by what they are on: a device, or a box as "box B1". */
export const labelled = (drawn: Drawn, labels: readonly (readonly [on: string, wording: string])[]): Drawn =>
  changing(drawn, (installation) => ({
    ...installation,
    labels: Object.fromEntries(
      labels.map(([on, wording], order): [LabelId, Label] => {
        const id = asId<LabelId>(`label-${order}`);
        const [kind, box] = on.split(" ");
        const under = kind === "box" && box !== undefined ? { enclosure: asId(box) } : { device: asId(on) };
        return [id, { id, wording, on: under as Label["on"], order }];
      }),
    ),
  }));

export const withDirectory = (drawn: Drawn, lines: Readonly<Record<string, string>>): Drawn =>
  changing(drawn, (installation) => ({
    ...installation,
    directory: Object.fromEntries(Object.entries(lines).map(([id, line]) => [id as DeviceId, line])),
  }));

interface Made {
  readonly edition?: Edition;
  readonly breaker?: string;
  readonly ratingA?: number;
  /** What is fed, from the panel on, by its name; "R1" unless told. */
  readonly type?: string;
}

/** Panel, breaker Q1, cable C1 to box A in a room of some kinds, and there R1, with its ground. */
export function inRoom(kinds: readonly RoomKind[], made: Made = {}): Drawing {
  const { edition = 2020, breaker = "breaker-1", ratingA = 20, type = "receptacle-15" } = made;
  const drawing = new Drawing(edition)
    .room("Room", kinds)
    .panel("P")
    .breaker("Q1", ratingA, {}, breaker)
    .box("A", 42, { roomId: asId("Room"), internalClamps: "none", cover: "device-plate" })
    .cable("C1", "nm-12-2-g", "P", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": breaker === "breaker-1" ? "P-NB.BAR" : "Q1.LOAD_N", "C1.cu@P": "P-GB.BAR" })
    .splice("E", "A", "twist-medium")
    .put({ "C1.cu@A": "E" })
    .jumper("bond", "A", "E", "bond", { colour: "bare" });
  return withFace(drawing, "R1", type);
}

/** A device on the ends of C1 in A: on LINE of what has it. */
export function withFace(
  drawing: Drawing,
  name: string,
  type: string,
  more: Parameters<Drawing["device"]>[3] = {},
): Drawing {
  const [hot, neutral] = /gfci|afci|dual/.test(type)
    ? ["LINE_H", "LINE_N"]
    : type.startsWith("receptacle-single") || !type.startsWith("receptacle")
      ? ["H", "N"]
      : ["H1", "N1"];
  drawing.device(name, type, "A", more).put({ "C1.bk@A": `${name}.${hot}`, "C1.wh@A": `${name}.${neutral}` });
  if (type !== "receptacle-two-slot") drawing.jumper("g", "A", "E", `${name}.G`, { colour: "bare" });
  return drawing;
}

/** R1 as found, and in its place R2 of another type. */
export function replacing(
  kinds: readonly RoomKind[],
  type: string,
  made: Made & { readonly more?: Parameters<Drawing["device"]>[3] } = {},
): Drawn {
  const proposed = inRoom(kinds, made);
  delete proposed.at("A").devices[asId<DeviceId>("R1")];
  if ("g" in proposed.at("A").jumpers) proposed.removeJumper("g");
  return plan(inRoom(kinds, made), withFace(proposed, "R2", type, { replaces: asId("R1"), ...made.more }));
}

/** Opens the document and presses a fix of a finding of proposed: it must stand. @returns What is said afterwards. */
export function press(
  drawn: Drawn,
  rule: string,
  on: string,
  words?: string,
): { readonly title: string; readonly left: readonly string[]; readonly project: Project } {
  const session = openSession(structuredClone(drawn.project()));
  const { findings } = session.report("proposed");
  const finding = findings.find((one) => one.rule === rule && one.subjects[0]?.name === on);
  if (finding === undefined) throw new Error(`No ${rule} at ${on}: ${inShort(findings).join(", ")}`);
  const fixes =
    words === undefined ? [finding.fix] : (finding.offers ?? []).filter(({ title }) => title.includes(words));
  const [fix] = fixes;
  if (fix === undefined)
    throw new Error(`No such fix; ${(finding.offers ?? []).map(({ title }) => title).join(" | ")}`);
  const tried = tryFix(session, finding, fix);
  if (!tried.applies) throw new Error(`${fix.title}: ${tried.why}`);
  const after = openSession(structuredClone(tried.project)).report("proposed").findings;
  expect(after.map(({ key }) => key)).not.toContain(finding.key);
  return { title: fix.title, left: inShort(after), project: tried.project };
}
