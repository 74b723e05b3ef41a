import { expect, test } from "vitest";
import type { Project } from "../../shared-model/model/project.ts";
import { boxRoles } from "../../shared-model/solver/circuit/section-answers.ts";
import { sectionOf } from "../../shared-model/solver/sections.ts";
import { boxId, drawing } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

/** Breaker Q1 feeds B1 by C1; its GFCI receptacle R1 feeds B2 by C2, where R2 is. */
const chain = (): Drawing =>
  drawing()
    .panel("P", "panel-16", { set: { mainBond: "here" } })
    .box("B1")
    .box("B2")
    .breaker("Q1", "P")
    .device("R1", "gfci-receptacle-20", "B1")
    .device("R2", "receptacle-20", "B2")
    .cable("C1", "P", "B1")
    .cable("C2", "B1", "B2")
    .land("C1.bk@P", "Q1.OUT")
    .land("C1.wh@P", "P neutral.BAR")
    .land("C1.cu@P", "P ground.BAR")
    .land("C2.bk@B2", "R2.H1")
    .land("C2.wh@B2", "R2.N1");

const onLine = () => chain().land("C1.bk@B1", "R1.LINE_H").land("C1.wh@B1", "R1.LINE_N");
const inOrder = () => onLine().land("C2.bk@B1", "R1.LOAD_H").land("C2.wh@B1", "R1.LOAD_N");

function behindIn({ asFound }: Project, box: string): unknown {
  const section = sectionOf(asFound, boxId(box));
  if (section === undefined) throw new Error(`${box} is in no section.`);
  const { behind } = boxRoles(section, boxId(box));
  return behind === undefined ? undefined : { ...behind };
}

test("what is fed from LOAD alone is behind the device, here and in the next box", () => {
  const { project } = inOrder();
  expect(behindIn(project, "B1")).toEqual({ "cable-C2.bk.a": ["device-R1"], "cable-C2.wh.a": ["device-R1"] });
  expect(behindIn(project, "B2")).toEqual({ "cable-C2.bk.b": ["device-R1"], "cable-C2.wh.b": ["device-R1"] });
});

test("nothing is behind a device that is fed on LOAD", () => {
  const wrong = chain()
    .land("C1.bk@B1", "R1.LOAD_H")
    .land("C1.wh@B1", "R1.LOAD_N")
    .land("C2.bk@B1", "R1.LINE_H")
    .land("C2.wh@B1", "R1.LINE_N");
  expect(behindIn(wrong.project, "B1")).toBeUndefined();
});

test("a neutral that is joined to LINE is not behind the device, though its hot is", () => {
  const wrong = onLine().land("C2.bk@B1", "R1.LOAD_H").land("C2.wh@B1", "R1.LINE_N#2");
  expect(behindIn(wrong.project, "B1")).toEqual({ "cable-C2.bk.a": ["device-R1"] });
});

test("grounds, and conductors that no source reaches, are behind nothing", () => {
  const { project } = inOrder().outside("C3", "B2");
  expect(Object.keys(behindIn(project, "B2") as object).sort()).toEqual(["cable-C2.bk.b", "cable-C2.wh.b"]);
});
