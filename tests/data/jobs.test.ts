import { beforeEach, describe, expect, it } from "vitest";
import { database } from "#data/client";
import { addJob, type JobQueue, jobQueue } from "#data/jobs";
import { transaction } from "#data/transaction";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
let queue: JobQueue;

beforeEach(async () => {
  const open = await database();
  await open.runScript("DELETE FROM pgboss.job");
  queue = jobQueue(open);
});

/** As if the pause after a failure were over. */
const afterThePause = async () =>
  (await database()).runScript("UPDATE pgboss.job SET start_after = now() - interval '1 second'");

describe("the queue of work that must happen", () => {
  it("holds what a committed transaction asked for, and nothing of one that was rolled back", async () => {
    await transaction(db(), (tx) => addJob(tx, "letter", "kept"));
    const undone = transaction(db(), async (tx) => {
      await addJob(tx, "letter", "undone");
      throw new Error("no");
    });
    await expect(undone).rejects.toThrow("no");
    expect((await queue.take("letter", 10)).map(({ rowId }) => rowId)).toEqual(["kept"]);
  });

  it("hands each job to one of many takers, once", async () => {
    await transaction(db(), async (tx) => {
      for (let n = 0; n < 12; n += 1) await addJob(tx, "letter", `n${n}`);
    });
    const others = await Promise.all(
      Array.from({ length: 4 }, async () => jobQueue(await database()).take("letter", 5)),
    );
    const rows = others.flat().map(({ rowId }) => rowId);
    expect(new Set(rows).size).toBe(rows.length);
    const rest = (await queue.take("letter", 20)).map(({ rowId }) => rowId);
    expect([...rows, ...rest].sort()).toEqual(Array.from({ length: 12 }, (_, n) => `n${n}`).sort());
  });

  it("brings a failed job back after a pause, eight times, and then no more", async () => {
    await transaction(db(), (tx) => addJob(tx, "letter", "stubborn"));
    for (let attempt = 0; attempt <= 8; attempt += 1) {
      const [job] = await queue.take("letter", 1);
      if (job === undefined) throw new Error(`no job at try ${attempt}`);
      expect(job.isLastTry).toBe(attempt === 8);
      await queue.failed("letter", job, "the post does not answer");
      expect(await queue.take("letter", 1)).toEqual([]);
      await afterThePause();
    }
    expect(await queue.take("letter", 1)).toEqual([]);
  });

  it("gives back what a vanished taker held", async () => {
    await transaction(db(), (tx) => addJob(tx, "letter", "left"));
    expect(await queue.take("letter", 1)).toHaveLength(1);
    await (await database()).runScript("UPDATE pgboss.job SET started_on = now() - interval '3 minutes'");
    await queue.tidy();
    await afterThePause();
    expect((await queue.take("letter", 1)).map(({ rowId }) => rowId)).toEqual(["left"]);
  });
});
