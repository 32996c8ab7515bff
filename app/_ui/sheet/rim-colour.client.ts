"use client";
/** The ground that a picture proposes: the mean of its rim. */

/** Where the picture cannot be looked at. */
export const plainGround = "#e8e4da";
const samplePx = 32;
const patienceMs = 5000;
/** Below it a pixel is rather clear than coloured. */
const opaque = 128;

/** @returns #rrggbb; `plainGround` where the picture does not load, is clear all round, or cannot be drawn here */
export async function rimColour(address: string): Promise<string> {
  try {
    return meanOfRim(await pixelsOf(await loaded(address)));
  } catch {
    return plainGround;
  }
}

async function loaded(address: string): Promise<HTMLImageElement> {
  const image = new Image();
  image.src = address;
  const tooLong = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error("the picture does not come")), patienceMs);
  });
  await Promise.race([image.decode(), tooLong]);
  return image;
}

async function pixelsOf(image: HTMLImageElement): Promise<Uint8ClampedArray> {
  const canvas = document.createElement("canvas");
  canvas.width = samplePx;
  canvas.height = samplePx;
  const context = canvas.getContext("2d");
  if (context === null) throw new Error("no canvas");
  context.drawImage(image, 0, 0, samplePx, samplePx);
  return context.getImageData(0, 0, samplePx, samplePx).data;
}

/** @param rgba a square picture of 32 × 32 */
export function meanOfRim(rgba: Uint8ClampedArray): string {
  const sum = [0, 0, 0];
  let count = 0;
  for (let i = 0; i < samplePx * samplePx; i++) {
    const [x, y] = [i % samplePx, Math.floor(i / samplePx)];
    const isRim = x === 0 || y === 0 || x === samplePx - 1 || y === samplePx - 1;
    if (!isRim || (rgba[4 * i + 3] ?? 0) < opaque) continue;
    count += 1;
    for (let channel = 0; channel < 3; channel++) sum[channel] = (sum[channel] ?? 0) + (rgba[4 * i + channel] ?? 0);
  }
  if (count === 0) return plainGround;
  return `#${sum
    .map((each) =>
      Math.round(each / count)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`;
}
