import { NotFoundText } from "#app/_ui/not-found-text.tsx";
import { settings } from "#services";

/** A link that leads nowhere, in the frame that the skier's pages already have. */
export default function NotFound() {
  const { shop } = settings();
  return <NotFoundText phone={shop.phone} email={shop.email} />;
}
