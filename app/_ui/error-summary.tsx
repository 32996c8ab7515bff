/** What a form refused, at its top and with the focus, each line a link to its field. What was typed is kept below. */
import { Notice } from "./notice";

export interface FieldMessage {
  /** id of the field, or absent for the form as a whole. */
  readonly field?: string;
  readonly message: string;
}

export function ErrorSummary({ messages }: { readonly messages: readonly FieldMessage[] }) {
  if (messages.length === 0) return null;
  return (
    <Notice
      tone="iron"
      live="assertive"
      takesFocus
      title={messages.length === 1 ? "One thing to put right" : `${messages.length} things to put right`}
    >
      <ul className="grid gap-1">
        {messages.map((message) => (
          <li key={`${message.field ?? ""}${message.message}`}>
            {message.field ? <a href={`#${message.field}`}>{message.message}</a> : message.message}
          </li>
        ))}
      </ul>
      <p className="text-sm text-pencil">Everything you typed is still here.</p>
    </Notice>
  );
}
