/** Closes a switch over a union: the compiler refuses a forgotten case, and a corrupt value at run time is a bug. */
export function unreachable(value: never): never {
  throw new Error(`Unexpected value: ${JSON.stringify(value)}`);
}
