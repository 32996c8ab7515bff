import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { requestDevice, signedIn } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { Page, Part } from "#app/_ui/page.tsx";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import { fill } from "#app/_ui/words.ts";
import { type FloorDoor, floorDoor, isShopEmpty } from "#auth";
import people from "#content/copy/people.json";
import words from "#content/copy/shop.json";
import { settings } from "#services";
import { enter, enterOnFloor } from "./actions";
import { Away } from "./away.client";
import { safeBackPath } from "./back-path";

const w = words.signIn;
export const metadata: Metadata = { title: w.title, robots: { index: false } };

interface Props {
  readonly searchParams: Promise<{ readonly back?: string; readonly left?: string; readonly first?: string }>;
}

export default async function SignInPage({ searchParams }: Props) {
  const { back, left, first } = await searchParams;
  if (await signedIn()) redirect(safeBackPath(back));
  const [floor, isEmpty] = await Promise.all([requestDevice().then(floorDoor), isShopEmpty()]);
  if (isEmpty) redirect("/shop/first-owner");
  return (
    <SiteFrame workshop={settings().shop.name} place={settings().shop.town}>
      <Page title={w.title} lead={w.lead}>
        {left || first ? (
          <div className="mb-6 max-w-measure">
            <Notice tone="moss" title={first ? people.firstOwner.done : w.signedOut} live="polite" />
          </div>
        ) : null}
        <Away isOut={left !== undefined} />
        {floor === null ? (
          <ByPassword back={back} tone="primary" />
        ) : (
          <>
            <OnFloor floor={floor} back={back} />
            <Part id="by-password" title={people.floor.withPassword}>
              <ByPassword back={back} tone="plain" />
            </Part>
          </>
        )}
      </Page>
    </SiteFrame>
  );
}

function ByPassword({
  back,
  tone,
}: {
  readonly back: string | undefined;
  /** There is one primary way in: by short code where the device is of the floor. */
  readonly tone: "primary" | "plain";
}) {
  return (
    <ActionForm
      action={enter}
      tone={tone}
      fields={[
        { kind: "hidden", name: "back", value: safeBackPath(back) },
        { kind: "email", name: "email", label: w.email, autoComplete: "username" },
        { kind: "password", name: "password", label: w.password, autoComplete: "current-password" },
      ]}
      submit={w.button}
      busy={w.busy}
    />
  );
}

/** For gloves and cold hands: a name from the list, six figures. */
function OnFloor({ floor, back }: { readonly floor: FloorDoor; readonly back: string | undefined }) {
  const f = people.floor;
  return (
    <Part id="floor" title={f.title}>
      <p className="mb-3 max-w-measure text-pencil">{fill(f.lead, { device: floor.name })}</p>
      {floor.people.length === 0 ? (
        <p className="max-w-measure">{f.nobody}</p>
      ) : (
        <ActionForm
          action={enterOnFloor}
          idPrefix="floor-"
          size="floor"
          fields={[
            { kind: "hidden", name: "back", value: safeBackPath(back) },
            {
              kind: "select",
              name: "staffId",
              label: f.name,
              empty: f.choose,
              options: floor.people.map(({ staffId, name }) => ({ value: staffId, label: name })),
            },
            { kind: "password", name: "passcode", label: f.code, autoComplete: "off", isFigures: true },
          ]}
          submit={f.button}
          busy={f.busy}
        />
      )}
    </Part>
  );
}
