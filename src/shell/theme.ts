/** Light or dark: as the device says, unless the reader has chosen. The choice is kept on the device. */
export type Theme = "system" | "light" | "dark";

const KEY = "workbook.theme.1";

const isTheme = (text: string | null | undefined): text is Theme =>
  text === "light" || text === "dark" || text === "system";

export function themeNow(doc: Document): Theme {
  const theme = doc.documentElement.dataset.theme;
  return isTheme(theme) ? theme : "system";
}

function apply(doc: Document, theme: Theme): void {
  if (theme === "system") delete doc.documentElement.dataset.theme;
  else doc.documentElement.dataset.theme = theme;
}

export function chooseTheme(doc: Document, theme: Theme): void {
  apply(doc, theme);
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // Storage may be forbidden: the choice then lasts as long as the page.
  }
}

/** Takes up the choice of an earlier visit. */
export function recallTheme(doc: Document): void {
  try {
    const theme = localStorage.getItem(KEY);
    if (isTheme(theme)) apply(doc, theme);
  } catch {
    // As above.
  }
}
