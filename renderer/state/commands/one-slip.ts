/**
 * Whether a typed word is a beginning of another, or all of it, but for one slip: a letter too many, one left out,
 * another in its place, or two changed about.
 */
export function isOneSlip(typed: string, word: string): boolean {
  let at = 0;
  while (at < typed.length && at < word.length && typed[at] === word[at]) at++;
  const rest = typed.slice(at);
  const other = word.slice(at);
  if (rest === "") return true;
  // A last letter that differs from a longer word is no slip yet: another word may have been begun.
  const isLast = rest.length === 1;
  return (
    (isLast ? other === "" : other.startsWith(rest.slice(1))) ||
    other.slice(1).startsWith(rest) ||
    (isLast ? other.length === 1 : other.slice(1).startsWith(rest.slice(1))) ||
    (rest.length > 1 && other.startsWith(`${rest[1]}${rest[0]}${rest.slice(2)}`))
  );
}
