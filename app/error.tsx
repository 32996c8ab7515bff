"use client";
import { Button } from "#app/_ui/button.tsx";

/** Something unexpected: says what to do, keeps what was typed (it waits in the browser), offers another try. */
export default function ErrorPage({
  error,
  retry,
  reset,
}: {
  readonly error: Error & { readonly digest?: string };
  readonly retry?: () => void;
  readonly reset?: () => void;
}) {
  return (
    <main id="main" className="mx-auto w-full max-w-page px-4 py-16 sm:px-6">
      <h1 className="text-2xl">That went wrong on our side</h1>
      <p className="mt-3 max-w-measure text-pencil">
        Nothing you typed is lost. Try again; if it happens once more, tell us the reference{" "}
        <span className="measure">{error.digest ?? "none"}</span>.
      </p>
      <p className="mt-6">
        <Button tone="primary" onClick={() => (retry ?? reset)?.()}>
          Try again
        </Button>
      </p>
    </main>
  );
}
