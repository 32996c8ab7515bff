import { NotFoundText } from "#app/_ui/not-found-text.tsx";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import { settings } from "#services";

/** An address that no page has: it stands in no frame yet. */
export default function NotFound() {
  const { shop } = settings();
  return (
    <SiteFrame workshop={shop.name} place={shop.town}>
      <NotFoundText phone={shop.phone} email={shop.email} />
    </SiteFrame>
  );
}
