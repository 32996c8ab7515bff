export function parse(file: string, text: string): { readonly body: readonly unknown[] };
