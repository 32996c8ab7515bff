export function bundle(entry: string, name?: string): Promise<string>;
export function loadBundled(entry: string, name?: string): Promise<Record<string, unknown>>;
export function bundleThreads(): Promise<void>;
