import { describe, expect, test } from "vitest";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { documentCommands } from "../../shared-model/commands/catalog/document-commands.ts";
import { properties } from "../../shared-model/commands/catalog/properties.ts";
import type { PropertyTarget } from "../../shared-model/commands/command-args.ts";
import { commands } from "../../shared-model/commands/registry.ts";
import type { Cable, Conductor } from "../../shared-model/model/cable.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box, Entry, Jumper, Panel, PassThrough, Ring, Splice } from "../../shared-model/model/enclosure.ts";
import type { Load } from "../../shared-model/model/load.ts";
import type { Place } from "../../shared-model/model/place.ts";
import type { Label } from "../../shared-model/model/project.ts";
import type { Room } from "../../shared-model/model/room.ts";

describe("the list of commands", () => {
  test("every command is in it once, with a title and a group", () => {
    expect(documentCommands.map((one) => one.id).toSorted()).toEqual(Object.keys(commands).sort());
    for (const [id, command] of Object.entries(commands)) expect(command.id).toBe(id);
  });

  test("no two commands share a title or keys", () => {
    const all = [...documentCommands, ...windowCommands];
    const keys = all.flatMap((one) => one.shortcut ?? []);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(all.map((one) => one.title)).size).toBe(all.length);
  });
});

describe("every field that a person enters can be set", () => {
  /** Names every field of an entity; the compiler notices one that is left out. */
  type Fields<T> = Readonly<Record<keyof T, "set" | "elsewhere">>;
  const box: Fields<Omit<Box, "kind">> = {
    material: "set",
    shape: "set",
    volume: "set",
    internalClamps: "set",
    supports: "set",
    terminalBlocks: "set",
    gangs: "set",
    depthIn: "set",
    openingMinIn: "set",
    listedFor: "set",
    fanWeightLb: "set",
    luminaireWeightLb: "set",
    mountedOn: "set",
    framingBehind: "set",
    exposure: "set",
    cover: "set",
    openKnockouts: "set",
    setbackIn: "set",
    wallCombustible: "set",
    beingSurveyed: "set",
    note: "set",
    roomId: "set",
    accessible: "set",
    id: "elsewhere",
    name: "elsewhere",
    item: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    rings: "elsewhere",
    entries: "elsewhere",
    devices: "elsewhere",
    splices: "elsewhere",
    jumpers: "elsewhere",
    passThroughs: "elsewhere",
    places: "elsewhere",
  };
  const panel: Fields<Omit<Panel, keyof Box>> = {
    spaces: "set",
    supply: "set",
    mainBond: "set",
    busRatingA: "set",
    listedBreakers: "set",
  };
  const device: Fields<Device> = {
    id: "elsewhere",
    name: "elsewhere",
    type: "elsewhere",
    order: "elsewhere",
    replaces: "elsewhere",
    evidence: "elsewhere",
    zones: "set",
    hotTab: "set",
    neutralTab: "set",
    entryKind: "set",
    ratingA: "set",
    tamperResistant: "set",
    weatherResistant: "set",
    markedForAluminium: "set",
    acceptsStranded: "set",
    selfGrounding: "set",
    bodyDepthIn: "set",
    reachHeightIn: "set",
    behindAppliance: "set",
    metalPlate: "set",
    fastenedTo: "set",
    wasSplit: "set",
    ratingW: "set",
    ledRatingW: "set",
    sideSectionsRemoved: "set",
    reversal: "set",
    faceContact: "set",
    slot: "set",
    breakerRatingA: "set",
    legs: "set",
    function: "set",
    tiedTo: "set",
    listedForPanel: "set",
    groupedInPanel: "set",
    loadW: "set",
    loadOhm: "set",
    leakMa: "set",
    continuous: "set",
    priority: "set",
    weightLb: "set",
    heldByBuilding: "set",
    supplyC: "set",
    notes: "set",
  };
  const cable: Fields<Cable> = {
    id: "elsewhere",
    name: "elsewhere",
    item: "elsewhere",
    conductors: "elsewhere",
    sides: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    construction: "set",
    lengthFt: "set",
    insulationC: "set",
    route: "set",
    groundClampedTo: "set",
    pipeFromEntryFt: "set",
    notes: "set",
  };
  const conductor: Fields<Conductor> = {
    colour: "set",
    awg: "set",
    material: "set",
    stranded: "set",
    grounding: "set",
    order: "elsewhere",
  };
  const entry: Fields<Entry> = {
    id: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    means: "set",
    sheathInsideIn: "set",
    securedWithinIn: "set",
    markedForCables: "set",
  };
  const splice: Fields<Splice> = {
    id: "elsewhere",
    name: "elsewhere",
    connector: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
  };
  const jumper: Fields<Jumper> = {
    id: "elsewhere",
    name: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    awg: "set",
    colour: "set",
    material: "set",
    stranded: "set",
    lengthIn: "set",
  };
  const passThrough: Fields<PassThrough> = {
    id: "elsewhere",
    cable: "elsewhere",
    conductors: "elsewhere",
    entryIn: "elsewhere",
    entryOut: "elsewhere",
    evidence: "elsewhere",
    loopLengthIn: "set",
  };
  const ring: Fields<Ring> = {
    id: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    kind: "set",
    volume: "set",
    depthIn: "set",
  };
  const end: Fields<Place> = {
    at: "elsewhere",
    spare: "elsewhere",
    evidence: "elsewhere",
    freeLengthIn: "set",
    outsideOpeningIn: "set",
    condition: "set",
    markedAs: "set",
    jointOhm: "set",
    tag: "set",
  };
  const load: Fields<Load> = {
    id: "elsewhere",
    name: "elsewhere",
    item: "elsewhere",
    plug: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    loadW: "set",
    loadOhm: "set",
    leakMa: "set",
    continuous: "set",
    priority: "set",
  };
  const room: Fields<Room> = {
    id: "elsewhere",
    name: "elsewhere",
    order: "elsewhere",
    kinds: "set",
    grade: "set",
    insulatedCavity: "set",
  };
  const label: Fields<Label> = {
    id: "elsewhere",
    on: "elsewhere",
    order: "elsewhere",
    evidence: "elsewhere",
    wording: "set",
    requiredBy: "set",
  };
  const ENTITIES: Readonly<Record<Exclude<PropertyTarget["kind"], "project">, Readonly<Record<string, string>>>> = {
    enclosure: { ...box, ...panel },
    device,
    cable,
    conductor,
    entry,
    splice,
    jumper,
    "pass-through": passThrough,
    ring,
    end,
    load,
    room,
    label,
  };

  test.each(Object.entries(ENTITIES))("%s", (kind, fields) => {
    const settable = properties[kind as PropertyTarget["kind"]].map((property) => property.field);
    expect(settable.toSorted()).toEqual(
      Object.keys(fields)
        .filter((field) => fields[field] === "set")
        .sort(),
    );
  });
});
