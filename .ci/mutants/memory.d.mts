import type { Memory } from "./judge.mjs";

export function openMemory(file: string, hash: string): Memory & { save(): void; failing(): readonly string[] };
