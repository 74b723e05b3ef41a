import { DegreeLists } from "./sparse-degree-lists.ts";
import type { Graph } from "./sparse-graph.ts";

const NONE = -1;

/**
 * Elimination by approximate minimum degree on a quotient graph. An eliminated node becomes an *element*, the clique of
 * what it touched, so the graph never grows; alike nodes are eliminated together. Method: P. Amestoy, T. Davis, I. Duff,
 * "An approximate minimum degree ordering algorithm", SIAM J. Matrix Anal. Appl. 17 (1996).
 *
 * A *variable* is a node still to be eliminated; it may stand for several alike ones. Its list holds first the elements,
 * then the variables beside it. The list of an element holds the variables that it touches.
 */
export class QuotientGraph {
  private readonly count: number;
  private lists: Int32Array;
  private free = 0;
  private readonly at: Int32Array;
  private readonly length: Int32Array;
  private readonly elements: Int32Array;
  /** Nodes that a variable stands for: 0 once it is eliminated or behind another, negative while the pivot touches it. */
  private readonly size: Int32Array;
  /** Of a variable: bound of its degree. Of an element: how many nodes it touches. */
  private readonly degree: Int32Array;
  /** Of an element: its nodes outside the pivot's, plus `stamp`; below `stamp` from an earlier step, 0 once absorbed. */
  private readonly outside: Int32Array;
  private stamp = 2;
  private largest = 0;
  private readonly mark: Int32Array;
  private marking = 0;
  private readonly byDegree: DegreeLists;
  /** While the pivot touches a variable: the next one with the same hash. */
  private readonly next: Int32Array;
  private readonly bucket: Int32Array;
  private readonly hash: Int32Array;
  /** The nodes behind a variable or element, in a chain that begins with itself. */
  private readonly follower: Int32Array;
  private readonly lastFollower: Int32Array;
  /** Nodes not yet eliminated. */
  private left = 0;

  /** Leaves out the nodes that are already `gone`. */
  constructor({ count, start, to }: Graph, gone: Uint8Array) {
    this.count = count;
    const nones = (length: number) => new Int32Array(length).fill(NONE);
    this.at = new Int32Array(count);
    this.length = new Int32Array(count);
    this.elements = new Int32Array(count);
    this.size = new Int32Array(count);
    this.degree = new Int32Array(count);
    this.outside = new Int32Array(count);
    this.mark = new Int32Array(count);
    this.hash = new Int32Array(count);
    this.byDegree = new DegreeLists(count);
    this.next = nones(count);
    this.bucket = nones(count);
    this.follower = nones(count);
    this.lastFollower = new Int32Array(count);
    this.lists = new Int32Array(to.length + (to.length >> 1) + 16);
    for (let node = 0; node < count; node++) {
      this.lastFollower[node] = node;
      if (gone[node] === 1) continue;
      this.size[node] = 1;
      this.left++;
      this.at[node] = this.free;
      for (let p = start[node] as number; p < (start[node + 1] as number); p++) {
        const other = to[p] as number;
        if (gone[other] === 0) this.lists[this.free++] = other;
      }
      this.length[node] = this.free - (this.at[node] as number);
      this.degree[node] = this.length[node] as number;
      this.byDegree.add(node, this.length[node] as number);
    }
  }

  /** Fills `order` from place `filled` on, and returns the place after the last. */
  eliminateInto(order: Int32Array, filled: number): number {
    let place = filled;
    while (this.left > 0) {
      const pivot = this.byDegree.takeLowest();
      this.left -= this.size[pivot] as number;
      this.gather(pivot);
      this.countOutside(pivot);
      this.updateTouched(pivot);
      this.mergeAlike(pivot);
      this.refile(pivot);
      this.passStamp();
      for (let node = pivot; node !== NONE; node = this.follower[node] as number) order[place++] = node;
    }
    return place;
  }

  private follow(leader: number, node: number): void {
    this.follower[this.lastFollower[leader] as number] = node;
    this.lastFollower[leader] = this.lastFollower[node] as number;
    this.size[node] = 0;
    this.length[node] = 0;
  }

  /** Makes the pivot an element: the union of its variables and of its elements, which it absorbs. */
  private gather(pivot: number): void {
    const { at, length, elements, outside, size } = this;
    const count = elements[pivot] as number;
    let room = length[pivot] as number;
    for (let k = 0; k < count; k++) room += length[this.lists[(at[pivot] as number) + k] as number] as number;
    if (this.free + room > this.lists.length) this.compact(room);
    const begin = this.free;
    const own = at[pivot] as number;
    size[pivot] = 0;
    let touched = this.take(own + count, own + (length[pivot] as number));
    for (let k = 0; k < count; k++) {
      const element = this.lists[own + k] as number;
      touched += this.take(at[element] as number, (at[element] as number) + (length[element] as number));
      length[element] = 0;
      outside[element] = 0;
    }
    at[pivot] = begin;
    length[pivot] = this.free - begin;
    elements[pivot] = 0;
    outside[pivot] = 1;
    this.degree[pivot] = touched;
    if (touched > this.largest) this.largest = touched;
  }

  /** Appends the variables of a stretch that are not taken yet. Returns how many nodes they stand for. */
  private take(from: number, end: number): number {
    const { size, lists } = this;
    let taken = 0;
    for (let p = from; p < end; p++) {
      const variable = lists[p] as number;
      const weight = size[variable] as number;
      if (weight <= 0) continue;
      taken += weight;
      size[variable] = -weight;
      lists[this.free++] = variable;
      this.byDegree.remove(variable);
    }
    return taken;
  }

