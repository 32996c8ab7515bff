import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { signedIn } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page } from "#app/_ui/page.tsx";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import words from "#content/copy/shop.json";
import { settings } from "#services";
import { enter } from "./actions";
import { safeBackPath } from "./back-path";

const w = words.signIn;
export const metadata: Metadata = { title: w.title, robots: { index: false } };

interface Props {
  readonly searchParams: Promise<{ readonly back?: string; readonly left?: string }>;
}

export default async function SignInPage({ searchParams }: Props) {
  const { back, left } = await searchParams;
  if (await signedIn()) redirect(safeBackPath(back));
  return (
    <SiteFrame workshop={settings().shop.name} place={settings().shop.town}>
      <Page title={w.title} lead={w.lead}>
        {left ? (
          <div className="mb-6 max-w-measure">
            <Notice tone="moss" title={w.signedOut} live="polite" />
          </div>
        ) : null}
        <ActionForm
          action={enter}
          fields={[
            { kind: "hidden", name: "back", value: safeBackPath(back) },
            { kind: "email", name: "email", label: w.email, autoComplete: "username" },
            { kind: "password", name: "password", label: w.password, autoComplete: "current-password" },
          ]}
          submit={w.button}
          busy={w.busy}
        />
      </Page>
    </SiteFrame>
  );
}
