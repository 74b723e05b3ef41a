import type { Finding, ScopeAnswers, ScopeKey, Standing } from "../answers/finding.ts";
import { sameValue } from "../lib/same-value.ts";
import type { EnclosureId } from "../model/ids.ts";
import type { StateName } from "../model/project.ts";
import { severityRank } from "../model/severity.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { type CheckDelta, type CheckState, enclosuresOfScope, type FoldedAnswers } from "./check-state.ts";
import { findPlaces } from "./finding-places.ts";
import { KeyIndex } from "./key-index.ts";
import { openedOf } from "./opened.ts";
import { ReplacedDevices } from "./replaced-devices.ts";
import { alikeUnder, type FormerDevices, formerKeys, statementsOf } from "./statements.ts";

/** What is different in the checks of one state: its scopes that were checked again, and the enclosures that changed. */
export interface Renewed {
  readonly scopes: ReadonlySet<ScopeKey>;
  readonly enclosures: ReadonlySet<EnclosureId>;
}

export const renewedBy = (delta: Pick<CheckDelta, "scopes" | "own"> | undefined): Renewed => ({
  scopes: new Set(delta?.scopes.keys()),
  enclosures: new Set(delta?.own.keys()),
});

/** How the findings of a finding's own state stand to those of the other. */
export interface Comparison {
  /** Answers of a scope with the standing of every finding; undefined when the state has no such scope. */
  answers(state: StateName, scope: ScopeKey): ScopeAnswers | undefined;
  /** Devices of a state that replace others; as found has none. */
  former(state: StateName): FormerDevices;
  /**
   * Follows the two checks, which have been renewed. Costs what is different.
   * @returns Scopes whose answers are others now, beside those that were checked again.
   */
  follow(renewed: Readonly<Record<StateName, Renewed>>): Readonly<Record<StateName, ReadonlySet<ScopeKey>>>;
}

/**
 * What a finding of proposed is to the plan. One that was there before and lies in no enclosure that the work opens
 * stays as it is: a violation is then told as a caution, a danger never. What lies in no enclosure at all is about the
 * document and keeps its severity.
 */
export function standInProposed(
  finding: Finding,
  wasThere: boolean,
  places: ReadonlySet<EnclosureId>,
  isOpened: (enclosure: EnclosureId) => boolean,
): Finding {
  if (!wasThere) return { ...finding, standing: "introduced" };
  if ([...places].some(isOpened)) return { ...finding, standing: "inherited-touched" };
  const standing: Standing = "inherited";
  if (finding.severity !== "violation" || places.size === 0) return { ...finding, standing };
  return { ...finding, standing, severity: "caution", existing: true };
}

export const standAsFound = (finding: Finding, isStill: boolean): Finding => ({
  ...finding,
  standing: isStill ? "stays" : "repaired",
});

/** Compares two checks of one document from nothing. */
export function compareStates(asFound: CheckState, proposed: CheckState): Comparison {
  const comparison = new StateComparison(asFound, proposed);
  comparison.follow({ "as-found": renewedBy(asFound), proposed: renewedBy(proposed) });
  return comparison;
}

class StateComparison implements Comparison {
  private readonly checked: Readonly<Record<StateName, CheckState>>;
  private readonly replaced = new ReplacedDevices();
  private readonly opened = new Set<EnclosureId>();
  /** Statements of as found by their keys, and those of proposed by the keys that they may have had before. */
  private readonly index: Readonly<Record<StateName, KeyIndex>> = {
    "as-found": new KeyIndex(),
    proposed: new KeyIndex(),
  };
  private readonly related: Readonly<Record<StateName, Map<ScopeKey, ScopeAnswers>>> = {
    "as-found": new Map(),
    proposed: new Map(),
  };
  /** Enclosures that the findings of a scope of proposed lie in. */
  private readonly places = new Map<ScopeKey, ReadonlySet<EnclosureId>>();

  constructor(asFound: CheckState, proposed: CheckState) {
    this.checked = { "as-found": asFound, proposed };
  }

  answers(state: StateName, scope: ScopeKey): ScopeAnswers | undefined {
    return this.related[state].get(scope);
  }

  former(state: StateName): FormerDevices {
    return state === "proposed" ? this.replaced.former : new Map();
  }

