/** A process for one picture: what decoding takes of memory is given back with its end, and a picture that ends it ends nothing else. */
import { reencode, type ToReencode } from "./reencode";

export type PictureAnswer = Awaited<ReturnType<typeof reencode>> | { readonly is: "fault"; readonly message: string };

process.once("message", (asked: ToReencode) => {
  reencode(asked)
    .catch((error: unknown): PictureAnswer => ({ is: "fault", message: String(error) }))
    .then((answer) => process.send?.(answer, () => process.disconnect()));
});