  private compact(room: number): void {
    const { at, length, count } = this;
    let used = 0;
    for (let node = 0; node < count; node++) used += length[node] as number;
    const lists = new Int32Array(Math.max(this.lists.length, used + room + (used >> 1)));
    let free = 0;
    for (let node = 0; node < count; node++) {
      const from = at[node] as number;
      const many = length[node] as number;
      at[node] = free;
      for (let p = from; p < from + many; p++) lists[free++] = this.lists[p] as number;
    }
    this.lists = lists;
    this.free = free;
  }

  private countOutside(pivot: number): void {
    const { at, length, elements, size, degree, outside, lists, stamp } = this;
    const begin = at[pivot] as number;
    const end = begin + (length[pivot] as number);
    for (let p = begin; p < end; p++) {
      const variable = lists[p] as number;
      const weight = -(size[variable] as number);
      const from = at[variable] as number;
      const to = from + (elements[variable] as number);
      for (let q = from; q < to; q++) {
        const element = lists[q] as number;
        const was = outside[element] as number;
        if (was === 0) continue;
        outside[element] = (was >= stamp ? was : (degree[element] as number) + stamp) - weight;
      }
    }
  }

  /** Cleans the list of each variable that the pivot touches. Those that touch nothing else go with the pivot, at no cost. */
  private updateTouched(pivot: number): void {
    const { at, length, elements, size, degree, outside, lists, stamp, bucket } = this;
    const begin = at[pivot] as number;
    const end = begin + (length[pivot] as number);
    for (let p = begin; p < end; p++) {
      const variable = lists[p] as number;
      const from = at[variable] as number;
      const elementsEnd = from + (elements[variable] as number);
      const listEnd = from + (length[variable] as number);
      let write = from;
      let beyond = 0;
      let hash = 0;
      for (let q = from; q < elementsEnd; q++) {
        const element = lists[q] as number;
        const rest = (outside[element] as number) - stamp;
        if (rest > 0) {
          beyond += rest;
          hash += element;
          lists[write++] = element;
        } else if (outside[element] !== 0) {
          // It lies within the pivot's, which absorbs it.
          outside[element] = 0;
          length[element] = 0;
        }
      }
      const firstVariable = write;
      for (let q = elementsEnd; q < listEnd; q++) {
        const other = lists[q] as number;
        const weight = size[other] as number;
        if (weight <= 0) continue;
        beyond += weight;
        hash += other;
        lists[write++] = other;
      }
      if (beyond === 0) {
        const weight = -(size[variable] as number);
        this.left -= weight;
        degree[pivot] = (degree[pivot] as number) - weight;
        this.follow(pivot, variable);
        continue;
      }
      // The pivot, or an element that it absorbed, was in this list: there is room for it among the elements.
      if (write > firstVariable) lists[write] = lists[firstVariable] as number;
      lists[firstVariable] = pivot;
      elements[variable] = firstVariable + 1 - from;
      length[variable] = write + 1 - from;
      if (beyond < (degree[variable] as number)) degree[variable] = beyond;
      const slot = hash % this.count;
      this.hash[variable] = slot;
      this.next[variable] = bucket[slot] as number;
      bucket[slot] = variable;
    }
  }

  /** Variables with equal lists will stay alike: all but one stand behind it from now on. */
  private mergeAlike(pivot: number): void {
    const { at, length, size, bucket, next, lists } = this;
    const begin = at[pivot] as number;
    const end = begin + (length[pivot] as number);
    for (let p = begin; p < end; p++) {
      const variable = lists[p] as number;
      if (size[variable] === 0) continue;
      const slot = this.hash[variable] as number;
      let first = bucket[slot] as number;
      bucket[slot] = NONE;
      for (; first !== NONE && next[first] !== NONE; first = next[first] as number) this.mergeInto(first);
    }
  }

  private mergeInto(first: number): void {
    const { at, length, elements, size, mark, next, lists } = this;
    const many = length[first] as number;
    const from = at[first] as number;
    const marking = ++this.marking;
    for (let q = from; q < from + many; q++) mark[lists[q] as number] = marking;
    let before = first;
    for (let other = next[first] as number; other !== NONE; other = next[other] as number) {
      let alike = length[other] === many && elements[other] === elements[first];
      const otherFrom = at[other] as number;
      for (let q = otherFrom; alike && q < otherFrom + many; q++) alike = mark[lists[q] as number] === marking;
      if (alike) {
        size[first] = (size[first] as number) + (size[other] as number);
        this.follow(first, other);
        next[before] = next[other] as number;
      } else before = other;
    }
  }

  /** Puts the touched variables back by degree, and closes up the pivot's list. */
  private refile(pivot: number): void {
    const { at, length, size, degree, lists, left } = this;
    const begin = at[pivot] as number;
    const end = begin + (length[pivot] as number);
    const touched = degree[pivot] as number;
    let write = begin;
    for (let p = begin; p < end; p++) {
      const variable = lists[p] as number;
      const weight = -(size[variable] as number);
      if (weight === 0) continue;
      size[variable] = weight;
      degree[variable] = Math.min((degree[variable] as number) + touched - weight, left - weight);
      this.byDegree.add(variable, degree[variable] as number);
      lists[write++] = variable;
    }
    length[pivot] = write - begin;
    this.free = write;
  }

  /** Marks of this step must read as old in the next. */
  private passStamp(): void {
    this.stamp += this.largest + 1;
    if (this.stamp < 1_000_000_000) return;
    const { outside } = this;
    for (let i = 0; i < this.count; i++) if (outside[i] !== 0) outside[i] = 1;
    this.stamp = 2;
  }
}
