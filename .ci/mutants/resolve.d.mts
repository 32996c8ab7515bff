export function resolverFor(root: string): (specifier: string, from: string) => string | null;
