/** Faults nobody expected: written to the log under a reference that a person can read out on the phone. */
import { randomInt } from "node:crypto";

/**
 * Logs a fault as one line of JSON on standard error.
 * @returns the reference, such as "4821-7730"
 */
export function reportFault(error: unknown, where: string): string {
  const digits = () => String(randomInt(10_000)).padStart(4, "0");
  const reference = `${digits()}-${digits()}`;
  const fault = error instanceof Error ? error : new Error(String(error));
  const line = {
    level: "error",
    time: new Date().toISOString(),
    reference,
    where,
    name: fault.name,
    message: fault.message,
    stack: fault.stack,
    cause: fault.cause instanceof Error ? fault.cause.message : undefined,
  };
  process.stderr.write(`${JSON.stringify(line)}\n`);
  return reference;
}

/** What a person reads. */
export function faultWords(reference: string): string {
  return `Something went wrong on our side. Nothing you typed is lost. If it happens again, tell us the reference ${reference}.`;
}
