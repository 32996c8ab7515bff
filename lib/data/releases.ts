import type { Tx } from "./client";
import { asJson } from "./json";

export interface ReleaseRecord {
  readonly hash: string;
  readonly engineVersion: string;
  readonly catalogue: unknown;
}

/** Stores a release the first time its hash is seen; a stored one is never changed. */
export async function storeRelease(client: Tx, release: ReleaseRecord, now: Date): Promise<void> {
  await client.catalogueRelease.createMany({
    data: [
      {
        hash: release.hash,
        engineVersion: release.engineVersion,
        catalogue: asJson(release.catalogue),
        storedAt: now,
      },
    ],
    skipDuplicates: true,
  });
}

export async function releaseByHash(client: Tx, hash: string): Promise<ReleaseRecord | null> {
  return client.catalogueRelease.findUnique({ where: { hash } });
}

export async function hasRelease(client: Tx, hash: string): Promise<boolean> {
  return (await client.catalogueRelease.count({ where: { hash } })) > 0;
}
