/** Faults nobody expected: written to the log under a reference that a person can read out on the phone. */
import { randomInt } from "node:crypto";
import type { Refusal } from "#engine/units";
import { log } from "#lib/log";
import { thisRequest } from "./this-request";

/**
 * Logs a fault.
 * @returns the reference, such as "4821-7730"
 */
export function reportFault(error: unknown, where: string): string {
  return written(error, where, newReference());
}

/** Logs a fault that the framework met while it drew a page, under the reference that its error page shows. */
export function reportPageFault(error: unknown, route: string): void {
  const request = thisRequest();
  if (request !== undefined && isUnreadableBody(error)) request.isMalformed = true;
  const digest =
    typeof error === "object" && error !== null && "digest" in error ? String(error.digest) : newReference();
  written(error, route, digest);
}

/** The body of a form or of an action's arguments that is no such thing: whoever sent it did not use a page of ours. */
function isUnreadableBody(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  if (error.name === "Malformed") return true;
  return error.name === "SyntaxError"
    ? /JSON/.test(error.message)
    : /parse body as FormData|Unexpected end of form/.test(error.message);
}

/** What came is not what our pages send. */
export class Malformed extends Error {
  constructor(what: string) {
    super(`${what}: not what our pages send`);
    this.name = "Malformed";
  }
}

/** An answer that says "our side" and of which nobody has reported why. @returns its reference */
export function reportUntold(status: number, where: string): string {
  return written(undefined, where, newReference(), status);
}

function newReference(): string {
  const digits = () => String(randomInt(10_000)).padStart(4, "0");
  return `${digits()}-${digits()}`;
}

function written(error: unknown, where: string, reference: string, status?: number): string {
  const request = thisRequest();
  if (request !== undefined) request.reference = reference;
  const asked = request === undefined ? {} : { route: request.route, role: request.role };
  log("error", "a fault", { where, reference, ...asked, ...(status === undefined ? {} : { status }), error });
  return reference;
}

/** Refusals that tell of somebody at a door that is not theirs, or of guessing. */
const toldOf: ReadonlySet<string> = new Set([
  "not-allowed",
  "wrong-sign-in",
  "wrong-floor-code",
  "wrong-password",
  "wrong-first-owner-code",
  "demo-here-only",
  "not-a-floor-device",
  "code-wrong",
  "too-many-attempts",
  "budget-used",
  "budget-all-used",
  "payment-not-signed",
  "payment-foreign",
  "payment-too-late",
  "payment-replayed",
]);

/** A line for a refusal that matters to safety, without the name or address that was tried; none for any other. */
export function noteRefusal({ code }: Refusal, where: string): void {
  if (!toldOf.has(code)) return;
  const request = thisRequest();
  const asked = request === undefined ? {} : { route: request.route, role: request.role };
  log("warn", "refused", { where, refusal: code, ...asked });
}

/** What a person reads. */
export function faultWords(reference: string): string {
  return `Something went wrong on our side. Nothing you typed is lost. If it happens again, tell us the reference ${reference}.`;
}
