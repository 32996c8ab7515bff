/**
 * The two faces of every page in the letters of western Europe, asked for with the page itself. Other letters come from the
 * whole faces when a page has them; what stands in until then is in fonts.css.
 */
import localFont from "next/font/local";

const sans = localFont({
  variable: "--font-plex-sans",
  display: "swap",
  adjustFontFallback: false,
  src: [
    {
      path: "../node_modules/@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-400-normal.woff2",
      weight: "400",
      style: "normal",
    },
    {
      path: "../node_modules/@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-500-normal.woff2",
      weight: "500",
      style: "normal",
    },
    {
      path: "../node_modules/@fontsource/ibm-plex-sans/files/ibm-plex-sans-latin-600-normal.woff2",
      weight: "600",
      style: "normal",
    },
  ],
});

const mono = localFont({
  variable: "--font-plex-mono",
  display: "swap",
  adjustFontFallback: false,
  src: [
    {
      path: "../node_modules/@fontsource/ibm-plex-mono/files/ibm-plex-mono-latin-400-normal.woff2",
      weight: "400",
      style: "normal",
    },
    {
      path: "../node_modules/@fontsource/ibm-plex-mono/files/ibm-plex-mono-latin-500-normal.woff2",
      weight: "500",
      style: "normal",
    },
  ],
});

/** On the root element: names both faces to the style sheet. */
export const fontClasses = `${sans.variable} ${mono.variable}`;
