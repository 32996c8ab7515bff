import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { signInPath } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Page } from "#app/_ui/page.tsx";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import { fill } from "#app/_ui/words.ts";
import { isShopEmpty, passwordLength } from "#auth";
import words from "#content/copy/people.json";
import { settings } from "#services";
import { becomeOwner } from "./actions";

const w = words.firstOwner;
export const metadata: Metadata = { title: w.title, robots: { index: false, follow: false } };

/** Only as long as the shop has nobody. */
export default async function FirstOwnerPage() {
  if (!(await isShopEmpty())) redirect(signInPath);
  return (
    <SiteFrame workshop={settings().shop.name} place={settings().shop.town}>
      <Page title={w.title} lead={w.lead}>
        <ActionForm
          action={becomeOwner}
          fields={[
            { kind: "password", name: "passcode", label: w.code, hint: w.codeHint, autoComplete: "one-time-code" },
            { kind: "text", name: "name", label: w.name, autoComplete: "name" },
            { kind: "email", name: "email", label: w.email, autoComplete: "username" },
            {
              kind: "password",
              name: "password",
              label: w.password,
              hint: fill(words.passwordHint, passwordLength),
              autoComplete: "new-password",
            },
          ]}
          submit={w.button}
          busy={w.busy}
        />
      </Page>
    </SiteFrame>
  );
}
