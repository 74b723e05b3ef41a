/** One thing wrong with an input: where it is and what to do about it, in a sentence a person can act on. */
export interface Problem {
  /** Permanent kebab-case name, for tests and translations. */
  readonly code: string;
  /** Place inside the input, e.g. `/asFound/enclosures/b1/places`; "" for the whole input. */
  readonly path: string;
  readonly message: string;
}

/** Outcome of something that may fail because of its input. Bugs throw instead. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

export const failed = (...problems: readonly Problem[]): Result<never> => ({ ok: false, problems });

export const problem = (code: string, path: string, message: string): Problem => ({ code, path, message });
