import { describe, expect, test } from "vitest";
import samples from "../../assets/samples/index.json" with { type: "json" };
import { findingsOf } from "../builders/samples/look-into.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const project = openSample("wrong-on-purpose");
const findings = findingsOf(project, "as-found");

/** The fault that the notes of the sheet name for each box, by the rule that is to find it. */
const FAULTS: Readonly<Record<string, string>> = {
  "1A": "conductor-too-small",
  "2A": "polarity-swapped",
  "3B": "open-neutral",
  "4B": "open-hot",
  "5A": "outlet-not-protected",
  "6A": "switch-in-neutral",
  "7A": "hot-neutral-joined",
  "8A": "neutral-ground-joined",
  "9A": "line-load-swapped",
  "10A": "line-load-half-swapped",
  "11A": "hot-both-sides",
  "12A": "neutral-both-sides",
  "13B": "downstream-neutral-on-line",
  "14B": "downstream-hot-on-line",
  "15A": "gfci-no-neutral",
  "16A": "box-overfull",
  "16B": "box-volume-unknown",
  "16C": "fill-nearly-full",
  "16D": "cable-entry-unsecured",
  "16E": "two-wires-one-screw",
  "16F": "push-in-gauge",
  "17A": "clamp-hole-doubled",
  "17B": "splice-no-connector",
  "17C": "splice-over-capacity",
  "17D": "metal-box-unbonded",
  "17E": "device-egc-missing",
  "17F": "egc-not-spliced-all",
  "17G": "voltage-drop-advice",
  "18A": "hot-ground-joined",
  "19A": "live-loose-end",
  "20A": "egc-edition-difference",
  "20B": "device-deeper-than-room",
  "20C": "sheath-not-inside",
  "20D": "free-length-short",
  "20E": "open-knockout",
  "21A": "too-many-cables-in-clamp",
  "21B": "cover-missing",
  "21C": "ring-missing",
  "21D": "ring-volume-unmarked",
  "22A": "box-not-accessible",
  "22B": "box-setback",
  "22C": "wet-box-cover",
  "23B": "luminaire-box-not-listed",
  "23C": "canopy-heat-old-cable",
  "23D": "fan-box-required",
  "24B": "spare-fan-conductor",
  "25A": "push-in-feedthrough",
  "25B": "insulation-damaged",
  "25C": "stranded-on-side-screw",
  "25D": "tab-broken-unintended",
  "26A": "egc-broken-by-removal",
  "26B": "terminal-gauge",
  "27B": "mixed-gauge",
  "27C": "capped-neutral-forgotten",
  "28A": "neutral-bar-doubled",
  "28B": "isolated-route",
  "28C": "parallel-small",
  "29A": "al-cu-direct",
  "29C": "al-on-device",
  "30A": "egc-too-small",
  "30B": "egc-missing",
  "30C": "armour-assumed-ground",
  "30D": "metal-pipe-ground",
  "30E": "knob-tube-in-insulation",
};

test("these faults and no others, each once; the panel has no spaces for a station of every rule", () => {
  expect(findings.map(({ rule }) => rule).sort()).toEqual(Object.values(FAULTS).sort());
});

describe("each fault is found where it was made", () => {
  test.each(Object.entries(FAULTS))("%s: %s", (box, rule) => {
    const [found, ...others] = findings.filter((finding) => finding.rule === rule);
    expect(others).toEqual([]);
    // Devices, cables, joints and jumpers of a station are called after their box.
    const named = new RegExp(`^[CD]?${box}`);
    expect(found?.subjects.some(({ name }) => named.test(name))).toBe(true);
  });
});

test("the notes name the station of each", () => {
  for (const box of Object.keys(FAULTS)) expect(project.notes).toContain(box);
});

test("the list of samples says how many there are", () => {
  const about = samples.find(({ name }) => name === "wrong-on-purpose")?.about;
  expect(about).toContain(`${Object.keys(FAULTS).length} faults`);
});
