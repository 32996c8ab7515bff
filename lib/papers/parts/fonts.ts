/** IBM Plex from full TrueType files (SIL Open Font License), embedded as subsets: every print looks the same everywhere. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Font } from "@react-pdf/renderer";

export const SANS = "Plex Sans";
export const MONO = "Plex Mono";

const FACES = [
  { family: SANS, file: "@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf", fontWeight: 400 },
  { family: SANS, file: "@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf", fontWeight: 600 },
  { family: MONO, file: "@expo-google-fonts/ibm-plex-mono/400Regular/IBMPlexMono_400Regular.ttf", fontWeight: 400 },
  { family: MONO, file: "@expo-google-fonts/ibm-plex-mono/600SemiBold/IBMPlexMono_600SemiBold.ttf", fontWeight: 600 },
] as const;

/** The font reader asks every glyph for its box, the empty ones at the very end of the file too: give it room to read. */
const PADDING_BYTES = 16;

let isRegistered = false;

/** Registers the families once per process; no word is ever broken by a hyphen. */
export function registerFonts(): void {
  if (isRegistered) return;
  const find = createRequire(import.meta.url).resolve;
  for (const { family, file, fontWeight } of FACES) {
    const bytes = Buffer.concat([readFileSync(find(file)), Buffer.alloc(PADDING_BYTES)]);
    Font.register({ family, src: `data:font/ttf;base64,${bytes.toString("base64")}`, fontWeight });
  }
  Font.registerHyphenationCallback((word) => [word]);
  isRegistered = true;
}
