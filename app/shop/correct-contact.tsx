/** A contact as it stands, to be put right with a reason: a customer's, or the buyer's of an order. */
import { ActionForm, type ActionFormProps } from "#app/_ui/action-form.client.tsx";
import { More } from "#app/_ui/section.tsx";
import customers from "#content/copy/customers.json";

const w = customers.correct;

export function CorrectContact({
  contact,
  hidden,
  action,
  lead,
}: {
  readonly contact: { readonly name: string; readonly phone: string | null; readonly email: string | null };
  /** What the form is about, by field. */
  readonly hidden: Readonly<Record<string, string>>;
  readonly action: ActionFormProps["action"];
  readonly lead: string;
}) {
  const { heads } = customers.customers;
  return (
    <More summary={w.open}>
      <p className="mb-3 max-w-measure text-pencil">{lead}</p>
      <ActionForm
        // A contact that has changed starts a new form.
        key={[contact.name, contact.phone, contact.email].join("\n")}
        action={action}
        idPrefix="correct-"
        tone="plain"
        fields={[
          ...Object.entries(hidden).map(([name, value]) => ({ kind: "hidden", name, value }) as const),
          { kind: "text", name: "name", label: heads.name, value: contact.name, autoComplete: "off" },
          { kind: "text", name: "phone", label: heads.phone, value: contact.phone ?? "", autoComplete: "off" },
          { kind: "text", name: "email", label: heads.email, value: contact.email ?? "", autoComplete: "off" },
          { kind: "text", name: "reason", label: w.reason, autoComplete: "off" },
        ]}
        submit={w.button}
        done={w.done}
      />
    </More>
  );
}
