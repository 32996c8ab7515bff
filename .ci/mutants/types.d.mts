export function openTypes(root: string): Promise<{
  errorIn(file: string, text: string, users?: readonly string[]): Promise<string | null>;
  close(): Promise<void>;
}>;
