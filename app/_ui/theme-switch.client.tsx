"use client";
import { useState } from "react";
import { nextTheme, type Theme, themeCookie, themeWords } from "./theme";

/** Light, dark or as the device; remembered in a cookie that the server reads, so a page never flashes. */
export function ThemeSwitch({ initial }: { readonly initial: Theme }) {
  const [theme, setTheme] = useState(initial);
  const change = () => {
    const chosen = nextTheme[theme];
    setTheme(chosen);
    if (chosen === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = chosen;
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing from browsers that the shop's phones use
    document.cookie = themeCookie(chosen);
  };
  return (
    <button
      type="button"
      data-theme-switch=""
      onClick={change}
      className="no-print min-h-11 text-sm text-pencil underline underline-offset-4"
    >
      Paper: {themeWords[theme]}
    </button>
  );
}
