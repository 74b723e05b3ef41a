import { isOwnAddress } from "./own-address.ts";

/** Who sent a message to the main process. */
export interface Sender {
  /** Whether one of our windows sent it. */
  readonly isKnown: boolean;
  /** Address of the frame; undefined for a frame that is gone. */
  readonly address: string | undefined;
  readonly isTopFrame: boolean;
}

/** True only for the page of one of our windows. */
export const isTrusted = ({ isKnown, address, isTopFrame }: Sender): boolean =>
  isKnown && isTopFrame && address !== undefined && isOwnAddress(address);
