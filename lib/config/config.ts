/**
 * Everything the surroundings may decide, parsed once. The only place that reads process.env.
 */
import path from "node:path";
import { z } from "zod";
import { type PictureSettings, pictureBucket, pictureSettings } from "./picture-settings";

/** Where the records are kept: the embedded database in a folder, or a PostgreSQL server. */
export type DatabaseSettings =
  | { readonly kind: "embedded"; readonly folder: string }
  | { readonly kind: "memory" }
  | { readonly kind: "postgres"; readonly url: string; readonly poolSize: number };

/** How letters leave the shop: to a mail server, or as .eml files into a folder. */
export type MailSettings = (
  | { readonly kind: "smtp"; readonly url: string }
  | { readonly kind: "folder"; readonly folder: string }
) & { readonly from: string };

const logLevels = ["fatal", "error", "warn", "info", "debug", "silent"] as const;
export type LogLevel = (typeof logLevels)[number];

export interface Config {
  /** Everything the shop must back up lies in here (the database folder, uploaded pictures). Absolute. */
  readonly dataFolder: string;
  readonly database: DatabaseSettings;
  readonly host: string;
  readonly port: number;
  /** The address people type, without a final slash; decides links in mails and documents, and secure cookies. */
  readonly publicOrigin: string;
  /** Cookies are marked Secure when the public address is https. */
  readonly secureCookies: boolean;
  /** How many proxies of our own stand in front; 0 means a forwarded address is never believed. */
  readonly trustedProxies: number;
  /** The least that is written to the log. */
  readonly logLevel: LogLevel;
  /** Where the demo's published passwords count: at the machine itself, or from anywhere because somebody asked for it. */
  readonly demoSignIns: "here" | "anywhere";
  /** Whether the demo may show what exists for it alone; a shop's own data never becomes the demo by it. */
  readonly demo: boolean;
  /** What digests and signatures are made with; null: a key is made beside the data. Machines that act as one share it. */
  readonly secret: string | null;
  /** What a payment service signs its messages with; null: a key made from the secret, for the service of the demo. */
  readonly paymentSecret: string | null;
  readonly mail: MailSettings;
  /** When a backup is made by itself every day, "HH:MM" in UTC; null for never. */
  readonly backupAt: string | null;
  /** How many of those are kept. */
  readonly backupsKept: number;
  readonly pictures: PictureSettings;
  /** The most pixels a picture may have. */
  readonly mostPixels: number;
}

/** Settings whose value stands in no message. */
const notShown: ReadonlySet<string> = new Set([
  "DATABASE_URL",
  "PAIRWRIGHT_SMTP",
  "PAIRWRIGHT_SECRET",
  "PAIRWRIGHT_PAYMENT_SECRET",
  "AWS_ACCESS_KEY_ID",
  "AWS_SECRET_ACCESS_KEY",
  "AWS_SESSION_TOKEN",
]);

const blankAsMissing = (value: unknown) => (value === "" ? undefined : value);
const optional = <T extends z.ZodType>(schema: T) => z.preprocess(blankAsMissing, schema.optional());

