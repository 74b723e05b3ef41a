import { describe, expect, test } from "vitest";
import type { Enclosure, Panel } from "../../shared-model/model/enclosure.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { boxRoles, outletAnswers } from "../../shared-model/solver/circuit/section-answers.ts";
import type { Section } from "../../shared-model/solver/section.ts";
import {
  allSections,
  inputsOf,
  panelRoles,
  sectionFingerprint,
  sectionKey,
  sectionOf,
} from "../../shared-model/solver/sections.ts";
import { ohms } from "../../shared-model/units/quantity.ts";
import { Drawing } from "../rules/drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "../rules/laundry.ts";
import { asFeederPanel, boxId, deviceId, endKey, onlySection, protection } from "./look-at.ts";

/** Two circuits of one panel, two boxes each: A1-A2 on QA, B1-B2 on QB, with a receptacle in every box. */
function twoCircuits(): Drawing {
  const drawing = new Drawing()
    .panel("P")
    .breaker("QA", 20, { legs: ["A"] })
    .breaker("QB", 20, { legs: ["B"] });
  for (const name of ["A", "B"]) {
    drawing
      .box(`${name}1`, 30.3)
      .box(`${name}2`, 18)
      .cable(`C${name}1`, "nm-12-2-g", "P", `${name}1`)
      .cable(`C${name}2`, "nm-12-2-g", `${name}1`, `${name}2`)
      .device(`R${name}1`, "receptacle-15", `${name}1`)
      .device(`R${name}2`, "receptacle-15", `${name}2`)
      .put({ [`C${name}1.bk@P`]: `Q${name}.OUT`, [`C${name}1.wh@P`]: "P-NB.BAR", [`C${name}1.cu@P`]: "P-GB.BAR" })
      .put({ [`C${name}1.bk@${name}1`]: `R${name}1.H1`, [`C${name}1.wh@${name}1`]: `R${name}1.N1` })
      .put({ [`C${name}2.bk@${name}1`]: `R${name}1.H2`, [`C${name}2.wh@${name}1`]: `R${name}1.N2` })
      .put({ [`C${name}2.bk@${name}2`]: `R${name}2.H1`, [`C${name}2.wh@${name}2`]: `R${name}2.N1` });
  }
  return drawing;
}

const keys = (installation: Installation): readonly string[] => allSections(installation).map(sectionKey);
const boxes = (section: Section | undefined): readonly string[] => (section?.enclosures ?? []).map(({ id }) => id);

/** The installation with one enclosure changed, everything else the same objects. */
function changing(installation: Installation, name: string, change: Partial<Enclosure>): Installation {
  const id = boxId(name);
  const changed = { ...installation.enclosures[id], ...change } as Enclosure;
  return { ...installation, enclosures: { ...installation.enclosures, [id]: changed } };
}

const panelOf = (installation: Installation): Panel => installation.enclosures[boxId("P")] as Panel;
const fingerprintAt = (installation: Installation, name: string): object => {
  const section = sectionOf(installation, boxId(name));
  if (section === undefined) throw new Error(`No section at ${name}.`);
  return sectionFingerprint(section);
};

