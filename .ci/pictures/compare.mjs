// How much two pictures differ: the share of their pixels that do, by more than what another edge smoothing makes.
import sharp from "sharp";

/** Steps of 255 that a channel may be off before its pixel counts as another one. */
const tolerance = 32;

/**
 * @param before @param after pictures, as bytes or the path of a file
 * @returns {Promise<number>} from 0 to 1; 1 where their sizes differ
 */
export async function differentShare(before, after) {
  const [one, two] = await Promise.all([before, after].map(pixels));
  if (one.width !== two.width || one.height !== two.height) return 1;
  let different = 0;
  for (let at = 0; at < one.data.length; at += 3) {
    const isOff = [0, 1, 2].some((channel) => Math.abs(one.data[at + channel] - two.data[at + channel]) > tolerance);
    if (isOff) different += 1;
  }
  return different / (one.width * one.height);
}

async function pixels(picture) {
  const { data, info } = await sharp(picture)
    .flatten({ background: "#ffffff" })
    .toColourspace("srgb")
    .raw()
    .toBuffer({ resolveWithObject: true });
  if (info.channels !== 3) throw new Error(`a picture of ${info.channels} channels`);
  return { data, width: info.width, height: info.height };
}
