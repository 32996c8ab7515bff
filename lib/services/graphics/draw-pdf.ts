/** The first page of a PDF on white, drawn by PDFium in WebAssembly: no network, no files, and a build without scripts. */
import { drawnScale, type Opened } from "./opened";

/** PDFium's own word for a file that asks for its password (FPDF_ERR_PASSWORD). */
const locked = /password/i;

export async function openPdf(bytes: Uint8Array, mostPixels: number): Promise<Opened> {
  const { PDFiumLibrary } = await import("@hyzyla/pdfium");
  const library = await PDFiumLibrary.init();
  let document: Awaited<ReturnType<typeof library.loadDocument>>;
  try {
    document = await library.loadDocument(bytes);
  } catch (error) {
    if (locked.test(String(error))) return { is: "locked" };
    return { is: isWhole(bytes) ? "unreadable" : "cut-off" };
  }
  if (document.getPageCount() < 1) return { is: "unreadable" };
  const page = document.getPage(0);
  const { originalWidth, originalHeight } = page.getOriginalSize();
  if (!(originalWidth > 0 && originalHeight > 0)) return { is: "unreadable" };
  const scale = drawnScale(originalWidth, originalHeight, mostPixels);
  const { width, height, data } = await page.render({ scale, render: "bitmap" });
  return { is: "raw", picture: { widthPx: width, heightPx: height, rgba: data, profile: null }, isClear: false };
}

/** The mark of a file's end (ISO 32000-1, 7.5.5) within its last 1,024 bytes. */
function isWhole(bytes: Uint8Array): boolean {
  return Buffer.from(bytes.subarray(-1024)).includes("%%EOF");
}
