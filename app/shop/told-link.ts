/**
 * A private link is told once. Between the action that made it and the page that shows it, it travels in a cookie that
 * scripts cannot read and that is gone after a quarter of an hour.
 */
import "server-only";
import { keepCookie, readCookie } from "#app/_server/cookies.ts";
import { config } from "#config";

const name = "told-link";
const seconds = 15 * 60;

export type LinkKind = "sheet" | "answers" | "quote" | "club" | "order" | "wall";

/** Only in an action. */
export async function tellLink(kind: LinkKind, id: string, token: string): Promise<void> {
  await keepCookie(name, `${kind}.${id}.${token}`, { maxAge: seconds });
}

const pages: Readonly<Record<LinkKind, string>> = {
  sheet: "sheet",
  answers: "answers",
  quote: "quote",
  club: "club",
  order: "pair",
  wall: "wall",
};

/** The link of this very subject when it was made a moment ago, else null. */
export async function toldLink(
  kind: LinkKind,
  id: string,
): Promise<{ readonly token: string; readonly url: string } | null> {
  const [toldKind, toldId, token] = ((await readCookie(name)) ?? "").split(".");
  if (toldKind !== kind || toldId !== id || !token) return null;
  return { token, url: `${config().publicOrigin}/${pages[kind]}/${token}` };
}
