export const operators: Readonly<Record<string, unknown>>;
