// Colours and pens from the page's style sheet, so that the drawing wears the page's theme.

export interface Ink {
  paper: string; sheet: string; ink: string; faint: string; line: string; accent: string; error: string; warning: string;
  /** Thickness of a thin line; thicker in the sun. */
  pen: number; font: string;
}

export function inkOf(element: Element): Ink {
  const style = getComputedStyle(element);
  const of = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise;
  const sun = document.documentElement.dataset.theme === "sunlight";
  return {
    paper: of("--sheet", "#fff"), sheet: of("--sheet", "#fff"), ink: of("--ink", "#111"), faint: of("--faint", "#555"), line: of("--line", "#ccc"),
    accent: of("--accent", "#1f4a73"), error: of("--error", "#a3161b"), warning: of("--warning", "#7d4a00"), pen: sun ? 2 : 1.1,
    font: style.fontFamily || "sans-serif",
  };
}

/** Calls when the theme changes: by choice, or with the device. */
export function onTheme(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme", "class"] });
  const dark = matchMedia("(prefers-color-scheme: dark)");
  dark.addEventListener("change", changed);
  return () => { observer.disconnect(); dark.removeEventListener("change", changed); };
}
