/** The part of libheif that one still picture needs. */
declare module "libheif-js/wasm-bundle.js" {
  interface HeifAnswer {
    readonly code?: object;
    readonly message?: string;
  }
  interface HeifChannel {
    readonly id: object;
    readonly width: number;
    readonly height: number;
    /** Bytes of a row. */
    readonly stride: number;
    readonly data: Uint8Array;
  }
  interface Heif {
    heif_context_alloc(): object | null;
    heif_context_read_from_memory(context: object, bytes: Uint8Array): HeifAnswer;
    heif_js_context_get_primary_image_handle(context: object): HeifAnswer;
    heif_image_handle_get_width(handle: HeifAnswer): number;
    heif_image_handle_get_height(handle: HeifAnswer): number;
    heif_image_handle_has_alpha_channel(handle: HeifAnswer): number;
    heif_js_decode_image2(
      handle: HeifAnswer,
      colours: object,
      chroma: object,
    ): HeifAnswer & { readonly channels?: readonly HeifChannel[] };
    readonly heif_error_code: { readonly heif_error_Ok: object };
    readonly heif_colorspace: { readonly heif_colorspace_RGB: object };
    readonly heif_chroma: { readonly heif_chroma_interleaved_RGBA: object };
  }
  const heif: Heif;
  export default heif;
}
