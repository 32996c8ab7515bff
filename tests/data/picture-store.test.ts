/** Both stores of pictures do the same; the bucket's is a server of its own kind (`@20minutes/s3rver`), which checks signatures. */
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import S3rver from "@20minutes/s3rver";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type PictureSettings, parseConfig } from "#config";
import type { PictureStore } from "#data/picture-place";
import { pictureStore } from "#data/picture-store";

const name = `${"ab12".repeat(16)}-full.jpg`;
const bytes = Uint8Array.from({ length: 300_000 }, (_, at) => (at * 31) % 256);

let scratch: string;
let server: S3rver;
let bucket: PictureSettings;

beforeAll(async () => {
  scratch = mkdtempSync(path.join(tmpdir(), "pairwright-pictures-"));
  const buckets = { configureBuckets: [{ name: "skis" }], directory: path.join(scratch, "server") };
  server = new S3rver({ port: 0, address: "127.0.0.1", silent: true, ...buckets });
  const { port } = await server.run();
  // The one pair of keys that the server knows.
  const keys = { AWS_ACCESS_KEY_ID: "S3RVER", AWS_SECRET_ACCESS_KEY: "S3RVER" };
  const PAIRWRIGHT_PICTURES = `s3://skis/shop?endpoint=http://127.0.0.1:${port}`;
  bucket = parseConfig({ PAIRWRIGHT_PICTURES, ...keys }, scratch).pictures;
});

afterAll(async () => {
  await server.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe.each(["folder", "bucket"])("pictures in a %s", (kind) => {
  const store = (): PictureStore => pictureStore(kind === "bucket" ? bucket : parseConfig({}, scratch).pictures);

  it("are kept, written again, read and gone for good", async () => {
    await store().put(name, bytes);
    await store().put(name, bytes);
    expect(await store().get(name)).toEqual(bytes);
    await store().remove(name);
    await expect(store().get(name)).rejects.toThrow(kind === "bucket" ? "404 NoSuchKey" : "ENOENT");
    // What is gone may be removed again.
    await store().remove(name);
  });

  it("have no other names than their own", async () => {
    for (const wrong of [["..", "..", "etc", "passwd"].join("/"), "ab12", "ab12ab12/x", "AB12AB12.png", ""])
      await expect(async () => store().get(wrong)).rejects.toThrow("is no name of a picture");
  });
});

describe("a bucket", () => {
  it("lies in the named place, below the folder that was asked for", async () => {
    await pictureStore(bucket).put(name, bytes);
    const inside = path.join("server", "skis", "shop", "ab");
    expect(existsSync(path.join(scratch, inside))).toBe(true);
  });

  it("takes nothing that was signed with another key, and says so without it", async () => {
    if (bucket.kind !== "s3") throw new Error("the setting names no bucket");
    const store = pictureStore({ ...bucket, secretAccessKey: "larch-board-seven" });
    const fault = await store.put(name, bytes).catch((error: unknown) => String(error));
    expect(fault).toBe("Error: the storage of pictures answered PUT with 403 SignatureDoesNotMatch");
    await expect(pictureStore({ ...bucket, accessKeyId: "unknown" }).get(name)).rejects.toThrow("InvalidAccessKeyId");
  });
});
