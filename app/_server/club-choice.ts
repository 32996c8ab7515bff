/**
 * Which pairs of a club's offer are ticked: they stand in the address, `?pairs=ID,ID`, and the page shows their price and day.
 * What else was typed into the form travels beside it, for a quarter of an hour, in a cookie of that page alone.
 */
import { redirect } from "next/navigation";
import "server-only";
import { z } from "zod";
import refusalWords from "#content/copy/refusals.json";
import { wordsFor } from "#schemas";
import { type ClubId, type ClubView, type Context, readClub } from "#services";
import { dropCookie, keepCookie, readCookie } from "./cookies";
import type { FormState } from "./form-state";

const cookie = "club-typed";
const seconds = 15 * 60;
/** Browsers drop a cookie of more than 4096 bytes as a whole. */
const mostCharacters = 400;
const typedSchema = z.record(z.string(), z.string());

/** As the address has it. */
export interface ClubQuery {
  readonly pairs?: string | readonly string[];
  /** A yes was refused because other pairs than the ticked had been priced. */
  readonly changed?: string;
}

export interface ChosenClub {
  readonly club: ClubView;
  /** What the form of the offer starts with; absent when nothing was asked. */
  readonly start?: FormState;
}

/** Only in an action: on to the page with price and day of what is ticked. Nothing typed is lost. */
export async function showTicked(page: string, values: FormState["values"], refusal?: "changed"): Promise<never> {
  const { quoteIds = "", ...others } = values;
  const typed = Object.entries(others).flatMap(([name, text]) =>
    ["token", "clubId", "priced", "ask"].includes(name) ? [] : [[name, text.slice(0, mostCharacters)]],
  );
  await keepCookie(cookie, JSON.stringify(Object.fromEntries(typed)), { path: page, maxAge: seconds });
  redirect(`${page}?${new URLSearchParams({ pairs: quoteIds, ...(refusal ? { [refusal]: "yes" } : {}) })}`);
}

/** Only in an action: what was typed is done with. */
export async function forgetTyped(page: string): Promise<void> {
  await dropCookie(cookie, page);
}

/** The club with price and day of what is asked for, else of all that is open. Null when there is no such club. */
export async function readChosenClub(ctx: Context, clubId: ClubId, query: ClubQuery): Promise<ChosenClub | null> {
  const all = () => readClub(ctx, { clubId });
  if (query.pairs === undefined) {
    const read = await all();
    return read.ok ? { club: read.value } : null;
  }
  const quoteIds = [query.pairs].flat().flatMap((ids) => ids.split(",").filter((id) => id !== ""));
  const asked = await readClub(ctx, { clubId, quoteIds });
  const read = asked.ok ? asked : await all();
  if (!read.ok) return null;
  const ticked = read.value.members.flatMap(({ quote }) =>
    quote?.state === "open" && quoteIds.includes(quote.quoteId) ? [quote.quoteId] : [],
  );
  const values = { ...(await typedBefore()), quoteIds: ticked.join(",") };
  const refusals: FormState["refusals"] = !asked.ok
    ? { quoteIds: wordsFor(asked.refusal, refusalWords) }
    : query.changed === undefined
      ? {}
      : { "": wordsFor({ code: "other-pairs-priced" }, refusalWords) };
  return { club: read.value, start: { status: "refused", values, refusals } };
}

async function typedBefore(): Promise<FormState["values"]> {
  try {
    const typed = typedSchema.safeParse(JSON.parse((await readCookie(cookie, "/club")) ?? "{}"));
    return typed.success ? typed.data : {};
  } catch {
    return {};
  }
}
