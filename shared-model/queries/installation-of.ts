import type { Installation, Project, StateName } from "../model/project.ts";

/** One state of a document; undefined for proposed before it was started. */
export const findInstallation = (project: Project, state: StateName): Installation | undefined =>
  state === "as-found" ? project.asFound : project.proposed;

/** As `findInstallation`; throws where the caller knows that the state exists. */
export function getInstallation(project: Project, state: StateName): Installation {
  const installation = findInstallation(project, state);
  if (installation === undefined) throw new Error(`The document has no ${state} state.`);
  return installation;
}

/** The state that a check looks at unless told otherwise: proposed once it was started. */
export const currentState = (project: Project): StateName => (project.proposed === undefined ? "as-found" : "proposed");
