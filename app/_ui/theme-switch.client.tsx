"use client";
import { useState } from "react";

export type Theme = "system" | "light" | "dark";

const next: Readonly<Record<Theme, Theme>> = { system: "dark", dark: "light", light: "system" };
const words: Readonly<Record<Theme, string>> = { system: "as your device", light: "light", dark: "dark" };

/** Light, dark or as the device; remembered in a cookie that the server reads, so a page never flashes. */
export function ThemeSwitch({ initial }: { readonly initial: Theme }) {
  const [theme, setTheme] = useState(initial);
  const change = () => {
    const chosen = next[theme];
    setTheme(chosen);
    if (chosen === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = chosen;
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing from browsers that the shop's phones use
    document.cookie = `theme=${chosen}; path=/; max-age=31536000; samesite=lax`;
  };
  return (
    <button
      type="button"
      onClick={change}
      className="no-print min-h-11 text-sm text-pencil underline underline-offset-4"
    >
      Paper: {words[theme]}
    </button>
  );
}
