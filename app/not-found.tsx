import Link from "next/link";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import shop from "#content/catalog/shop.json";
import words from "#content/copy/site.json";

export default function NotFound() {
  const w = words.notFound;
  return (
    <SiteFrame workshop={shop.name} place={shop.town}>
      <div className="mx-auto max-w-page px-4 py-16 sm:px-6">
        <h1 className="text-2xl">{w.title}</h1>
        <p className="mt-3 max-w-measure text-pencil">{w.text}</p>
        <p className="mt-6">
          <Link href="/">{w.home}</Link>
        </p>
      </div>
    </SiteFrame>
  );
}
