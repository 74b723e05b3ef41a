import { describe, expect, test } from "vitest";
import { rules } from "../../shared-model/rules/registry.ts";
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
  "18A": "hot-ground-joined",
  "19A": "live-loose-end",
};

test("every rule is broken, once", () => {
  expect(findings.map(({ rule }) => rule).sort()).toEqual(rules.map(({ id }) => id).sort());
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
