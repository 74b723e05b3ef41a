import { type ComponentType, type ReactNode, useEffect, useState } from "react";

/** A large part of the window in a file of its own. */
export interface FetchedPart {
  /** Fetches it before it is needed. Where that fails, it is fetched again when it is shown. */
  readonly fetch: () => Promise<void>;
  /** What was fetched, if it was. */
  readonly now: () => ComponentType | undefined;
}

export function fetchedPart(load: () => Promise<{ readonly default: ComponentType }>): FetchedPart {
  let part: ComponentType | undefined;
  async function fetch(): Promise<void> {
    try {
      part = (await load()).default;
    } catch {
      part = undefined;
    }
  }
  return { fetch, now: () => part };
}

interface Props {
  readonly part: FetchedPart;
  /** Until it has come. */
  readonly meanwhile: ReactNode;
  readonly onShown?: () => void;
}

/**
 * Shows a part as soon as it has come. Not by `lazy` and `Suspense`: what once stood in the place of something is kept
 * there for a third of a second, and a drawing that has been read would wait for that.
 */
export function Fetched({ part, meanwhile, onShown }: Props) {
  const [fetched, setFetched] = useState<ComponentType | "failed" | undefined>(part.now);
  useEffect(() => {
    if (fetched === undefined) part.fetch().then(() => setFetched(() => part.now() ?? "failed"));
    else if (fetched !== "failed") onShown?.();
  }, [fetched, part, onShown]);
  if (fetched === "failed") throw new Error("A part of the window could not be fetched. Load the window again.");
  if (fetched === undefined) return meanwhile;
  const Part = fetched;
  return <Part />;
}