const environmentSchema = z.object({
  PAIRWRIGHT_DATA: optional(z.string()),
  DATABASE_URL: optional(z.string().regex(/^postgres(ql)?:\/\//, "must start with postgres:// or postgresql://")),
  PAIRWRIGHT_POOL: optional(z.coerce.number().int().min(1).max(200)),
  HOST: optional(z.string()),
  PORT: optional(z.coerce.number().int().min(1).max(65_535)),
  PAIRWRIGHT_ORIGIN: optional(z.url({ protocol: /^https?$/ })),
  PAIRWRIGHT_TRUSTED_PROXIES: optional(z.coerce.number().int().min(0).max(10)),
  PAIRWRIGHT_LOG: optional(z.enum(logLevels)),
  PAIRWRIGHT_DEMO_SIGN_INS: optional(z.enum(["here", "anywhere"])),
  PAIRWRIGHT_DEMO: optional(z.string()),
  PAIRWRIGHT_SECRET: optional(z.string().min(32, "must be at least 32 characters long")),
  PAIRWRIGHT_PAYMENT_SECRET: optional(z.string().min(32, "must be at least 32 characters long")),
  PAIRWRIGHT_SMTP: optional(z.url({ protocol: /^smtps?$/ })),
  PAIRWRIGHT_MAIL_FROM: optional(z.email()),
  PAIRWRIGHT_BACKUP_AT: optional(z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "must be a time of day such as 02:30")),
  PAIRWRIGHT_BACKUPS_KEPT: optional(z.coerce.number().int().min(1).max(1000)),
  PAIRWRIGHT_PICTURES: optional(pictureBucket),
  AWS_ACCESS_KEY_ID: optional(z.string()),
  AWS_SECRET_ACCESS_KEY: optional(z.string()),
  AWS_SESSION_TOKEN: optional(z.string()),
  AWS_REGION: optional(z.string()),
  PAIRWRIGHT_MAX_PIXELS: optional(z.coerce.number().int().min(1_000_000).max(400_000_000)),
});

/**
 * Reads a set of environment variables.
 * @param root the folder relative paths start from
 * @throws Error naming the variable, its value and what is allowed
 */
export function parseConfig(environment: Readonly<Record<string, string | undefined>>, root: string): Config {
  const parsed = environmentSchema.safeParse(environment);
  if (!parsed.success) {
    const lines = parsed.error.issues.map((issue) => {
      const name = String(issue.path[0]);
      return `${name}=${notShown.has(name) ? "(not shown)" : environment[name]}: ${issue.message}`;
    });
    throw new Error(`The settings cannot be used. ${lines.join("; ")}`);
  }
  const values = parsed.data;
  const dataFolder = path.resolve(/*turbopackIgnore: true*/ root, values.PAIRWRIGHT_DATA ?? "data");
  const host = values.HOST ?? "127.0.0.1";
  const port = values.PORT ?? 3000;
  const publicOrigin = (values.PAIRWRIGHT_ORIGIN ?? `http://${readableHost(host)}:${port}`).replace(/\/+$/, "");
  return {
    dataFolder,
    database: values.DATABASE_URL
      ? { kind: "postgres", url: values.DATABASE_URL, poolSize: values.PAIRWRIGHT_POOL ?? 10 }
      : { kind: "embedded", folder: path.join(/*turbopackIgnore: true*/ dataFolder, "database") },
    host,
    port,
    publicOrigin,
    secureCookies: publicOrigin.startsWith("https:"),
    trustedProxies: values.PAIRWRIGHT_TRUSTED_PROXIES ?? 0,
    logLevel: values.PAIRWRIGHT_LOG ?? "info",
    demoSignIns: values.PAIRWRIGHT_DEMO_SIGN_INS ?? "here",
    demo: values.PAIRWRIGHT_DEMO !== "off",
    secret: values.PAIRWRIGHT_SECRET ?? null,
    paymentSecret: values.PAIRWRIGHT_PAYMENT_SECRET ?? null,
    backupAt: values.PAIRWRIGHT_BACKUP_AT ?? null,
    backupsKept: values.PAIRWRIGHT_BACKUPS_KEPT ?? 14,
    pictures: pictureSettings(values.PAIRWRIGHT_PICTURES, values, dataFolder),
    mostPixels: values.PAIRWRIGHT_MAX_PIXELS ?? 120_000_000,
    mail: {
      ...(values.PAIRWRIGHT_SMTP
        ? { kind: "smtp", url: values.PAIRWRIGHT_SMTP }
        : { kind: "folder", folder: path.join(/*turbopackIgnore: true*/ dataFolder, "letters") }),
      from: values.PAIRWRIGHT_MAIL_FROM ?? `shop@${new URL(publicOrigin).hostname}`,
    },
  };
}

function readableHost(host: string): string {
  if (host === "0.0.0.0" || host === "::" || host === "127.0.0.1") return "localhost";
  return host.includes(":") ? `[${host}]` : host;
}

let current: Config | undefined;

/** The settings of this process, read from its environment on first use. */
export function config(): Config {
  current ??= parseConfig(process.env, process.cwd());
  return current;
}

/** True while Next builds pages: nothing may open the database then. */
export function isBuilding(): boolean {
  return process.env.NEXT_PHASE === "phase-production-build";
}

/** True in the development server. */
export function isDevelopment(): boolean {
  return process.env.NODE_ENV === "development";
}
