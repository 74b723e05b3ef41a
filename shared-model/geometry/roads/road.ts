import type { Point } from "../../model/project.ts";

/** Where a cable leaves the drawing of a box, and which way: -1 left, 1 right; `upright` -1 up, 1 down. */
export interface RoadEnd {
  readonly at: Point;
  readonly out: 1 | -1;
  readonly upright?: true;
}

export interface RoadEnds {
  readonly a: RoadEnd;
  readonly b: RoadEnd;
  /** Points that a person led the cable through, from `a` to `b`; absent where it finds its own way. */
  readonly bends?: readonly Point[];
}

/** Measures of roads, in drawing units. */
export interface RoadScale {
  /** Width of a road. */
  readonly road: number;
  /** Least distance between the middles of two that run side by side. */
  readonly lane: number;
  /** How far a road goes level before its first lane. */
  readonly stepOut: number;
  /** Height between two ends from which a road passes between them when they face away from each other. */
  readonly between: number;
  readonly around: number;
  /** How far a road that passes over or under a box keeps from it: there stand its name and how full it is. */
  readonly past: number;
}

/** A road is a sheath: near, it goes on from the stub at the box. */
export const NEAR_ROADS: RoadScale = { road: 20, lane: 32, stepOut: 28, between: 240, around: 420, past: 52 };
