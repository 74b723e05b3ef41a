import { expect, test } from "vitest";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { targetsOfEnd } from "../../renderer/sheet/landing-targets.ts";
import { targetWords } from "../../renderer/sheet/target-layer.tsx";
import { broughtEverywhere } from "../../renderer/state/brought-everywhere.ts";
import { documentStore, openDocument, shownInstallation } from "../../renderer/state/document-store.ts";
import { landingChoices } from "../../renderer/state/landing-choices.ts";
import type { PreviewResult } from "../../shared-model/analysis/protocol.ts";
import { type ConductorKey, cableEnd } from "../../shared-model/model/ids.ts";
import { boxId, cableId, laundryAsFound } from "../builders/drawing.ts";

const held = { enclosure: boxId("B1"), end: cableEnd(cableId("C1"), "bk" as ConductorKey, "b") };
const BOND = { rule: "box-bond", severity: "violation", message: "B1 is metal and is not joined." } as const;
const WRONG = { rule: "hot-on-neutral", severity: "violation", message: "Hot on silver." } as const;
const DANGER = { rule: "dead-short", severity: "danger", message: "A dead short." } as const;
/** Of the same rule, about the end that is held. */
const OWN = { ...BOND, message: "R1 is not joined: C1 BK is on its ground screw." };
type Found = typeof BOND | typeof OWN | typeof WRONG | typeof DANGER;

openDocument({ project: laundryAsFound() });
const choices = landingChoices(shownInstallation(), "as-found", held);
const previewsWith = (found: (place: string) => readonly Found[]): ReadonlyMap<string, PreviewResult> =>
  new Map(choices.map(({ key, place }) => [key, { introduces: found(place.kind), repairs: 0, unprotects: [] }]));

/** Which of the findings of a place are about the rest of the box. */
const everywhere = (previews: ReadonlyMap<string, PreviewResult>, among = choices): readonly string[] => {
  const isEverywhere = broughtEverywhere(among, previews, "C1 BK");
  const all = [BOND, OWN, WRONG, DANGER].filter((each) => isEverywhere(each));
  return all.map(({ message }) => message);
};

test("what follows wherever an end is landed is about the rest of the box", () => {
  const isLanded = (kind: string): boolean => kind !== "loose" && kind !== "capped";
  expect(everywhere(previewsWith((kind) => (isLanded(kind) ? [BOND] : [])))).toEqual([BOND.message]);
  // At one place it does not follow: that one is better than the others.
  expect(everywhere(previewsWith((kind) => (kind === "bond" ? [] : [BOND])))).toEqual([]);
  expect(everywhere(previewsWith(() => [DANGER]))).toEqual([]);
  // Two places are no choice.
  const two = choices.filter(({ place }) => place.kind === "splice").slice(0, 2);
  expect(
    everywhere(
      previewsWith(() => [BOND]),
      two,
    ),
  ).toEqual([]);
  expect(everywhere(new Map())).toEqual([]);
});

test("a target shows what is its own, and tells the rest in words", () => {
  const drawing = drawingOf(documentStore.get(), boxId("B1"));
  if (drawing === undefined) throw new Error("B1 is not drawn.");
  const previews = previewsWith((kind) => (kind === "terminal" ? [BOND, OWN] : kind === "loose" ? [] : [BOND]));
  for (const target of targetsOfEnd(drawing, { kind: "end", ...held }, choices, previews, "C1 BK")) {
    if (target.kind === "terminal")
      expect(target.verdict).toEqual({ kind: "finding", severity: "violation", message: OWN.message });
    else {
      expect(target.verdict.kind).toBe("open");
      expect(targetWords(target)).toContain("violation. B1 is metal");
    }
  }
});
