/** The still picture of a HEIC file, as phones write them. libheif turns and cuts it as the file says; EXIF has no say. */
import type { Opened } from "./opened";

/** Pixels of the primary picture. */
export async function openHeic(bytes: Uint8Array, mostPixels: number): Promise<Opened> {
  const { default: heif } = await import("libheif-js/wasm-bundle.js");
  const context = heif.heif_context_alloc();
  if (context === null) throw new Error("libheif gave no context");
  const read = heif.heif_context_read_from_memory(context, bytes);
  if (read.code !== heif.heif_error_code.heif_error_Ok) return faultOf(read.message);
  const handle = heif.heif_js_context_get_primary_image_handle(context);
  if (handle.code !== undefined) return faultOf(handle.message);
  const widthPx = heif.heif_image_handle_get_width(handle);
  const heightPx = heif.heif_image_handle_get_height(handle);
  if (widthPx * heightPx > mostPixels) return { is: "too-many-pixels", widthPx, heightPx };
  const { heif_colorspace_RGB } = heif.heif_colorspace;
  const { heif_chroma_interleaved_RGBA } = heif.heif_chroma;
  const decoded = await heif.heif_js_decode_image2(handle, heif_colorspace_RGB, heif_chroma_interleaved_RGBA);
  const [channel] = decoded.channels ?? [];
  if (channel === undefined) return faultOf(decoded.message);
  const rgba = new Uint8Array(widthPx * heightPx * 4);
  for (let row = 0; row < heightPx; row++) {
    const from = row * channel.stride;
    rgba.set(channel.data.subarray(from, from + widthPx * 4), row * widthPx * 4);
  }
  const isClear = heif.heif_image_handle_has_alpha_channel(handle) !== 0;
  return { is: "raw", picture: { widthPx, heightPx, rgba, profile: profileIn(bytes) }, isClear };
}

function faultOf(message = ""): Opened {
  const isCut = /unexpected end|outside of file|cannot read full|end of data/i.test(message);
  return { is: isCut ? "cut-off" : "unreadable" };
}

/** The first colour profile: a `colr` box of kind `prof` (ISO/IEC 14496-12), its length in the four bytes before. */
function profileIn(bytes: Uint8Array): Uint8Array | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = file.indexOf("colrprof", 0, "latin1");
  if (at < 4) return null;
  const length = file.readUInt32BE(at - 4) - 12;
  const profile = file.subarray(at + 8, at + 8 + length);
  // "acsp" at byte 36 is an ICC profile's own mark.
  return profile.length === length && profile.toString("latin1", 36, 40) === "acsp" ? profile : null;
}
