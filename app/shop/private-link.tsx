/** The skier's private link, just made; or how many work and until when, and the buttons that renew, replace or close them. */
import { ActionForm, type ActionFormProps } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import shopWords from "#content/copy/shop.json";
import { type Context, type LinkStandingView, readLinkStanding } from "#services";
import { closePrivateLinks, newPrivateLink, renewPrivateLinks } from "./actions";
import { clock } from "./say";
import { type LinkKind, toldLink } from "./told-link";

const w = shopWords.call;

interface Props {
  readonly ctx: Context;
  readonly kind: Exclude<LinkKind, "wall">;
  readonly id: string;
}

export async function PrivateLink({ ctx, kind, id }: Props) {
  const told = await toldLink(kind, id);
  const standing = await readLinkStanding(ctx, { kind, id });
  const title = kind === "answers" ? w.answersLink : w.link;
  return (
    <section aria-label={title} className="grid gap-3">
      {told ? (
        <Notice tone="info" title={title}>
          <p className="break-all">
            <a href={told.url}>{told.url}</a>
          </p>
          <p className="text-sm text-pencil">{w.linkNote}</p>
        </Notice>
      ) : (
        <>
          {standing.ok ? <Standing kind={kind} id={id} standing={standing.value} /> : null}
          <LinkButton
            action={newPrivateLink}
            name="link"
            of={{ kind, id }}
            submit={kind === "answers" ? w.answersNewLink : w.newLink}
          />
          <p className="text-sm text-pencil">{w.newLinkNote}</p>
          <LinkButton
            action={closePrivateLinks}
            name="close-links"
            of={{ kind, id }}
            submit={w.closeLinks}
            done={w.linksClosed}
          />
          <p className="text-sm text-pencil">{w.closeLinksNote}</p>
        </>
      )}
    </section>
  );
}

/** How many links work and until when; whoever wants may let them work longer. */
function Standing({
  kind,
  id,
  standing: { open, over, until },
}: {
  readonly kind: string;
  readonly id: string;
  readonly standing: LinkStandingView;
}) {
  const said = open > 0 ? w.linkOpen : over > 0 ? w.linkOver : w.linkNone;
  const known = { count: open > 0 ? open : over, until: until === null ? "" : clock(until) };
  return (
    <>
      <p className="text-sm">{fill(said, known)}</p>
      {open + over > 0 ? (
        <LinkButton
          action={renewPrivateLinks}
          name="renew-links"
          of={{ kind, id }}
          submit={w.renewLinks}
          done={w.linksRenewed}
        />
      ) : null}
    </>
  );
}

/** One button that does something to the links of a subject. */
function LinkButton({
  name,
  of: { kind, id },
  ...form
}: Pick<ActionFormProps, "action" | "submit" | "done"> & {
  /** Tells the buttons of one page apart. */
  readonly name: string;
  readonly of: { readonly kind: string; readonly id: string };
}) {
  return (
    <ActionForm
      {...form}
      idPrefix={`${name}-${kind}-`}
      tone="plain"
      size="small"
      fields={[
        { kind: "hidden", name: "kind", value: kind },
        { kind: "hidden", name: "id", value: id },
      ]}
    />
  );
}
