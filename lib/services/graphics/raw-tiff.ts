/**
 * Pixels as an uncompressed TIFF that carries its colour profile, so that the one library that turns colours into sRGB can
 * read them. TIFF 6.0; profile as tag 34675 (ICC.1:2010, annex B).
 */

export interface RawPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** RGBA, eight bits each, row by row, not multiplied. */
  readonly rgba: Uint8Array;
  /** ICC; null = sRGB. */
  readonly profile: Uint8Array | null;
}

const [short, long, undefinedBytes] = [3, 4, 7];
const headerBytes = 8;
const entryBytes = 12;

export function rawTiff({ widthPx, heightPx, rgba, profile }: RawPicture): Buffer {
  const profileAt = 8 + headerBytes;
  const pixelsAt = even(profileAt + (profile?.length ?? 0));
  const directoryAt = even(pixelsAt + rgba.length);
  const entries: readonly (readonly [tag: number, type: number, count: number, value: number])[] = [
    [256, long, 1, widthPx],
    [257, long, 1, heightPx],
    // Four samples of eight bits: told at byte 8.
    [258, short, 4, headerBytes],
    [259, short, 1, 1],
    [262, short, 1, 2],
    [273, long, 1, pixelsAt],
    [277, short, 1, 4],
    [278, long, 1, heightPx],
    [279, long, 1, rgba.length],
    [284, short, 1, 1],
    // The fourth sample is opacity, unassociated.
    [338, short, 1, 2],
    ...(profile ? [[34_675, undefinedBytes, profile.length, profileAt] as const] : []),
  ];
  const file = Buffer.alloc(directoryAt + 2 + entries.length * entryBytes + 4);
  file.write("II");
  file.writeUInt16LE(42, 2);
  file.writeUInt32LE(directoryAt, 4);
  for (let sample = 0; sample < 4; sample++) file.writeUInt16LE(8, headerBytes + 2 * sample);
  if (profile) file.set(profile, profileAt);
  file.set(rgba, pixelsAt);
  file.writeUInt16LE(entries.length, directoryAt);
  entries.forEach(([tag, type, count, value], index) => {
    const at = directoryAt + 2 + index * entryBytes;
    file.writeUInt16LE(tag, at);
    file.writeUInt16LE(type, at + 2);
    file.writeUInt32LE(count, at + 4);
    if (type === short && count === 1) file.writeUInt16LE(value, at + 8);
    else file.writeUInt32LE(value, at + 8);
  });
  return file;
}

const even = (value: number) => value + (value % 2);