describe("what is one section", () => {
  test("boxes joined by cables; a panel and a box that does not exist have none", () => {
    const installation = twoCircuits().installation();
    expect(keys(installation)).toEqual(["A1", "B1"]);
    expect(boxes(sectionOf(installation, boxId("A2")))).toEqual(["A1", "A2"]);
    expect(sectionOf(installation, boxId("P"))).toBeUndefined();
    expect(sectionOf(installation, boxId("nowhere"))).toBeUndefined();
    expect(sectionOf(installation, boxId("A1"))).toBe(sectionOf(installation, boxId("A2")));
  });

  test("two cables on one breaker are one section; on one bar they are not", () => {
    const shared = twoCircuits().put({ "CB1.bk@P": "QA.OUT" }).installation();
    expect(keys(shared)).toEqual(["A1"]);
    const spliced = twoCircuits()
      .splice("X", "P", "twist-medium")
      .put({ "CA1.wh@P": "X", "CB1.wh@P": "X" })
      .jumper("n", "P", "X", "P-NB.BAR", { colour: "white" })
      .installation();
    expect(keys(spliced)).toEqual(["A1", "B1"]);
  });

  test("a splice in a panel that lies on no bar joins its cables to one section", () => {
    const drawing = twoCircuits()
      .splice("X", "P", "twist-medium")
      .put({ "CA1.bk@P": "X", "CB1.bk@P": "X" })
      .jumper("f", "P", "X", "QA.OUT");
    expect(keys(drawing.installation())).toEqual(["A1"]);
    expect(
      onlySection(drawing)
        .outlets()
        .every(({ live }) => live),
    ).toBe(true);
  });

  test("cables on the two sides of one sensing breaker are one section, because its sensor sums them", () => {
    const drawing = twoCircuits()
      .device("G", "breaker-gfci-2", "P", { legs: ["A", "B"] })
      .put({ "CA1.bk@P": "G.OUT1", "CB1.bk@P": "G.OUT2" });
    expect(keys(drawing.installation())).toEqual(["A1"]);
    drawing.put({ "CA1.wh@P": "G.LOAD_N", "CB1.wh@P": "G.LOAD_N" });
    expect(Object.values(protection(onlySection(drawing)))).toEqual(Array(4).fill(["G"]));
  });

  test("breakers of a section are those that feed it", () => {
    const installation = twoCircuits().installation();
    const fed = allSections(installation).map((section) => section.breakers().map(({ device }) => device.id));
    expect(fed).toEqual([["QA"], ["QB"]]);
    expect(
      onlySection(multiwire())
        .breakers()
        .map(({ device }) => device.id),
    ).toEqual(["QA", "QB"]);
  });
});

