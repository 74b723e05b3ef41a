import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { endTour, goToStep } from "../../state/tour.ts";
import { type Area, placeCard } from "./place-card.ts";
import "./tour.css";
import { TOUR_STEPS } from "./tour-steps.ts";
import { stepOf, TOUR_WORDS } from "./tour-words.ts";

/** A step of the tour: a ring around the region and a card beside it. The window stays at work; Escape leaves it. */
export default function Tour({ step }: { readonly step: number }) {
  const card = useRef<HTMLDialogElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const region = useArea(TOUR_STEPS[step]?.region ?? "");
  const [at, setAt] = useState({ left: 0, top: 0 });
  useFocusGivenBack();
  useEscape(endTour);
  useLayoutEffect(() => {
    const box = card.current?.getBoundingClientRect();
    if (box !== undefined && region !== undefined)
      setAt(placeCard(region, box, { width: innerWidth, height: innerHeight }));
  }, [region]);
  // A step is read aloud when its heading gets the focus.
  useEffect(() => {
    if (TOUR_STEPS[step] !== undefined) heading.current?.focus({ preventScroll: true });
  }, [step]);
  const shown = TOUR_STEPS[step];
  if (shown === undefined) return null;
  const isLast = step === TOUR_STEPS.length - 1;
  return (
    <>
      {region !== undefined && <div className="tour-ring" style={{ ...region }} aria-hidden="true" />}
      <dialog ref={card} open className="tour-card" style={at} aria-label={TOUR_WORDS.name}>
        <p className="dim fig">{stepOf(step + 1, TOUR_STEPS.length)}</p>
        <h2 ref={heading} tabIndex={-1}>
          {shown.title}
        </h2>
        <p>{shown.text}</p>
        <div className="tour-buttons">
          <button type="button" className="button main" onClick={() => (isLast ? endTour() : goToStep(step + 1))}>
            {isLast ? TOUR_WORDS.done : TOUR_WORDS.next}
          </button>
          <button type="button" className="button" disabled={step === 0} onClick={() => goToStep(step - 1)}>
            {TOUR_WORDS.back}
          </button>
          {!isLast && (
            <button type="button" className="link" onClick={endTour}>
              {TOUR_WORDS.leave}
            </button>
          )}
        </div>
      </dialog>
    </>
  );
}

/** Where a region of the window is, followed while the window changes. */
function useArea(selector: string): Area | undefined {
  const [area, setArea] = useState<Area>();
  useLayoutEffect(() => {
    const element = document.querySelector(selector);
    element?.scrollIntoView({ block: "nearest" });
    const look = (): void => {
      const box = element?.getBoundingClientRect();
      setArea(box && { left: box.left, top: box.top, width: box.width, height: box.height });
    };
    look();
    const sizes = new ResizeObserver(look);
    sizes.observe(document.documentElement);
    if (element !== null) sizes.observe(element);
    addEventListener("scroll", look, { passive: true });
    return () => {
      sizes.disconnect();
      removeEventListener("scroll", look);
    };
  }, [selector]);
  return area;
}

/** Ahead of all else that Escape does. A dialog that was opened meanwhile is closed by it first. */
function useEscape(leave: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== "Escape" || document.querySelector("[role='dialog']") !== null) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      leave();
    };
    addEventListener("keydown", onKey, { capture: true });
    return () => removeEventListener("keydown", onKey, { capture: true });
  }, [leave]);
}

function useFocusGivenBack(): void {
  useEffect(() => {
    const before = document.activeElement;
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, []);
}
