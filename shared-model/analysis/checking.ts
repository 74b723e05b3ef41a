import { ruleBook } from "../rules/rule-book.ts";
import { Energiser } from "./energiser.ts";
import { expectedTests } from "./expected-tests.ts";
import { deviceDrops } from "./outlet-drops.ts";
import { openSession } from "./session.ts";

/** What the worker needs once there is something to check: rules and circuits, most of its script. */
export const checking = { openSession, deviceDrops, expectedTests, ruleBook, newEnergiser: () => new Energiser() };
