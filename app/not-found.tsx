import Link from "next/link";
import { SiteFrame } from "#app/_ui/site-frame.tsx";
import words from "#content/copy/site.json";
import { settings } from "#services";

export default function NotFound() {
  const w = words.notFound;
  return (
    <SiteFrame workshop={settings().shop.name} place={settings().shop.town}>
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
