/** How a verb ended, as the exit status of the program. The worst of several counts. */
export const STATUS = {
  /** Done, and nothing that must be mended. */
  good: 0,
  /** Done, and something at danger or violation, or a box that is overfull. */
  findings: 1,
  /** Bad input or usage; it says what and where on standard error. */
  badInput: 2,
  /** A fault of the program. */
  fault: 3,
} as const;

export type Status = (typeof STATUS)[keyof typeof STATUS];

export const worst = (...statuses: readonly Status[]): Status => Math.max(STATUS.good, ...statuses) as Status;
