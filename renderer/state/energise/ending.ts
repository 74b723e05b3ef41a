let ending: (() => void) | undefined;

/** Says how energising is ended, once it can be. */
export function endsBy(end: () => void): void {
  ending = end;
}

/** Ends it, for those who need nothing else of it; where it is not on, nothing happens. */
export const leaveEnergise = (): void => ending?.();
