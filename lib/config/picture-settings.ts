/** Where pictures are kept, from the settings: a folder, or a bucket of a storage that speaks S3. */
import path from "node:path";
import { z } from "zod";

export type PictureSettings =
  | { readonly kind: "folder"; readonly folder: string }
  | {
      readonly kind: "s3";
      /** Bucket and first part of every name, with a final slash. */
      readonly address: string;
      readonly region: string;
      readonly accessKeyId: string;
      readonly secretAccessKey: string;
      readonly sessionToken: string | null;
    };

const form =
  "must be s3://BUCKET or s3://BUCKET/FOLDER, with ?endpoint=https://… and &region=… where they are not Amazon's";
/** The names that every such storage takes: 3 to 63 signs (Amazon S3 User Guide, "Bucket naming rules"). */
const bucketName = /^[a-z0-9][a-z0-9.-]{1,61}[a-z0-9]$/;

/** The bucket's setting as text; what it needs beside it is looked at by `pictureSettings`. */
export const pictureBucket = z.string().refine((text) => partsOf(text) !== null, form);

/** The credentials that programs for such storages share. */
export interface Credentials {
  readonly AWS_ACCESS_KEY_ID?: string | undefined;
  readonly AWS_SECRET_ACCESS_KEY?: string | undefined;
  readonly AWS_SESSION_TOKEN?: string | undefined;
  readonly AWS_REGION?: string | undefined;
}

/**
 * @param bucket as the setting says, undefined for the folder
 * @throws Error naming what is missing
 */
export function pictureSettings(bucket: string | undefined, given: Credentials, dataFolder: string): PictureSettings {
  const parts = bucket === undefined ? null : partsOf(bucket);
  if (parts === null) return { kind: "folder", folder: path.join(/*turbopackIgnore: true*/ dataFolder, "pictures") };
  const { AWS_ACCESS_KEY_ID: accessKeyId, AWS_SECRET_ACCESS_KEY: secretAccessKey } = given;
  if (accessKeyId === undefined || secretAccessKey === undefined) {
    const missing = accessKeyId === undefined ? "AWS_ACCESS_KEY_ID" : "AWS_SECRET_ACCESS_KEY";
    throw new Error(`The settings cannot be used. ${missing} is missing: PAIRWRIGHT_PICTURES=${bucket} needs it.`);
  }
  const region = parts.region ?? given.AWS_REGION ?? "us-east-1";
  const endpoint = parts.endpoint ?? `https://s3.${region}.amazonaws.com`;
  const address = `${endpoint}/${parts.name}/`;
  return { kind: "s3", address, region, accessKeyId, secretAccessKey, sessionToken: given.AWS_SESSION_TOKEN ?? null };
}

function partsOf(text: string) {
  if (!text.startsWith("s3://") || !URL.canParse(text)) return null;
  const { host, pathname, searchParams } = new URL(text);
  const endpoint = searchParams.get("endpoint")?.replace(/\/+$/, "") ?? null;
  if (!bucketName.test(host) || [...searchParams.keys()].some((key) => key !== "endpoint" && key !== "region"))
    return null;
  if (endpoint !== null && !(/^https?:\/\//.test(endpoint) && URL.canParse(endpoint))) return null;
  const name = [host, ...pathname.split("/").filter((part) => part !== "")].join("/");
  return { name, endpoint, region: searchParams.get("region") };
}
