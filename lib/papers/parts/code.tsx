/** A QR code (ISO/IEC 18004) as one filled vector path: sharp at any printer's resolution, a few hundred bytes. */
import { Path, Svg } from "@react-pdf/renderer";
import QR from "qrcode";
import { INK } from "./theme";

const QUIET_MODULES = 4;

/** Side length in points, quiet zone included. Error correction M: readable with a smear of resin on it. */
export function Code({ text, sidePt }: { readonly text: string; readonly sidePt: number }) {
  const { size, path } = codePath(text);
  const box = size + 2 * QUIET_MODULES;
  return (
    <Svg width={sidePt} height={sidePt} viewBox={`0 0 ${box} ${box}`}>
      <Path d={path} fill={INK} />
    </Svg>
  );
}

/** Runs of dark modules, row by row, as closed rectangles of one path. */
export function codePath(text: string): { readonly size: number; readonly path: string } {
  const { modules } = QR.create(text, { errorCorrectionLevel: "M" });
  const parts: string[] = [];
  for (let row = 0; row < modules.size; row++) {
    for (let column = 0; column < modules.size; column++) {
      if (!modules.get(row, column)) continue;
      let run = 1;
      while (column + run < modules.size && modules.get(row, column + run)) run++;
      parts.push(`M${column + QUIET_MODULES} ${row + QUIET_MODULES}h${run}v1h-${run}z`);
      column += run;
    }
  }
  return { size: modules.size, path: parts.join("") };
}