describe("the same answers while nothing that matters has changed", () => {
  test("a change in one section leaves the other's answers as they are", () => {
    const before = twoCircuits().installation();
    const after = changing(before, "B2", { note: "changed" });
    expect(fingerprintAt(after, "A1")).toBe(fingerprintAt(before, "A1"));
    expect(fingerprintAt(after, "B1")).not.toBe(fingerprintAt(before, "B1"));
    expect(sectionOf(after, boxId("A1"))?.installation).toBe(after);
  });

  test("a change in the panel touches the sections on what changed", () => {
    const before = twoCircuits().installation();
    const panel = panelOf(before);
    const qb = panel.devices[deviceId("QB")];
    if (qb === undefined) throw new Error("QB is in the panel.");
    const renamed = changing(before, "P", { devices: { ...panel.devices, [qb.id]: { ...qb, name: "16" } } });
    expect(fingerprintAt(renamed, "A1")).toBe(fingerprintAt(before, "A1"));
    expect(fingerprintAt(renamed, "B1")).not.toBe(fingerprintAt(before, "B1"));

    const lifted = endKey(before, "CB1.bk@P");
    const open = changing(before, "P", { places: { ...panel.places, [lifted]: { at: { kind: "capped" } } } });
    expect(fingerprintAt(open, "A1")).toBe(fingerprintAt(before, "A1"));
    expect(
      sectionOf(open, boxId("B1"))
        ?.outlets()
        .map(({ live }) => live),
    ).toEqual([false, false]);
  });

  test("what resists in the panel counts too: it divides currents where the metal has loops", () => {
    const before = twoCircuits().jumper("nn", "P", "P-NB.BAR", "P-GB.BAR").installation();
    const panel = panelOf(before);
    const lifted = endKey(before, "CB1.bk@P");
    const [jumper] = Object.values(panel.jumpers);
    if (jumper === undefined) throw new Error("The bars are joined.");
    const poor = { ...panel.places, [lifted]: { ...panel.places[lifted], jointOhm: ohms(2) } } as Panel["places"];
    const bad = changing(before, "P", { places: poor });
    expect(fingerprintAt(bad, "A1")).toBe(fingerprintAt(before, "A1"));
    expect(fingerprintAt(bad, "B1")).not.toBe(fingerprintAt(before, "B1"));
    const thin = changing(before, "P", { jumpers: { [jumper.id]: { ...jumper, awg: "14" } } });
    expect(fingerprintAt(thin, "A1")).not.toBe(fingerprintAt(before, "A1"));

    // Between bars that none of their conductors lies on: in a panel that a feeder supplies it takes a part of all currents.
    const apart = twoCircuits()
      .device("NB2", "neutral-bar", "P")
      .device("GB2", "ground-bar", "P")
      .jumper("nn", "P", "NB2.BAR", "GB2.BAR")
      .installation();
    const [between] = Object.values(panelOf(apart).jumpers);
    if (between === undefined) throw new Error("The bars are joined.");
    const thinner = changing(apart, "P", { jumpers: { [between.id]: { ...between, awg: "14" } } });
    expect(fingerprintAt(thinner, "A1")).not.toBe(fingerprintAt(apart, "A1"));
  });

  test("the name of a panel stands in messages, so a change of it touches every section on it", () => {
    const before = twoCircuits().installation();
    const after = changing(before, "P", { name: "main" });
    expect(fingerprintAt(after, "A1")).not.toBe(fingerprintAt(before, "A1"));
  });

  test("a cable more touches the section that it enters, and joins two when it runs between them", () => {
    const before = twoCircuits().installation();
    const apart = twoCircuits().box("N", 18).cable("CN", "nm-12-2-g", "B2", "N").installation();
    const withSame: Installation = {
      ...apart,
      enclosures: { ...apart.enclosures, ...sameBoxes(before, ["A1", "A2", "P"]) },
      cables: { ...apart.cables, ...before.cables },
    };
    expect(fingerprintAt(withSame, "A1")).toBe(fingerprintAt(before, "A1"));
    expect(boxes(sectionOf(withSame, boxId("B1")))).toEqual(["B1", "B2", "N"]);
    expect(keys(twoCircuits().cable("CJ", "nm-12-2-g", "A2", "B2").installation())).toEqual(["A1"]);
  });

  test("a fact of a cable touches its section, though its boxes are as they were", () => {
    const before = twoCircuits().installation();
    const [cable] = sectionOf(before, boxId("A1"))?.cables ?? [];
    if (cable === undefined) throw new Error("A1 has cables.");
    const after = { ...before, cables: { ...before.cables, [cable.id]: { ...cable, name: "other" } } };
    expect(fingerprintAt(after, "A1")).not.toBe(fingerprintAt(before, "A1"));
    expect(fingerprintAt(after, "B1")).toBe(fingerprintAt(before, "B1"));
  });

  test("what the answers rest on is named by id", () => {
    const section = sectionOf(twoCircuits().installation(), boxId("A2"));
    expect(section && inputsOf(section)).toEqual({ enclosures: ["A1", "A2"], cables: ["CA1", "CA2"], panels: ["P"] });
  });

  test("both states of a document are told apart though they share boxes", () => {
    const asFound = twoCircuits().installation();
    const a2 = asFound.enclosures[boxId("A2")];
    if (a2 === undefined) throw new Error("A2 is drawn.");
    const hot = endKey(asFound, "CA2.bk@A2");
    const proposed = changing(asFound, "A2", { places: { ...a2.places, [hot]: { at: { kind: "capped" } } } });
    const live = (installation: Installation) =>
      sectionOf(installation, boxId("A1"))
        ?.outlets()
        .map((one) => one.live);
    expect([live(asFound), live(proposed), live({ ...asFound })]).toEqual([
      [true, true],
      [true, false],
      [true, true],
    ]);
  });
});

function sameBoxes(installation: Installation, names: readonly string[]): Installation["enclosures"] {
  return Object.fromEntries(
    names.map((name) => [name, installation.enclosures[boxId(name)]]),
  ) as Installation["enclosures"];
}