  follow(renewed: Readonly<Record<StateName, Renewed>>): Readonly<Record<StateName, ReadonlySet<ScopeKey>>> {
    const { "as-found": asFound, proposed } = renewed;
    const enclosures = new Set([...asFound.enclosures, ...proposed.enclosures]);
    const turned = this.renewOpened(enclosures);
    const renamed = this.replaced.follow(
      this.checked["as-found"].project.asFound,
      getInstallation(this.checked.proposed.project, "proposed"),
      enclosures,
    );
    const cameOrWent = {
      "as-found": this.renewIndex("as-found", asFound.scopes),
      // Under other names of devices every statement may have other keys.
      proposed: this.renewIndex("proposed", renamed ? this.allScopes("proposed", proposed.scopes) : proposed.scopes),
    };
    const due = { "as-found": new Set(asFound.scopes), proposed: new Set(proposed.scopes) };
    for (const key of cameOrWent["as-found"])
      for (const scope of this.index.proposed.scopesWith(key)) due.proposed.add(scope);
    for (const key of cameOrWent.proposed)
      for (const scope of this.index["as-found"].scopesWith(key)) due["as-found"].add(scope);
    if (renamed) for (const scope of this.checked.proposed.scopes.keys()) due.proposed.add(scope);
    if (turned.length > 0)
      for (const [scope, places] of this.places) if (turned.some((id) => places.has(id))) due.proposed.add(scope);
    return {
      "as-found": this.relateAll("as-found", due["as-found"], asFound.scopes),
      proposed: this.relateAll("proposed", due.proposed, proposed.scopes),
    };
  }

  /** Looks again whether the work opens some enclosures. @returns Those of which another is true now. */
  private renewOpened(enclosures: ReadonlySet<EnclosureId>): readonly EnclosureId[] {
    const { "as-found": asFound, proposed } = this.checked;
    const now = openedOf(asFound.project.asFound, getInstallation(proposed.project, "proposed"), enclosures);
    const turned = [...enclosures].filter((id) => now.has(id) !== this.opened.has(id));
    for (const id of turned) {
      if (now.has(id)) this.opened.add(id);
      else this.opened.delete(id);
    }
    return turned;
  }

  private allScopes(state: StateName, and: ReadonlySet<ScopeKey>): ReadonlySet<ScopeKey> {
    return new Set([...and, ...this.checked[state].scopes.keys()]);
  }

  private renewIndex(state: StateName, scopes: ReadonlySet<ScopeKey>): ReadonlySet<string> {
    const former = this.replaced.former;
    const entries = [...scopes].map((scope) => {
      const folded = this.checked[state].scopes.get(scope);
      const statements = folded === undefined ? [] : statementsOf(folded);
      const keys =
        state === "as-found"
          ? statements.map(({ key }) => key)
          : statements.flatMap((said) => formerKeys(said, former));
      return [scope, keys] as const;
    });
    return this.index[state].replace(entries);
  }

  /** @returns Those that say something else now and were not checked again. */
  private relateAll(
    state: StateName,
    due: ReadonlySet<ScopeKey>,
    checkedAgain: ReadonlySet<ScopeKey>,
  ): ReadonlySet<ScopeKey> {
    const different = new Set<ScopeKey>();
    const known = this.related[state];
    for (const scope of due) {
      const folded = this.checked[state].scopes.get(scope);
      if (folded === undefined) {
        known.delete(scope);
        if (state === "proposed") this.places.delete(scope);
        continue;
      }
      const before = known.get(scope);
      const after = state === "proposed" ? this.relateProposed(scope, folded) : this.relateAsFound(folded);
      known.set(scope, after);
      if (!checkedAgain.has(scope) && !sameValue(before, after)) different.add(scope);
    }
    return different;
  }

  /** Of several things that one finding stands for, each must be mended, or the finding stays. */
  private relateAsFound(folded: FoldedAnswers): ScopeAnswers {
    const { findings, couldNotTell } = folded.answers;
    return {
      findings: findings.map((finding) =>
        standAsFound(
          finding,
          [finding, ...alikeUnder(finding, folded)].some(({ key }) => this.index.proposed.has(key)),
        ),
      ),
      couldNotTell,
    };
  }

  /** Of several things that one finding stands for, each must have been there before, or something of it is new. */
  private relateProposed(scope: ScopeKey, folded: FoldedAnswers): ScopeAnswers {
    const { findings, couldNotTell } = folded.answers;
    const { proposed } = this.checked;
    const placesOf = findPlaces(getInstallation(proposed.project, "proposed"), enclosuresOfScope(proposed, scope));
    const all = new Set<EnclosureId>();
    const standing = findings.map((finding) => {
      const told = [finding, ...alikeUnder(finding, folded)];
      const places = placesOf(told.flatMap(({ subjects }) => subjects));
      for (const id of places) all.add(id);
      const wasThere = told.every((one) =>
        formerKeys(one, this.replaced.former).some((key) => this.index["as-found"].has(key)),
      );
      return standInProposed(finding, wasThere, places, (id) => this.opened.has(id));
    });
    if (all.size > 0) this.places.set(scope, all);
    else this.places.delete(scope);
    return { findings: worstFirst(standing), couldNotTell };
  }
}

/** In the order that findings are folded in: by severity, then by key. */
export const worstFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort(
    (a, b) => severityRank(a.severity) - severityRank(b.severity) || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0),
  );
