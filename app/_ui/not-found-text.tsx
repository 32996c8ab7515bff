/** Where nothing is: what may have happened, the way home, and a person. */
import Link from "next/link";
import words from "#content/copy/site.json";
import { Reach } from "./reach";

export function NotFoundText({ phone, email }: { readonly phone: string; readonly email: string }) {
  const w = words.notFound;
  return (
    <div className="mx-auto max-w-page px-4 py-16 sm:px-6">
      <h1 className="text-2xl">{w.title}</h1>
      <p className="mt-3 max-w-measure text-pencil">{w.text}</p>
      <p className="mt-6 flex flex-wrap gap-x-6 gap-y-2">
        <Link href="/" className="inline-flex min-h-9 items-center">
          {w.home}
        </Link>
        <Reach phone={phone} email={email} />
      </p>
    </div>
  );
}
