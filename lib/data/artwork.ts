import type { RightsBasis } from "#schemas/stored/index";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { pictureStore } from "./picture-store";
import { artworkColumns } from "./records/tables";

const readArtwork = (row: Prisma.ArtworkGetPayload<object>) => readRow("artworks", artworkColumns, row, ({ id }) => id);

export type ArtworkRecord = ReturnType<typeof readArtwork>;

export interface NewArtwork {
  readonly id: string;
  readonly sheetId: string;
  readonly fileName: string;
  readonly sha256: string;
  readonly sourceType: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly uploadedAt: Date;
}

export interface ArtworkImageBytes {
  readonly size: "full" | "preview";
  readonly contentType: string;
  readonly bytes: Uint8Array;
}

/** A picture that is kept already, by its name there. */
export interface KeptImage extends Omit<ArtworkImageBytes, "bytes"> {
  readonly storedAs: string;
}

/** Keeps the files of a picture, before any row names them. */
export async function keepImages(sha256: string, images: readonly ArtworkImageBytes[]): Promise<readonly KeptImage[]> {
  const kept: KeptImage[] = [];
  for (const { size, contentType, bytes } of images) {
    const storedAs = `${sha256}-${size}.${contentType === "image/png" ? "png" : "jpg"}`;
    await pictureStore().put(storedAs, bytes);
    kept.push({ size, contentType, storedAs });
  }
  return kept;
}

export async function insertArtwork(tx: Tx, artwork: NewArtwork, images: readonly KeptImage[]): Promise<void> {
  await tx.artwork.create({ data: artwork });
  await tx.artworkImage.createMany({ data: images.map((image) => ({ ...image, artworkId: artwork.id })) });
}

/** The same picture again for another sheet, its rights statement with it. */
export async function copyArtwork(
  tx: Tx,
  id: string,
  copy: { readonly id: string; readonly sheetId: string },
): Promise<void> {
  const { images, rights, ...original } = await tx.artwork.findUniqueOrThrow({
    where: { id },
    include: { images: true },
  });
  await tx.artwork.create({ data: { ...original, ...copy, ...(rights === null ? {} : { rights: asJson(rights) }) } });
  await tx.artworkImage.createMany({ data: images.map((image) => ({ ...image, artworkId: copy.id })) });
}

export async function artworkById(client: Tx, id: string): Promise<ArtworkRecord | null> {
  const row = await client.artwork.findUnique({ where: { id } });
  return row === null ? null : readArtwork(row);
}

export async function artworksOfSheet(client: Tx, sheetId: string): Promise<readonly ArtworkRecord[]> {
  const rows = await client.artwork.findMany({ where: { sheetId }, orderBy: [{ uploadedAt: "asc" }, { id: "asc" }] });
  return readableRows(rows, readArtwork);
}

export async function artworkImage(
  client: Tx,
  artworkId: string,
  size: "full" | "preview",
): Promise<ArtworkImageBytes | null> {
  const row = await client.artworkImage.findUnique({ where: { artworkId_size: { artworkId, size } } });
  if (row === null) return null;
  const bytes = await bytesOfImage(row);
  return bytes === null ? null : { size, contentType: row.contentType, bytes };
}

/** The same for a row that was read already. */
export async function bytesOfImage(row: { readonly storedAs: string | null; readonly bytes: Uint8Array | null }) {
  return row.storedAs === null ? row.bytes : await pictureStore().get(row.storedAs);
}

/** Deletes the files of pictures that no row names any more: another sheet may hold the same picture. */
export async function dropPictures(client: Tx, names: readonly string[]): Promise<void> {
  for (const storedAs of new Set(names))
    if ((await client.artworkImage.count({ where: { storedAs } })) === 0) await pictureStore().remove(storedAs);
}

export async function setRights(tx: Tx, id: string, rights: RightsBasis, now: Date): Promise<void> {
  await tx.artwork.update({ where: { id }, data: { rights: asJson(rights), rightsAt: now } });
}

/** What else opens a picture: the quotes made of its sheet and the orders that followed. */
export async function subjectsOfSheet(
  client: Tx,
  sheetId: string,
): Promise<readonly { readonly kind: "quote" | "order"; readonly id: string }[]> {
  const quotes = await client.quote.findMany({
    where: { sheetId },
    select: { id: true, order: { select: { id: true } } },
  });
  return quotes.flatMap((quote) => [
    { kind: "quote" as const, id: quote.id },
    ...(quote.order === null ? [] : [{ kind: "order" as const, id: quote.order.id }]),
  ]);
}
