/** Shares as people say them: in steps of a twentieth, "three of four". */
const step = 5;

/**
 * A share rounded to 5 %, by the name it has, else in per cent.
 *
 * @param share from 0 to 1
 * @param names by whole per cent: "75" is "three of four"
 */
export function toldShare(share: number, names: Readonly<Record<string, string>>): string {
  const percent = Math.round((share * 100) / step + 1e-9) * step;
  return names[String(percent)] ?? `${percent} %`;
}
