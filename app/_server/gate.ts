/** What is refused before anything looks at it: requests that no page of ours would send. */
import words from "#content/copy/start.json";

export interface Asked {
  readonly method?: string | undefined;
  readonly url?: string | undefined;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
}

export interface Refused {
  readonly status: 400 | 403 | 405 | 503;
  readonly words: string;
  /** What the answer says beside. */
  readonly headers?: Readonly<Record<string, string>>;
}

const methods: ReadonlySet<string> = new Set(["GET", "HEAD", "POST", "OPTIONS"]);
const w = words.gate;

/**
 * A refusal, or null.
 * @param ownHosts by which names this server is called, with their ports
 */
export function refusalOf(
  { method = "GET", url = "/", headers }: Asked,
  ownHosts: ReadonlySet<string>,
): Refused | null {
  if (!methods.has(method)) return { status: 405, words: w.method, headers: { allow: [...methods].join(", ") } };
  if (!isReadable(url)) return { status: 400, words: w.address };
  const { origin } = headers;
  if (method === "POST" && typeof origin === "string" && !isOurs(origin, ownHosts)) {
    return { status: 403, words: w.origin };
  }
  return null;
}

/** Percent escapes make text, and no sign that ends a text in the database. */
function isReadable(url: string): boolean {
  try {
    return !decodeURIComponent(url.replaceAll("+", " ")).includes("\0");
  } catch {
    return false;
  }
}

function isOurs(origin: string, ownHosts: ReadonlySet<string>): boolean {
  try {
    return ownHosts.has(new URL(origin).host);
  } catch {
    return false;
  }
}
