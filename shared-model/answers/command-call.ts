/** A command with its arguments, as plain data; `base` is the revision that a planner looked at. */
export interface CommandCall {
  readonly command: string;
  readonly args: unknown;
  readonly base?: number;
}
