/** Disjoint sets over the integers 0..n-1, growing on demand: who is joined with whom. */
export class UnionFind {
  private readonly parent: number[] = [];

  /** The representative of `item`'s set; equal for joined items. */
  find(item: number): number {
    while (this.parent.length <= item) this.parent.push(this.parent.length);
    let root = item;
    while (this.parent[root] !== root) root = this.parent[root] as number;
    let walk = item;
    while (walk !== root) {
      const next = this.parent[walk] as number;
      this.parent[walk] = root;
      walk = next;
    }
    return root;
  }

  join(first: number, second: number): void {
    const a = this.find(first);
    const b = this.find(second);
    if (a !== b) this.parent[Math.max(a, b)] = Math.min(a, b);
  }
}
