export function findProgram(name: string): string | null;
export function findPostgres(): string | null;
export function startPostgres(): Promise<{ readonly url: string; readonly stop: () => Promise<void> } | null>;
