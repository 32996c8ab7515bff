import type { EngineCatalog } from "../../engine/assessment";
import type { Outcome } from "../../engine/units";
import type { Context } from "../context";

/** A catalogue release with the hash that names it. `engine` travels to the browser whole. */
export interface ActiveCatalog {
  readonly hash: string;
  readonly engineVersion: string;
  readonly engine: EngineCatalog;
}

/** The catalogue in force: read from content once a process, stored under its hash. Anybody may read it. */
export async function activeCatalog(ctx: Context): Promise<Outcome<ActiveCatalog>> {
  throw new Error(`activeCatalog is not built yet for ${ctx.actor.kind}`);
}

/** The catalogue that a quote or pair names, as it was. Refuses `release-unknown`. */
export async function catalogOfRelease(
  ctx: Context,
  input: { readonly hash: string },
): Promise<Outcome<ActiveCatalog>> {
  throw new Error(`catalogOfRelease is not built yet for ${ctx.actor.kind} ${typeof input}`);
}
