import { readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import path from "node:path";
import { SMTPServer } from "smtp-server";
import { beforeEach, describe, expect, it, onTestFinished } from "vitest";
import { systemActor } from "#auth";
import { config } from "#config";
import { database } from "#data/client";
import { type JobQueue, jobQueue } from "#data/jobs";
import { letterText } from "#data/letters";
import { seal } from "#data/sealed";
import { transaction } from "#data/transaction";
import { enqueueLetter, listWaitingLetters, type NewLetter, postLetters, sendLetterAgain } from "#services";
import { openPost, type Post } from "#services/letters/post";
import { openWorker } from "#services/worker";
import { must, openShop, shopNow, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
let queue: JobQueue;

beforeEach(async () => {
  const open = await database();
  await open.runScript("DELETE FROM pgboss.job");
  queue = jobQueue(open);
});

const letter: NewLetter = {
  id: "letter-1",
  kind: "contact-code",
  to: "robin@alder.example",
  subject: "Your code\r\nBcc: everybody@alder.example",
  text: "Dear Robin,\nyour code is 4711 – Größe.",
  about: { kind: "order", id: "order-1" },
  secret: true,
  createdAt: shopNow,
};

const put = (what: NewLetter) => transaction(db(), (tx) => enqueueLetter(tx, what));
const work = (shop: TestShop, post: Post) => postLetters(shop.as(systemActor("the post")), queue, post);
const rows = () => db().letter.findMany({ select: { id: true, state: true, body: true, tries: true, problem: true } });
const stored = async () => (await rows()).map((row) => ({ ...row, body: letterText(row) }));
const afterThePause = async () =>
  (await database()).runScript("UPDATE pgboss.job SET start_after = now() - interval '1 second'");
const fails: Post = () => Promise.reject(new Error("connect ECONNREFUSED"));

/** A mail server of its own kind, which takes everything. */
async function mailServer(): Promise<{ readonly url: string; readonly received: string[] }> {
  const received: string[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    onData(stream, session, done) {
      let text = session.envelope.rcptTo.map(({ address }) => `TO ${address}\n`).join("");
      stream.on("data", (chunk: Buffer) => {
        text += chunk.toString();
      });
      stream.on("end", () => {
        received.push(text);
        done();
      });
    },
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => new Promise<void>((resolve) => server.close(() => resolve())));
  const address = server.server.address();
  if (address === null || typeof address === "string") throw new Error("the server has no port");
  return { url: `smtp://127.0.0.1:${address.port}`, received };
}

describe("letters under way", () => {
  it("go to a mail server once, to nobody but their recipient, and forget their secret", async () => {
    const shop = await openShop(db());
    const { url, received } = await mailServer();
    const post = openPost({ kind: "smtp", url, from: "shop@thistle-yard.example" });
    await put(letter);
    expect(await stored()).toMatchObject([{ state: "waiting", body: letter.text }]);
    await work(shop, post);
    await work(shop, post);
    expect(received).toHaveLength(1);
    const [mail = ""] = received;
    expect(mail).toContain("From: shop@thistle-yard.example");
    expect(mail.match(/^TO /gm)).toHaveLength(1);
    expect(mail).not.toMatch(/^Bcc:/m);
    expect(mail).toContain("Message-ID: <letter-1@thistle-yard.example>");
    expect(mail).toContain("your code is 4711");
    expect(await stored()).toMatchObject([{ state: "sent", body: null, tries: 1 }]);
    const events = await db().event.findMany({ where: { subjectId: "order-1" } });
    expect(events.map(({ kind }) => kind)).toEqual(["letter-sent"]);
  });

  it("leave this machine by TLS or not at all", async () => {
    const shop = await openShop(db());
    const { url, received } = await mailServer();
    // The same server by a name that is not this machine's own, as far as the address says.
    const post = openPost({
      kind: "smtp",
      url: url.replace("127.0.0.1", "0.0.0.0"),
      from: "shop@thistle-yard.example",
    });
    await put(letter);
    await work(shop, post);
    expect(received).toEqual([]);
    expect(await stored()).toMatchObject([{ state: "waiting", body: letter.text, tries: 1 }]);
  });

  it("go into a folder for nobody else to read when there is no mail server", async () => {
    const shop = await openShop(db());
    const folder = path.join(config().dataFolder, "letters");
    rmSync(folder, { recursive: true, force: true });
    await put({ ...letter, secret: false });
    const worker = await openWorker();
    await worker.postLetters(shop.as(systemActor("the post")));
    await worker.tidy();
    const [name, ...others] = readdirSync(folder);
    expect(others).toEqual([]);
    expect(name).toMatch(/^2026-11-10T170000-letter-1\.eml$/);
    const file = path.join(folder, name ?? "");
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(file, "utf8")).toContain("Subject: Your code Bcc: everybody@alder.example");
    expect(await stored()).toMatchObject([{ state: "sent", body: letter.text }]);
  });

  it("are sealed in their table, each for its own row, and read as they were stored before", async () => {
    const shop = await openShop(db());
    await put({ ...letter, secret: false });
    await put({ ...letter, secret: false, id: "letter-2", text: "Another one." });
    const [first = "", second = ""] = (await rows()).map(({ body }) => body ?? "");
    expect(JSON.stringify(await db().letter.findMany())).not.toMatch(/4711|Another/);
    expect(new Set([first, second, seal(letter.text, "letter letter-1")]).size).toBe(3);
    // In another's row, or changed, it opens no more: a person reads why.
    await db().letter.update({ where: { id: "letter-1" }, data: { body: second } });
    await db().letter.update({ where: { id: "letter-2" }, data: { body: "As it was stored before." } });
    const sent: string[] = [];
    await work(shop, async ({ text }) => void sent.push(text));
    expect(sent).toEqual(["As it was stored before."]);
    expect(must(await listWaitingLetters(shop.as(shop.desk)))).toMatchObject([
      { letterId: "letter-1", problem: expect.stringContaining("was sealed with another key") },
    ]);
  });

  it("leave the day's backup to one of many instances", async () => {
    const shop = await openShop(db());
    const clock = shop.as(systemActor("the clock"));
    const workers = await Promise.all([openWorker(), openWorker(), openWorker()]);
    const claimed = await Promise.all(workers.map((worker) => worker.claimBackup(clock, "2026-11-10")));
    expect(claimed.filter(Boolean)).toHaveLength(1);
    expect(await workers[0].claimBackup(clock, "2026-11-11")).toBe(true);
  });

  it("are tried again, given up after two hours, shown with the reason, and sent again by a person", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    await put({ ...letter, secret: false });
    await work(shop, fails);
    expect(must(await listWaitingLetters(desk))).toMatchObject([
      { state: "waiting", tries: 1, problem: "connect ECONNREFUSED", canBeSentAgain: false },
    ]);
    for (let n = 2; n <= 9; n += 1) {
      await afterThePause();
      expect(await work(shop, fails)).toBe(1);
    }
    expect(must(await listWaitingLetters(desk))).toMatchObject([{ state: "dead", tries: 9, canBeSentAgain: true }]);
    const sent: string[] = [];
    must(await sendLetterAgain(desk, { letterId: "letter-1" }));
    await work(shop, async ({ id }) => void sent.push(id));
    expect(sent).toEqual(["letter-1"]);
    expect(must(await listWaitingLetters(desk))).toEqual([]);
    expect(await sendLetterAgain(desk, { letterId: "letter-1" })).toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    expect(await sendLetterAgain(shop.as(shop.maker), { letterId: "letter-1" })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
  });

  it("with a secret cannot be sent again once given up", async () => {
    const shop = await openShop(db());
    await put(letter);
    for (let n = 1; n <= 9; n += 1) {
      await work(shop, fails);
      await afterThePause();
    }
    expect(await stored()).toMatchObject([{ state: "dead", body: null }]);
    expect(await sendLetterAgain(shop.as(shop.desk), { letterId: "letter-1" })).toMatchObject({
      refusal: { code: "letter-forgotten" },
    });
  });

  it("refuse an address that is none", async () => {
    await expect(put({ ...letter, to: "303 555 0101" })).rejects.toThrow("no mail address");
    expect(await stored()).toEqual([]);
  });
});
