/** Where to after the sign-in. The type names the start of every such path. */
import * as server from "#app/_server/back-path.ts";

export function safeBackPath(back: string | undefined): "/shop" {
  return server.safeBackPath(back) as "/shop";
}
