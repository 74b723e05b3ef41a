import { type Connector, connectors, findConnector } from "../catalog/connectors.ts";
import { type SpliceMember, takes } from "../queries/connector-takes.ts";

/** The connector at hand if it takes the set, else one like it. */
export function fittingConnector(current: string | undefined, members: readonly SpliceMember[]): Connector | undefined {
  const own = current === undefined ? undefined : findConnector(current);
  return own !== undefined && takes(own, members) ? own : likeConnector(current, members);
}

/** The smallest of the kind of a connector that takes the set, else of another; one for grounds only comes last. */
export function likeConnector(current: string | undefined, members: readonly SpliceMember[]): Connector | undefined {
  const kind = findConnector(current ?? "")?.id.replace(/-[^-]+$/, "");
  const rank = ({ id, groundsOnly }: Connector): number =>
    (kind !== undefined && id.startsWith(kind) ? 0 : 2) + (groundsOnly === true ? 1 : 0);
  return connectors.filter((one) => takes(one, members)).sort((a, b) => rank(a) - rank(b))[0];
}
