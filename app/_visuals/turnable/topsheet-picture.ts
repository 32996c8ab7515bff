/** The topsheet of one ski as a picture to lay over its body: the scene's own marks, without the light that the stage gives. */
import {
  daylightColour,
  greatestHalfWidthMm,
  type PairLook,
  type SkiSide,
  svgMarks,
  topsheetMarks,
} from "#engine/scene";

const heightPx = 2048;

/** @param pictureBase skiers' pictures are at this address, a slash and their id */
export async function topsheetPicture(look: PairLook, side: SkiSide, pictureBase: string): Promise<HTMLCanvasElement> {
  const { lengthMm } = look.shape;
  const half = greatestHalfWidthMm(look.shape);
  const widthPx = Math.round((heightPx * 2 * half) / lengthMm);
  const artworkId = look.graphic.artwork?.id;
  // A picture inside a picture may not fetch: it has to bring its bytes.
  const bytes = artworkId === undefined ? null : await asDataUrl(`${pictureBase}/${artworkId}`);
  const marks = svgMarks(topsheetMarks(look, side), {
    id: "t",
    colour: daylightColour,
    picture: () => bytes,
    hairlineMm: 0.8,
    font: "sans-serif",
  });
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}" viewBox="${-half} 0 ${2 * half} ${lengthMm}">${marks}</svg>`;
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = widthPx;
    canvas.height = heightPx;
    canvas.getContext("2d")?.drawImage(image, 0, 0, widthPx, heightPx);
    return canvas;
  } finally {
    URL.revokeObjectURL(image.src);
  }
}

async function asDataUrl(address: string): Promise<string | null> {
  const answer = await fetch(address);
  if (!answer.ok) return null;
  const blob = await answer.blob();
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error("not read"));
    reader.readAsDataURL(blob);
  });
}
