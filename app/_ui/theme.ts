/** Light, dark or as the device: what the switch says and does, with React on a page and without it on a finished one. */
export type Theme = "system" | "light" | "dark";

export const nextTheme: Readonly<Record<Theme, Theme>> = { system: "dark", dark: "light", light: "system" };
export const themeWords: Readonly<Record<Theme, string>> = { system: "as your device", light: "light", dark: "dark" };

/** The cookie that remembers the choice for a year; the server reads it, so a page never flashes. */
export const themeCookie = (theme: string) => `theme=${theme}; path=/; max-age=31536000; samesite=lax`;

/** The same switch for a page without React: the text of its one script. */
export const themeScript = `(() => {
  const next = ${JSON.stringify(nextTheme)}, words = ${JSON.stringify(themeWords)};
  const html = document.documentElement;
  for (const button of document.querySelectorAll("[data-theme-switch]"))
    button.addEventListener("click", () => {
      const theme = next[html.dataset.theme || "system"];
      if (theme === "system") delete html.dataset.theme;
      else html.dataset.theme = theme;
      document.cookie = "${themeCookie("THEME")}".replace("THEME", theme);
      button.textContent = "Paper: " + words[theme];
    });
})()`;
