/** Only one printed build sheet of a pair is valid, the newest; one that was never drawn voids none. A rule of the shop, no source. */
import { expect, it } from "vitest";
import { buildSheetDocument } from "#services";
import { releasedOrder } from "../support/builders/sale";
import { must, openShop, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns } from "./scenarios/released-pairs";

const db = databaseForTests();
const prints = async () =>
  (await db().traveller.findMany({ orderBy: { print: "asc" } })).map(({ print, voidedAt }) => [print, voidedAt === null]);

it("numbers every print once, two at the same moment too, and keeps the old one where drawing fails", async () => {
  const shop = fewRuns(await openShop(db()));
  await stockWood(db());
  const { pairs } = await releasedOrder(shop);
  const pairId = pairs[0]?.pairId;
  if (pairId === undefined) throw new Error("no pair");
  const desk = shop.as(shop.desk);
  const input = { pairId, paper: "A4" } as const;
  const names = (
    await Promise.all([buildSheetDocument(desk, input), buildSheetDocument(shop.as(shop.owner), input)])
  ).map((outcome) => must(outcome).fileName.match(/-(\d+)\.pdf$/)?.[1]);
  expect(names.sort()).toEqual(["1", "2"]);
  expect(await prints()).toEqual([
    [1, false],
    [2, true],
  ]);
  // Whoever asked has gone before the drawing's turn came.
  const gone = { ...desk, signal: AbortSignal.abort() };
  await expect(buildSheetDocument(gone, input)).rejects.toMatchObject({ name: "Busy" });
  expect(await prints()).toEqual([
    [1, false],
    [2, true],
  ]);
}, 120_000);
