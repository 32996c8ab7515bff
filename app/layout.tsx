import { settings } from "#services";
import "@fontsource/ibm-plex-sans/400.css";
import "@fontsource/ibm-plex-sans/500.css";
import "@fontsource/ibm-plex-sans/600.css";
import "@fontsource/ibm-plex-mono/400.css";
import "@fontsource/ibm-plex-mono/500.css";
import "#app/fonts.css";
import "#app/globals.css";
import type { Metadata, Viewport } from "next";
import { cookies } from "next/headers";
import { connection } from "next/server";
import type { ReactNode } from "react";
import { fontClasses } from "#app/fonts.ts";

export const metadata: Metadata = {
  title: {
    default: `${settings().shop.name}: skis built to order, in pairs`,
    template: `%s · ${settings().shop.name}`,
  },
  description:
    "A small workshop that builds alpine skis to your measures, in pairs, and tells you when they will be ready.",
};

export const viewport: Viewport = {
  width: "device-width",
  initialScale: 1,
  themeColor: [
    { media: "(prefers-color-scheme: light)", color: "#f7f4ee" },
    { media: "(prefers-color-scheme: dark)", color: "#15191b" },
  ],
};

export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  // Pages are made per request: the nonce of the content security policy belongs to one answer only.
  await connection();
  const theme = (await cookies()).get("theme")?.value;
  return (
    <html lang="en" className={fontClasses} data-theme={theme === "light" || theme === "dark" ? theme : undefined}>
      <body className="flex min-h-dvh flex-col">
        <a
          href="#main"
          className="sr-only focus:not-sr-only focus:fixed focus:top-2 focus:left-2 focus:z-50 focus:bg-sheet focus:px-4 focus:py-3"
        >
          Skip to the content
        </a>
        {children}
      </body>
    </html>
  );
}
