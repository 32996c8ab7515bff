import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { passwordLength } from "#auth";
import words from "#content/copy/people.json";
import { readMyAccount } from "#services";
import { FloorCode } from "../people/floor-code";
import { SignIns } from "../people/sign-ins";
import { changePassword } from "./actions";

const w = words.account;
export const metadata: Metadata = { title: w.title };

export default async function AccountPage() {
  const read = await readMyAccount(await staffContext("/shop/account"));
  if (!read.ok) notFound();
  const { email, signIns, ...mine } = read.value;
  return (
    <Page title={w.title} lead={fill(w.lead, { email })}>
      <Part id="sign-ins" title={w.signIns}>
        <SignIns title={w.signIns} signIns={signIns} />
      </Part>
      <Part id="password" title={w.password}>
        <p className="mb-3 max-w-measure text-pencil">{w.passwordNote}</p>
        <ActionForm
          action={changePassword}
          idPrefix="own-"
          tone="plain"
          fields={[
            { kind: "password", name: "currentPassword", label: w.current, autoComplete: "current-password" },
            {
              kind: "password",
              name: "password",
              label: w.next,
              hint: fill(words.passwordHint, passwordLength),
              autoComplete: "new-password",
            },
          ]}
          submit={w.button}
          done={w.done}
        />
      </Part>
      <Part id="code" title={w.code}>
        <FloorCode {...mine} />
      </Part>
    </Page>
  );
}
