/**
 * The command line: `pairwright VERB < input.json > output.json`. Exit 0 with the result, 1 with {"refusal": …},
 * 2 with {"invalid": [{path, message}]}. Nothing but JSON goes to standard output.
 */
import { readFileSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { z } from "zod";
import { isoDate } from "#engine/units";
import { helpText } from "./help";
import { invalidInputs } from "./invalid";
import type { Verb, VerbFlags } from "./verb";
import { loadVerb, verbNames } from "./verbs";

interface Arguments {
  readonly verb: string | undefined;
  readonly wantsHelp: boolean;
  readonly wantsSchema: boolean;
  readonly files: Readonly<Record<string, string>>;
}

function readArguments(words: readonly string[]): Arguments {
  const files: Record<string, string> = {};
  let verb: string | undefined;
  let wantsHelp = false;
  let wantsSchema = false;
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index] ?? "";
    if (word === "--help" || word === "-h") wantsHelp = true;
    else if (word === "--schema") wantsSchema = true;
    else if (word.startsWith("--")) {
      index += 1;
      files[word.slice(2)] = words[index] ?? "";
    } else if (verb === undefined) verb = word;
    else return { verb: `${verb} ${word}`, wantsHelp, wantsSchema, files };
  }
  return { verb, wantsHelp, wantsSchema, files };
}

function print(value: unknown): void {
  process.stdout.write(`${JSON.stringify(value)}\n`);
}

function invalid(path: string, message: string): number {
  print({ invalid: [{ path, message }] });
  return 2;
}

function readInput():
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly message: string } {
  const text = readFileSync(0, "utf8");
  if (text.trim() === "") return { ok: true, value: {} };
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return { ok: false, message: `not JSON: ${error instanceof Error ? error.message : String(error)}` };
  }
}

function unknownFlag(verb: Verb, files: Readonly<Record<string, string>>): string | undefined {
  return Object.keys(files).find((name) => !(name in (verb.fileFlags ?? {})));
}

async function runVerb(verb: Verb, files: Readonly<Record<string, string>>): Promise<number> {
  const flag = unknownFlag(verb, files);
  if (flag !== undefined) return invalid(`--${flag}`, `${verb.name} knows no flag --${flag}`);
  const unnamed = Object.entries(files).find(([, file]) => file === "");
  if (unnamed) return invalid(`--${unnamed[0]}`, `--${unnamed[0]} needs a file name`);
  const read = readInput();
  if (!read.ok) return invalid("", read.message);
  const parsed = verb.input.safeParse(read.value);
  if (!parsed.success) {
    print({ invalid: invalidInputs(parsed.error) });
    return 2;
  }
  const flags: VerbFlags = {
    files,
    write: (path, content) => writeFile(path, content),
    clock: () => performance.now(),
    today: isoDate(new Date().toISOString().slice(0, 10)),
  };
  const outcome = await verb.run(parsed.data, flags);
  if (!outcome.ok) {
    print({ refusal: outcome.refusal });
    return 1;
  }
  print(outcome.value);
  return 0;
}

async function main(words: readonly string[]): Promise<number> {
  const { verb: name, wantsHelp, wantsSchema, files } = readArguments(words);
  if (name === undefined) {
    process.stdout.write(await helpText());
    return wantsHelp ? 0 : 2;
  }
  const verb = await loadVerb(name);
  if (verb === undefined) return invalid("verb", `no verb "${name}"; there are: ${verbNames.join(", ")}`);
  if (wantsSchema) {
    const options = { unrepresentable: "any", io: "input" } as const;
    print({
      verb: verb.name,
      input: z.toJSONSchema(verb.input, options),
      output: z.toJSONSchema(verb.output, options),
    });
    return 0;
  }
  if (wantsHelp) {
    const flags = Object.entries(verb.fileFlags ?? {}).map(([flag, text]) => `  --${flag} FILE  ${text}\n`);
    process.stdout.write(`${verb.name}: ${verb.summary}\n${flags.join("")}`);
    return 0;
  }
  return runVerb(verb, files);
}

process.exitCode = await main(process.argv.slice(2));
