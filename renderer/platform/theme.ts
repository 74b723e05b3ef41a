import { preferencesStore } from "../state/preferences-store.ts";

/** Shows the window light or dark as the person chose, or else as the system is. */
export function followTheme(): void {
  const system = matchMedia("(prefers-color-scheme: dark)");
  const show = (): void => {
    const { theme } = preferencesStore.get();
    document.documentElement.dataset.theme = theme === "system" ? (system.matches ? "dark" : "light") : theme;
  };
  preferencesStore.subscribe(show);
  system.addEventListener("change", show);
  show();
}
