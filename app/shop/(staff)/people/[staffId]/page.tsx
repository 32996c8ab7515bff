import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { clock } from "#app/shop/say.ts";
import { passwordLength } from "#auth";
import words from "#content/copy/people.json";
import shopWords from "#content/copy/shop.json";
import { type PersonView, readPeople } from "#services";
import { endAll, letSomebodyGo, setPassword } from "../actions";
import { FloorCode } from "../floor-code";
import { SignIns } from "../sign-ins";

const w = words.person;
export const metadata: Metadata = { title: words.title };

interface Props {
  readonly params: Promise<{ readonly staffId: string }>;
}

export default async function PersonPage({ params }: Props) {
  const { staffId } = await params;
  const ctx = await staffContext(`/shop/people/${staffId}`);
  const read = await readPeople(ctx);
  if (!read.ok) notFound();
  const person = read.value.people.find((each) => each.staffId === staffId);
  if (person === undefined) notFound();
  const { name, leftAt } = person;
  const isSelf = ctx.actor.kind === "staff" && ctx.actor.staffId === staffId;
  return (
    <Page title={name} lead={leadOf(person)} aside={<a href="/shop/people">{w.back}</a>}>
      {leftAt === null ? (
        <>
          <Part id="sign-ins" title={w.signIns}>
            <SignIns title={w.signIns} signIns={person.signIns} />
            {person.signIns.length > 1 ? <EndAll staffId={staffId} /> : null}
          </Part>
          <Part id="password" title={w.password}>
            <Password staffId={staffId} />
          </Part>
          <Part id="code" title={w.code}>
            <FloorCode {...person} />
          </Part>
          {isSelf ? null : (
            <Part id="let-go" title={w.letGo}>
              <LetGo person={person} />
            </Part>
          )}
        </>
      ) : null}
    </Page>
  );
}

function leadOf({ role, email, since, leftAt }: PersonView): string {
  const known = { role: shopWords.frame.roles[role], email, since: clock(since) };
  return leftAt === null ? fill(w.lead, known) : fill(w.leadGone, { ...known, left: clock(leftAt) });
}

function EndAll({ staffId }: { readonly staffId: string }) {
  return (
    <div className="mt-4">
      <ActionForm
        action={endAll}
        idPrefix="end-all-"
        tone="plain"
        fields={[{ kind: "hidden", name: "staffId", value: staffId }]}
        submit={w.endAll}
        done={w.endedAll}
      />
    </div>
  );
}

function Password({ staffId }: { readonly staffId: string }) {
  return (
    <>
      <p className="mb-3 max-w-measure text-pencil">{w.passwordNote}</p>
      <ActionForm
        action={setPassword}
        idPrefix="password-"
        tone="plain"
        fields={[
          { kind: "hidden", name: "staffId", value: staffId },
          {
            kind: "password",
            name: "password",
            label: w.passwordField,
            hint: fill(words.passwordHint, passwordLength),
            autoComplete: "new-password",
          },
        ]}
        submit={w.passwordButton}
        done={w.passwordDone}
      />
    </>
  );
}

function LetGo({ person: { staffId, name } }: { readonly person: PersonView }) {
  return (
    <>
      <p className="mb-3 max-w-measure text-pencil">{w.letGoNote}</p>
      <ActionForm
        action={letSomebodyGo}
        idPrefix="let-go-"
        tone="danger"
        fields={[
          { kind: "hidden", name: "staffId", value: staffId },
          { kind: "checkbox", name: "sure", label: fill(w.letGoConfirm, { name }) },
        ]}
        submit={fill(w.letGoButton, { name })}
      />
    </>
  );
}
