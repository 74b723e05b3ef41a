import type { Phasor, Phasors } from "./network.ts";

/** From one place of a list of phasors to another; past its ends lies the reference, at nothing. */
export const between = ({ re, im }: Phasors, from: number, to: number): Phasor => ({
  re: (re[from] ?? 0) - (re[to] ?? 0),
  im: (im[from] ?? 0) - (im[to] ?? 0),
});

export const plus = (one: Phasor, other: Phasor): Phasor => ({ re: one.re + other.re, im: one.im + other.im });
export const times = (one: Phasor, other: Phasor): Phasor => ({
  re: one.re * other.re - one.im * other.im,
  im: one.re * other.im + one.im * other.re,
});
export const size = ({ re, im }: Phasor): number => Math.hypot(re, im);

/** A quotient; of nothing by nothing, nothing. */
export function over(one: Phasor, other: Phasor): Phasor {
  const square = other.re * other.re + other.im * other.im;
  if (square === 0) return { re: 0, im: 0 };
  return {
    re: (one.re * other.re + one.im * other.im) / square,
    im: (one.im * other.re - one.re * other.im) / square,
  };
}
