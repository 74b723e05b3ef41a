import type { Session, WebContents } from "electron";
import { isOwnAddress, mayRequest } from "./policies/own-address.ts";
import { mayUse } from "./policies/permissions.ts";

/** What no page in here may do, whatever it tries: reach anything outside, use a device, download. */
export function guardSession(session: Session, isPackaged: boolean): void {
  session.setPermissionRequestHandler((contents, permission, answer, { isMainFrame, requestingUrl }) => {
    answer(mayUse(permission, isMainFrame && isOwnAddress(requestingUrl) && isOwnPage(contents)));
  });
  session.setPermissionCheckHandler((contents, permission, _origin, { isMainFrame }) =>
    mayUse(permission, isMainFrame && isOwnPage(contents)),
  );
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !mayRequest(url, !isPackaged) }));
  session.on("will-download", (event) => event.preventDefault());
}

const isOwnPage = (contents: WebContents | null): boolean => contents !== null && isOwnAddress(contents.getURL());
