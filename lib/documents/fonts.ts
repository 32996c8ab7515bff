/** IBM Plex from full TrueType files (SIL Open Font License), embedded as subsets: every print looks the same everywhere. */
import { createRequire } from "node:module";
import { Font } from "@react-pdf/renderer";

export const SANS = "Plex Sans";
export const MONO = "Plex Mono";

let isRegistered = false;

/** Registers the families once per process; no word is ever broken at a hyphen of the machine's own making. */
export function registerFonts(): void {
  if (isRegistered) return;
  const find = createRequire(import.meta.url).resolve;
  const sans = "@expo-google-fonts/ibm-plex-sans";
  const mono = "@expo-google-fonts/ibm-plex-mono";
  Font.register({
    family: SANS,
    fonts: [
      { src: find(`${sans}/400Regular/IBMPlexSans_400Regular.ttf`), fontWeight: 400 },
      {
        src: find(`${sans}/400Regular_Italic/IBMPlexSans_400Regular_Italic.ttf`),
        fontWeight: 400,
        fontStyle: "italic",
      },
      { src: find(`${sans}/600SemiBold/IBMPlexSans_600SemiBold.ttf`), fontWeight: 600 },
    ],
  });
  Font.register({
    family: MONO,
    fonts: [
      { src: find(`${mono}/400Regular/IBMPlexMono_400Regular.ttf`), fontWeight: 400 },
      { src: find(`${mono}/600SemiBold/IBMPlexMono_600SemiBold.ttf`), fontWeight: 600 },
    ],
  });
  Font.registerHyphenationCallback((word) => [word]);
  isRegistered = true;
}
