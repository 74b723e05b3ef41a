import { type ComponentType, useEffect, useState } from "react";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";

const fetchMenu = () => import("./sheet-menu.tsx");
/** By then the drawing stands; whoever asks for a menu before that waits for the script. */
const AHEAD_MS = 1500;

/** Menu of what was pressed on the sheet; what it can do is brought when the drawing stands, or when it is asked for. */
export function SheetMenuPlace() {
  const wanted = useStore(gestureStore, ({ menu }) => menu !== undefined);
  const [Menu, setMenu] = useState<ComponentType>();
  useEffect(() => {
    const bring = (): void =>
      void fetchMenu().then(
        ({ SheetMenu }) => setMenu(() => SheetMenu),
        // Asked for again with the next menu.
        () => undefined,
      );
    if (wanted) bring();
    const timer = setTimeout(bring, AHEAD_MS);
    return () => clearTimeout(timer);
  }, [wanted]);
  return Menu === undefined ? null : <Menu />;
}
