import { wording } from "./words.ts";

const TIME = new Intl.DateTimeFormat("en", { hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
const DAY = new Intl.DateTimeFormat("en", { day: "numeric", month: "long" });
const FAR_DAY = new Intl.DateTimeFormat("en", { day: "numeric", month: "long", year: "numeric" });

/**
 * "today 10:42", "yesterday 18:05", "3 May", "3 May 2024".
 * @param at Milliseconds since 1970.
 */
export function whenWords(at: number, now: number = Date.now()): string {
  const then = new Date(at);
  const today = new Date(now);
  const days = Math.round((midnight(today) - midnight(then)) / 86_400_000);
  if (days === 0) return wording.today(TIME.format(then));
  if (days === 1) return wording.yesterday(TIME.format(then));
  return partsOf(then.getFullYear() === today.getFullYear() ? DAY : FAR_DAY, then);
}

const midnight = (day: Date): number => new Date(day.getFullYear(), day.getMonth(), day.getDate()).getTime();

/** Day before month, as the window writes dates. */
function partsOf(format: Intl.DateTimeFormat, day: Date): string {
  const part = (type: string) => format.formatToParts(day).find((each) => each.type === type)?.value;
  return [part("day"), part("month"), part("year")].filter(Boolean).join(" ");
}