describe("answers by box", () => {
  test("roles of one box, and outlets of every box of the section", () => {
    const section = onlySection(laundryProposed());
    const roles = boxRoles(section, boxId("B5"));
    expect(roles.splices).toEqual({ B5n: "grounded", "E-B5": "ground" });
    expect(Object.values(roles.ends).sort()).toEqual(
      ["ungrounded", "switched", "grounded", "grounded", ...Array(6).fill("ground")].sort(),
    );
    const answers = outletAnswers(section);
    expect([...answers.keys()]).toEqual(["B1", "B2", "B3", "B4", "B5", "B6", "B7"]);
    expect(answers.get(boxId("B5"))).toEqual([]);
    expect(answers.get(boxId("B4"))).toEqual([{ outlet: "R4b", name: "R4b", live: true, protectedBy: ["R4b"] }]);
    expect(() => boxRoles(section, boxId("P"))).toThrow("no box P");
  });

  test("roles in a panel come from its buses and bars, and of a capped end from its section", () => {
    const installation = laundryAsFound()
      .cable("C9", "nm-12-2-g", "P", "B6")
      .put({ "C9.bk@B6": "R5.H2", "C9.wh@P": "P-NB.BAR" })
      .installation();
    const { ends } = panelRoles(installation, panelOf(installation));
    expect(ends).toEqual({
      "C1.bk.a": "ungrounded",
      "C1.wh.a": "grounded",
      "C1.cu.a": "ground",
      "C9.bk.a": "ungrounded",
      "C9.wh.a": "grounded",
      "C9.cu.a": "floating",
    });
  });

  test("an end that the section does not hold is a bug of the caller", () => {
    expect(() => onlySection(laundryAsFound()).roleOfEnd("nothing.a" as never)).toThrow("no");
  });
});

