import { spliceNoConnector } from "../../shared-model/rules/checks/splice-no-connector.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

ruleTester(spliceNoConnector, {
  passes: [
    { name: "every splice in a connector", drawing: () => laundryProposed() },
    { name: "a connector that is too small is another matter", drawing: () => laundryAsFound() },
    {
      name: "one conductor alone is not a joint",
      drawing: () => laundryProposed().put({ "C4.wh@B5": "cap" }).setSplice("B5n", { connector: "none" }),
    },
  ],
  finds: [
    {
      name: "tape alone",
      drawing: () => laundryProposed().setSplice("HD", { connector: "taped", evidence: { connector: "seen" } }),
      findings: [{ on: "HD", severity: "danger", data: { conductors: 3 }, basis: "seen", says: ["with tape alone"] }],
    },
    {
      name: "two conductors and nothing",
      drawing: () => laundryProposed().setSplice("B5n", { connector: "none" }),
      findings: [{ on: "B5n", data: { conductors: 2 }, says: ["without a connector"] }],
    },
  ],
  cannotTell: [
    {
      name: "the connector is not recorded",
      drawing: () => laundryProposed().setSplice("HD", { connector: "unknown" }),
      on: ["HD"],
      missing: "the connector of HD in B1",
    },
    {
      name: "soldered: how it was made is not recorded",
      drawing: () => laundryProposed().setSplice("HD", { connector: "soldered" }),
      on: ["HD"],
      missing: "the connector of HD in B1",
    },
  ],
});
