/** Pictures in a bucket of a storage that speaks S3: each is one request, signed with all it carries. */
import { createHash } from "node:crypto";
import { AwsClient } from "aws4fetch";
import type { PictureSettings } from "#config";
import { keyOf, type PictureStore } from "./picture-place";

const patienceMs = 30_000;

/** Names are those of the folder, so that a folder is moved by copying it. */
export function bucketStore(settings: Extract<PictureSettings, { kind: "s3" }>): PictureStore {
  const { accessKeyId, secretAccessKey, sessionToken, region, address } = settings;
  const signing = { accessKeyId, secretAccessKey, region, service: "s3", retries: 2, initRetryMs: 200 };
  const client = new AwsClient({ ...signing, ...(sessionToken === null ? {} : { sessionToken }) });
  const ask = async (method: "PUT" | "GET" | "DELETE", name: string, bytes?: Uint8Array): Promise<Response> => {
    const answer = await client.fetch(`${address}${keyOf(name)}`, {
      method,
      headers: {
        "x-amz-content-sha256": createHash("sha256")
          .update(bytes ?? "")
          .digest("hex"),
      },
      signal: AbortSignal.timeout(patienceMs),
      cache: "no-store",
      ...(bytes === undefined ? {} : { body: new Uint8Array(bytes) }),
    });
    if (answer.ok) return answer;
    const code = /<Code>(\w+)<\/Code>/.exec(await answer.text())?.[1];
    throw new Error(`the storage of pictures answered ${method} with ${answer.status}${code ? ` ${code}` : ""}`);
  };
  return {
    put: async (name, bytes) => {
      await (await ask("PUT", name, bytes)).arrayBuffer();
    },
    get: async (name) => new Uint8Array(await (await ask("GET", name)).arrayBuffer()),
    remove: async (name) => {
      await (await ask("DELETE", name)).arrayBuffer();
    },
  };
}
