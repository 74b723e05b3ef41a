import type { MakeUpStyle } from "../answers/make-up-intent.ts";
import { type Connector, connectors, findConnector } from "../catalog/connectors.ts";
import { type SpliceMember, takes } from "../queries/connector-takes.ts";
import { likeConnector } from "../rules/fitting-connector.ts";

const ALUMINIUM_TO_COPPER = "al-cu-listed";

/** Splices whose conductors cannot be taken out or added to without cutting them. */
const CANNOT_BE_OPENED: ReadonlySet<string> = new Set(["crimp-ground", "soldered"]);

/** Connectors that a make-up may use: those at hand, else the usual twist-ons, as common practice has it. */
export class ConnectorStock {
  readonly #usable: readonly Connector[];
  readonly #noPushIn: boolean;

  constructor({ connectors: ids, noPushIn }: Pick<MakeUpStyle, "connectors" | "noPushIn">) {
    this.#noPushIn = noPushIn;
    const named = ids?.flatMap((id) => findConnector(id) ?? []);
    this.#usable = (named ?? usual).filter((one) => !this.#isForbidden(one.id));
  }

  /** The first that takes a set; what is at home there is kept where it does. */
  choose(members: readonly SpliceMember[], atHome?: string): Connector | undefined {
    const own = atHome === undefined || this.#isForbidden(atHome) ? undefined : findConnector(atHome);
    if (own !== undefined && takes(own, members)) return own;
    return this.#usable.find((one) => takes(one, members));
  }

  #isForbidden = (id: string): boolean => this.#noPushIn && id.startsWith("push-in");
}

const usual: readonly Connector[] = [
  ...connectors.filter(({ groundsOnly, capacity }) => groundsOnly !== true && capacity.kind === "table"),
  ...connectors.filter(({ id }) => id === ALUMINIUM_TO_COPPER),
];

/** Whether a splice stays closed for good, so that it is kept as it is or cut away. */
export const cannotBeOpened = (connector: string): boolean => CANNOT_BE_OPENED.has(connector);

/** Any connector of the whole catalogue that takes a set, for a word about what would help. */
export const anyConnector = (members: readonly SpliceMember[]): Connector | undefined =>
  likeConnector(undefined, members);
