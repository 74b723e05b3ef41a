import { ruleBook } from "../rules/rule-book.ts";
import { Energiser } from "./energiser.ts";
import { deviceDrops } from "./outlet-drops.ts";
import { openSession } from "./session.ts";

/** What the worker needs once there is something to check: rules and circuits, most of its script. */
export const checking = { openSession, deviceDrops, ruleBook, newEnergiser: () => new Energiser() };
