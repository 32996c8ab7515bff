// The few settings the scripts need before anything is built. The product parses all of them in lib/config.
import path from "node:path";
import { root } from "./lib.mjs";

export function settings(environment = process.env) {
  const host = environment.HOST || "127.0.0.1";
  const shown = ["0.0.0.0", "::", "127.0.0.1"].includes(host) ? "localhost" : host.includes(":") ? `[${host}]` : host;
  const port = Number(environment.PORT || 3000);
  return {
    host,
    port,
    address: (environment.PAIRWRIGHT_ORIGIN || `http://${shown}:${port}`).replace(/\/+$/, ""),
    dataFolder: path.resolve(root, environment.PAIRWRIGHT_DATA || "data"),
    databaseUrl: environment.DATABASE_URL || null,
    trustedProxies: Number(environment.PAIRWRIGHT_TRUSTED_PROXIES || 0),
    pictures: environment.PAIRWRIGHT_PICTURES || null,
    wantsDemo: environment.PAIRWRIGHT_DEMO !== "off",
  };
}

/** Where the data is, in words, without a password. */
export function whereDataIs({ databaseUrl, dataFolder, pictures }) {
  if (databaseUrl === null) return dataFolder;
  const url = new URL(databaseUrl);
  return `PostgreSQL at ${url.searchParams.get("host") ?? url.host}${url.pathname}; uploaded pictures in ${pictures ?? dataFolder}`;
}