describe("feeder panels", () => {
  /** P feeds SP by a two-pole breaker, SP feeds one receptacle from its B bus. */
  const feeder = (): Drawing =>
    asFeederPanel(
      new Drawing()
        .panel("P")
        .panel("SP")
        .breaker("QF", 30, { legs: ["A", "B"] }, "breaker-2", "P")
        .breaker("QS", 20, { legs: ["B"] }, "breaker-1", "SP")
        .device("LUGS", "main-lugs", "SP")
        .box("B", 30.3)
        .cable("F", "nm-10-3-g", "P", "SP")
        .cable("C", "nm-12-2-g", "SP", "B")
        .device("R", "receptacle-20", "B")
        .put({ "F.bk@P": "QF.OUT1", "F.rd@P": "QF.OUT2", "F.wh@P": "P-NB.BAR", "F.cu@P": "P-GB.BAR" })
        .put({ "F.bk@SP": "LUGS.L1", "F.rd@SP": "LUGS.L2", "F.wh@SP": "LUGS.N", "F.cu@SP": "SP-GB.BAR" })
        .put({ "C.bk@SP": "QS.OUT", "C.wh@SP": "SP-NB.BAR", "C.cu@SP": "SP-GB.BAR" })
        .put({ "C.bk@B": "R.H1", "C.wh@B": "R.N1", "C.cu@B": "R.G" }),
      "SP",
    );
  const roles = (drawing: Drawing): readonly string[] => {
    const section = onlySection(drawing);
    return ["C.bk@B", "C.wh@B", "C.cu@B"].map((end) => section.roleOfEnd(endKey(section.installation, end)));
  };

  test("sources come through the feeder", () => {
    expect(roles(feeder())).toEqual(["ungrounded", "grounded", "ground"]);
  });

  test("a feeder conductor that is not landed leaves its bus or bar without source", () => {
    expect(roles(feeder().put({ "F.rd@SP": "cap" }))).toEqual(["floating", "grounded", "ground"]);
    expect(roles(feeder().put({ "F.bk@SP": "cap" }))).toEqual(["ungrounded", "grounded", "ground"]);
    expect(roles(feeder().put({ "F.wh@P": "cap" }))).toEqual(["ungrounded", "floating", "ground"]);
    expect(roles(feeder().put({ "F.cu@SP": "loose" }))).toEqual(["ungrounded", "grounded", "floating"]);
  });

  test("a bond between neutral and ground in a feeder panel joins the two there", () => {
    expect(roles(feeder().jumper("nb", "SP", "SP-NB.BAR", "SP-GB.BAR"))).toEqual([
      "ungrounded",
      "conflict",
      "conflict",
    ]);
  });

  test("a feeder through a disconnect in a box reaches through that box's own section", () => {
    const drawing = feeder()
      .box("D", 30.3)
      .device("DA", "disconnect-fused", "D")
      .device("DB", "disconnect-fused", "D")
      .splice("DN", "D", "twist-medium")
      .splice("DG", "D", "twist-medium")
      .cable("G", "nm-10-3-g", "P", "D")
      .cable("H", "nm-10-3-g", "D", "SP")
      .put({ "F.bk@SP": "cap", "F.rd@SP": "cap", "F.wh@SP": "cap", "F.cu@SP": "cap" })
      .put({ "F.bk@P": "cap", "F.rd@P": "cap", "F.wh@P": "cap", "F.cu@P": "cap" })
      .put({ "G.bk@P": "QF.OUT1", "G.rd@P": "QF.OUT2", "G.wh@P": "P-NB.BAR", "G.cu@P": "P-GB.BAR" })
      .put({ "G.bk@D": "DA.IN", "G.rd@D": "DB.IN", "G.wh@D": "DN", "G.cu@D": "DG" })
      .put({ "H.bk@D": "DA.OUT", "H.rd@D": "DB.OUT", "H.wh@D": "DN", "H.cu@D": "DG" })
      .put({ "H.bk@SP": "LUGS.L1", "H.rd@SP": "LUGS.L2", "H.wh@SP": "LUGS.N", "H.cu@SP": "SP-GB.BAR" });
    const installation = drawing.installation();
    expect(keys(installation)).toEqual(["B", "D"]);
    const section = sectionOf(installation, boxId("B"));
    expect(section?.roleOfEnd(endKey(installation, "C.bk@B"))).toBe("ungrounded");
    expect(section && inputsOf(section)).toEqual({
      enclosures: ["B", "D"],
      cables: ["C", "F", "G", "H"],
      panels: ["P", "SP"],
    });
    expect(section?.breakers().map(({ device }) => device.id)).toEqual(["QS"]);
  });

  test("what else a feeder panel feeds is not looked at", () => {
    const drawing = feeder().breaker("QX", 20, { legs: ["B"] }, "breaker-gfci-1", "SP");
    const before = drawing.installation();
    expect(sectionOf(before, boxId("B"))?.sensingDevices()).toEqual([]);
    const devices = before.enclosures[boxId("SP")]?.devices;
    const qx = devices?.[deviceId("QX")];
    if (qx === undefined) throw new Error("QX is drawn.");
    const after = changing(before, "SP", { devices: { ...devices, [qx.id]: { ...qx, name: "other" } } });
    expect(fingerprintAt(after, "B")).toBe(fingerprintAt(before, "B"));
  });

  test("a second feeder touches what is behind the panel", () => {
    const drawing = feeder()
      .box("D", 18)
      .splice("N", "D", "twist-medium")
      .cable("F1", "nm-10-2-g", "P", "D")
      .cable("F2", "nm-10-2-g", "D", "SP")
      .put({ "F.wh@SP": "cap", "F1.wh@P": "P-NB.BAR", "F1.wh@D": "N", "F2.wh@D": "N" });
    const before = drawing.installation();
    const sp = before.enclosures[boxId("SP")];
    const landed = drawing.put({ "F2.wh@SP": "LUGS.N" }).installation().enclosures[boxId("SP")]?.places ?? {};
    const end = endKey(before, "F2.wh@SP");
    const after = changing(before, "SP", { places: { ...sp?.places, [end]: landed[end] as Place } });
    const neutral = (installation: Installation) =>
      sectionOf(installation, boxId("B"))?.roleOfEnd(endKey(installation, "C.wh@B"));
    expect([neutral(before), neutral(after)]).toEqual(["floating", "grounded"]);
  });

  test("a change in the feeder touches what is behind it", () => {
    const before = feeder().installation();
    const sp = before.enclosures[boxId("SP")];
    if (sp === undefined) throw new Error("SP is drawn.");
    const hot = endKey(before, "F.rd@SP");
    const after = changing(before, "SP", { places: { ...sp.places, [hot]: { at: { kind: "capped" } } } });
    expect(fingerprintAt(after, "B")).not.toBe(fingerprintAt(before, "B"));
    expect(
      sectionOf(after, boxId("B"))
        ?.outlets()
        .map(({ live }) => live),
    ).toEqual([false]);
  });
});
