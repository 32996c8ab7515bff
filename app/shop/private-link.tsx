/** The skier's private link, just made; or the button that makes a new one. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import shopWords from "#content/copy/shop.json";
import { closePrivateLinks, newPrivateLink } from "./actions";
import { type LinkKind, toldLink } from "./told-link";

const w = shopWords.call;

export async function PrivateLink({ kind, id }: { readonly kind: LinkKind; readonly id: string }) {
  const told = await toldLink(kind, id);
  return (
    <section aria-label={w.link} className="grid gap-3">
      {told ? (
        <Notice tone="info" title={w.link}>
          <p className="break-all">
            <a href={told.url}>{told.url}</a>
          </p>
          <p className="text-sm text-pencil">{w.linkNote}</p>
        </Notice>
      ) : (
        <>
          <ActionForm
            action={newPrivateLink}
            idPrefix={`link-${kind}-`}
            tone="plain"
            size="small"
            fields={[
              { kind: "hidden", name: "kind", value: kind },
              { kind: "hidden", name: "id", value: id },
            ]}
            submit={w.newLink}
          />
          <p className="text-sm text-pencil">{w.newLinkNote}</p>
          <ActionForm
            action={closePrivateLinks}
            idPrefix={`close-links-${kind}-`}
            tone="plain"
            size="small"
            fields={[
              { kind: "hidden", name: "kind", value: kind },
              { kind: "hidden", name: "id", value: id },
            ]}
            submit={w.closeLinks}
            done={w.linksClosed}
          />
          <p className="text-sm text-pencil">{w.closeLinksNote}</p>
        </>
      )}
    </section>
  );
}
