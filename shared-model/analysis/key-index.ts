import type { ScopeKey } from "../answers/finding.ts";

/** Which scopes of a state make which statements. */
export class KeyIndex {
  private readonly scopesOf = new Map<string, Set<ScopeKey>>();
  private readonly keysOf = new Map<ScopeKey, readonly string[]>();

  has(key: string): boolean {
    return this.scopesOf.has(key);
  }

  scopesWith(key: string): Iterable<ScopeKey> {
    return this.scopesOf.get(key) ?? [];
  }

  /** Takes the keys of some scopes anew; none for one that is gone. @returns Keys that came or went altogether. */
  replace(scopes: Iterable<readonly [ScopeKey, readonly string[]]>): ReadonlySet<string> {
    const hadIt = new Map<string, boolean>();
    const note = (key: string) => {
      if (!hadIt.has(key)) hadIt.set(key, this.has(key));
    };
    for (const [scope, keys] of scopes) {
      for (const key of this.keysOf.get(scope) ?? []) {
        note(key);
        this.remove(key, scope);
      }
      for (const key of keys) {
        note(key);
        this.add(key, scope);
      }
      if (keys.length > 0) this.keysOf.set(scope, keys);
      else this.keysOf.delete(scope);
    }
    return new Set([...hadIt].flatMap(([key, had]) => (had === this.has(key) ? [] : [key])));
  }

  private add(key: string, scope: ScopeKey): void {
    const scopes = this.scopesOf.get(key);
    if (scopes === undefined) this.scopesOf.set(key, new Set([scope]));
    else scopes.add(scope);
  }

  private remove(key: string, scope: ScopeKey): void {
    const scopes = this.scopesOf.get(key);
    scopes?.delete(scope);
    if (scopes?.size === 0) this.scopesOf.delete(key);
  }
}
