export function systemBrowser(): string | undefined;
export function hasBrowser(): Promise<boolean>;
export const howToGetOne: string;
