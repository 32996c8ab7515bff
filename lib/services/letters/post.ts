/** What carries a letter out of the house: a mail server, or a folder of .eml files. */
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import { createTransport, type SendMailOptions } from "nodemailer";
import { isLoopback } from "#auth";
import type { MailSettings } from "#config";

export interface PostedLetter {
  readonly id: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly createdAt: Date;
}

/** Resolves when the letter has been taken over: by the mail server, or by the disk. @throws Error when it has not */
export type Post = (letter: PostedLetter) => Promise<void>;

const patience = { connectionTimeout: 10_000, greetingTimeout: 10_000, socketTimeout: 30_000 } as const;
const trusting = { disableFileAccess: true, disableUrlAccess: true } as const;

export function openPost(settings: MailSettings): Post {
  return settings.kind === "smtp" ? bySmtp(settings) : intoFolder(settings);
}

function bySmtp({ url, from }: Extract<MailSettings, { kind: "smtp" }>): Post {
  const server = new URL(url);
  const transport = createTransport({
    ...patience,
    host: server.hostname,
    port: Number(server.port) || (server.protocol === "smtps:" ? 465 : 587),
    secure: server.protocol === "smtps:",
    // A letter holds a name and an address: off this machine it goes by TLS or not at all.
    requireTLS: !isLoopback(server.hostname),
    ...(server.username === ""
      ? {}
      : { auth: { user: decodeURIComponent(server.username), pass: decodeURIComponent(server.password) } }),
  });
  return async (letter) => {
    const { rejected } = await transport.sendMail(mailOf(letter, from));
    if (rejected.length > 0) throw new Error("the mail server refused the recipient");
  };
}

function intoFolder({ folder, from }: Extract<MailSettings, { kind: "folder" }>): Post {
  const transport = createTransport({ streamTransport: true, buffer: true, newline: "windows" });
  return async (letter) => {
    const { message } = await transport.sendMail(mailOf(letter, from));
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const name = `${letter.createdAt.toISOString().slice(0, 19).replaceAll(":", "")}-${letter.id}.eml`;
    if (!Buffer.isBuffer(message)) throw new TypeError("the letter was not made in memory");
    writeWhole(path.join(folder, name), message);
  };
}

/** The same letter tried twice has one number, by which the recipient's program knows it again. */
function mailOf({ id, to, subject, text, createdAt }: PostedLetter, from: string): SendMailOptions {
  const host = from.slice(from.lastIndexOf("@") + 1);
  return {
    ...trusting,
    from,
    to: { name: "", address: to },
    subject,
    text,
    date: createdAt,
    messageId: `<${id}@${host}>`,
  };
}

/** There whole and on the disk, or not at all; for nobody else to read. */
function writeWhole(file: string, bytes: Uint8Array): void {
  const draft = `${file}.new`;
  const descriptor = openSync(draft, "w", 0o600);
  try {
    writeFileSync(descriptor, bytes);
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
  renameSync(draft, file);
}
