/**
 * The log: lines of JSON on standard error, one for each thing that happened. It is read by people who run the shop's
 * machine and may be sent elsewhere, so nothing about a person goes in: no name, address, number, mail or private link.
 */
import { type Logger, pino, stdTimeFunctions } from "pino";
import { config, type LogLevel } from "#config";

/** What a line may say beside its level and time. Anything else about a request or a person is left out on purpose. */
export interface LogFacts {
  /** What was being done, in our own words. */
  readonly where: string;
  /** What a person was given to read out on the phone. */
  readonly reference?: string;
  /** Method and path, without keys of links. */
  readonly route?: string;
  /** A staff role, "guest", or null while nobody has looked. */
  readonly role?: string | null;
  readonly status?: number;
  /** Why somebody was refused, by the refusal's code. */
  readonly refusal?: string;
  readonly error?: unknown;
}

/** Writes a line. @param message without anything about a person */
export function log(level: Exclude<LogLevel, "silent">, message: string, { error, ...facts }: LogFacts): void {
  logger()[level]({ ...facts, ...(error === undefined ? {} : errorFacts(error)) }, withoutPersonalData(message));
}

let opened: Logger | undefined;

/** Opened at the first line, when the settings are known to hold. */
function logger(): Logger {
  opened ??= pino(
    {
      level: config().logLevel,
      base: null,
      timestamp: stdTimeFunctions.isoTime,
      messageKey: "message",
      formatters: { level: (label) => ({ level: label }) },
    },
    process.stderr,
  );
  return opened;
}

function errorFacts(error: unknown) {
  const fault = error instanceof Error ? error : new Error(String(error));
  return {
    name: fault.name,
    fault: messageOf(fault),
    stack: fault.stack?.split("\n").filter((line) => /^\s+at /.test(line)),
    ...(fault.cause instanceof Error ? { cause: messageOf(fault.cause) } : {}),
  };
}

/** A database client's error quotes the call, with all its values, before it says what is wrong in its last line. */
function messageOf({ name, message }: Error): string {
  const told = name.startsWith("PrismaClient") ? (message.trim().split("\n").at(-1) ?? "") : message;
  return withoutPersonalData(told);
}

const leftOut = "[left out]";

/** What may be about a person in words that we did not write ourselves. */
const personal: readonly (readonly [RegExp, string])[] = [
  // Whole rows and keys, as the database quotes them.
  [/(row contains |Key \([^)]*\)=)\([^)]*\)/g, `$1(${leftOut})`],
  // Passwords in the address of a database.
  [/(\w+:\/\/[^\s:@/]*:)[^\s@]*@/g, `$1${leftOut}@`],
  [/[^\s@"'<>()[\],;:=]+@[^\s@"'<>()[\],;:=]+\.[^\s@"'<>()[\],;:=]+/g, leftOut],
  // Keys of private links and of sessions, by their length.
  [/(?<![\w-])[\w-]{43}(?![\w-])/g, leftOut],
  // Telephone numbers: seven digits or more with the usual marks between them, and no date.
  [/(?<![\w.:-])(?!\d{4}-\d{2}-\d{2})\+?\(?\d(?:[ ().\-/]{0,2}\d){6,14}(?![\w:-])/g, leftOut],
];

/** The same text without what may be about a person. */
export function withoutPersonalData(text: string): string {
  return personal.reduce((rest, [pattern, instead]) => rest.replaceAll(pattern, instead), text);
}
