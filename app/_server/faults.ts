/** Faults nobody expected: written to the log under a reference that a person can read out on the phone. */
import { randomInt } from "node:crypto";
import { log } from "#lib/log";

/**
 * Logs a fault.
 * @returns the reference, such as "4821-7730"
 */
export function reportFault(error: unknown, where: string): string {
  const digits = () => String(randomInt(10_000)).padStart(4, "0");
  const reference = `${digits()}-${digits()}`;
  log("error", "a fault", { where, reference, error });
  return reference;
}

/** Logs a fault that the framework met while it drew a page, under the reference that its error page shows. */
export function reportPageFault(error: unknown, route: string): void {
  const digest = typeof error === "object" && error !== null && "digest" in error ? String(error.digest) : undefined;
  log("error", "a fault", { where: route, ...(digest === undefined ? {} : { reference: digest }), error });
}

/** What a person reads. */
export function faultWords(reference: string): string {
  return `Something went wrong on our side. Nothing you typed is lost. If it happens again, tell us the reference ${reference}.`;
}
