import { describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { creditedVolume } from "../../shared-model/queries/box-volume.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { roomKindsOf } from "../../shared-model/queries/outlets-of.ts";
import { formatVolume } from "../../shared-model/units/volume.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";

describe("the laundry box is the job as it was found", () => {
  const project = openSample("laundry-box");
  const { asFound } = project;
  const byName = (name: string): Enclosure => {
    const found = Object.values(asFound.enclosures).find((one) => one.name === name);
    if (found === undefined) throw new Error(`No ${name}.`);
    return found;
  };

  test("a bungalow of 1962, judged by the 2020 edition, nothing proposed yet", () => {
    expect([project.title, project.edition, project.proposed]).toEqual([
      "1962 bungalow, laundry circuit",
      2020,
      undefined,
    ]);
  });

  test("seven cables of 12/2 copper with a full-size ground", () => {
    const sideName = (side: Installation["cables"][keyof Installation["cables"]]["sides"]["a"]) =>
      "enclosure" in side ? asFound.enclosures[side.enclosure]?.name : side.outside;
    const cables = inOrder(asFound.cables).map(({ name, sides, lengthFt }) =>
      [name, sideName(sides.a), sideName(sides.b), lengthFt].join(" "),
    );
    expect(cables).toEqual([
      "C1 P B1 55",
      "C2 B1 B2 18",
      "C3 B1 B4 30",
      "C4 B1 B5 16",
      "C5 B1 B6 25",
      "C6 B2 B3 22",
      "C7 B5 B7 12",
    ]);
    for (const { construction, conductors } of Object.values(asFound.cables)) {
      expect(construction).toBe("nonmetallic-sheathed");
      expect(inOrder(withIds(conductors)).map(({ awg, material, colour }) => `${awg} ${material} ${colour}`)).toEqual([
        "12 copper black",
        "12 copper white",
        "12 copper bare",
      ]);
    }
  });

  test("boxes of the volumes of the job; B1 with internal clamps and a ring that adds nothing", () => {
    const volumes = ["B1", "B2", "B3", "B4", "B5", "B6", "B7"].map((name) => {
      const box = byName(name);
      const volume = box.kind === "box" ? creditedVolume(box) : undefined;
      return volume === undefined ? "unknown" : formatVolume(volume, 1);
    });
    expect(volumes).toEqual(["30.3", "18.0", "18.0", "18.0", "18.0", "14.0", "15.5"]);
    const b1 = byName("B1");
    if (b1.kind !== "box") throw new Error("B1 is no box.");
    expect([b1.material, b1.shape, b1.depthIn, b1.internalClamps]).toEqual(["metal", "square", 2.125, "present"]);
    expect(Object.values(b1.rings)).toMatchObject([{ kind: "plaster-ring", volume: { kind: "unknown" } }]);
  });

  test("devices where they are, each in the places of its room and zone", () => {
    const devices = Object.values(asFound.enclosures)
      .filter(({ kind }) => kind === "box")
      .flatMap((box) =>
        Object.values(box.devices).map(
          (device) =>
            `${box.name} ${device.name} ${device.type}: ${[...roomKindsOf(project, box, device)].sort().join(" ")}`,
        ),
      );
    expect(devices.sort()).toEqual([
      "B1 R1 receptacle-15: basement-unfinished laundry",
      "B2 R2 receptacle-15: basement-unfinished laundry sink-zone",
      "B3 R3 receptacle-15: outdoor",
      "B4 R4 receptacle-15: basement-unfinished",
      "B5 S1 switch-single-pole: stair",
      "B6 R5 receptacle-15: hallway",
      "B7 L1 luminaire-60: stair",
    ]);
  });

  test("breaker 14 of the panel, 20 A, one pole, and no ground-fault breaker listed for it", () => {
    const panel = byName("P");
    const breakers = Object.values(panel.devices).filter(({ slot }) => slot !== undefined);
    expect(breakers).toMatchObject([{ name: "Q14", type: "breaker-1", slot: 14, breakerRatingA: 20, legs: ["A"] }]);
    expect(panel).toMatchObject({ kind: "panel", listedBreakers: ["breaker-1", "breaker-2"] });
  });

  test("the freezer is plugged in at R4; protection of R5 is a wish", () => {
    const devices = Object.values(asFound.enclosures).flatMap((box) => Object.values(box.devices));
    const nameOf = (id: string) => devices.find((device) => device.id === id)?.name;
    expect(Object.values(asFound.loads).map(({ plug, priority }) => [nameOf(plug), priority])).toEqual([
      ["R4", "freezer"],
    ]);
    expect(Object.entries(asFound.intent.outlets).map(([key, { wish }]) => [nameOf(key), wish])).toEqual([
      ["R5", "protect"],
    ]);
  });

  test("wired as the tests draw it, command by command", () => {
    const drawn = laundryAsFound().asFound;
    for (const [id, enclosure] of Object.entries(drawn.enclosures)) {
      const here = asFound.enclosures[id as keyof typeof asFound.enclosures];
      const wiring = ({ places, jumpers, splices, entries }: Enclosure) => ({
        places: Object.fromEntries(Object.entries(places).map(([end, { at }]) => [end, at])),
        jumpers: inOrder(jumpers).map(({ id: jumper, awg, colour }) => [jumper, awg, colour]),
        splices: inOrder(splices).map(({ id: splice, name, connector }) => [splice, name, connector]),
        entries: inOrder(entries).map(({ id: entry, means }) => [entry, means]),
      });
      expect(here && wiring(here)).toEqual(wiring(enclosure));
    }
  });

  test("what was seen with the cover of B1 off is marked as seen, the rest as assumed", () => {
    const b1 = byName("B1");
    expect(b1.evidence).toMatchObject({ volume: "seen", internalClamps: "seen" });
    const marks = Object.entries(b1.places).map(([end, { evidence }]) => [end.startsWith("cable-"), evidence?.at]);
    expect(new Set(marks.map(String))).toEqual(new Set(["true,seen", "false,assumed"]));
    for (const name of ["B2", "B3", "B4", "B5", "B6", "B7"])
      expect(byName(name).evidence).toMatchObject({ volume: "assumed" });
  });

  /**
   * Needed volumes by hand from NFPA 70 (2020) Table 314.16(B), 2.25 in³ for 12 AWG: insulated conductors, clamps
   * present, two for the yoke, grounds (the first four one allowance, each further one a quarter).
   */
  test("box fill as worked by hand", () => {
    const { ledgers } = openSession(project).report();
    const needed = ["B1", "B2", "B3", "B4", "B5", "B6", "B7"].map((name) => {
      const ledger = ledgers[byName(name).id];
      return ledger === undefined ? "none" : formatVolume(ledger.total, 2);
    });
    expect(needed).toEqual(["32.0625", "18.00", "11.25", "13.50", "18.00", "13.50", "9.00"]);
  });
});

/** Conductors carry no id of their own; their key stands in. */
const withIds = <T extends { readonly order: number }>(table: Readonly<Record<string, T>>) =>
  Object.fromEntries(Object.entries(table).map(([id, value]) => [id, { ...value, id }]));
