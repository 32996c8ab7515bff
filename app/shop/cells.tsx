/** What stands in the cells of the shop's tables and is never broken over two lines: numbers, days, instants. */
import { Fragment } from "react";
import { dayText } from "#app/_ui/date-range.tsx";
import words from "#content/copy/dates.json";
import { toldShare } from "#engine/units";
import { clock } from "./say";

/** A quote's or an order's number, a pair's serial, as the way to its page. */
export function NumberLink({ href, number }: { readonly href: string; readonly number: string }) {
  return (
    <a href={href} className="whitespace-nowrap">
      {number}
    </a>
  );
}

export function PairLink({ serial }: { readonly serial: string }) {
  return <NumberLink href={`/shop/pair/${serial}`} number={serial} />;
}

/** A day of the shop; none is a dash. */
export function Day({ on }: { readonly on: string | null | undefined }) {
  return on ? <span className="whitespace-nowrap">{dayText(on)}</span> : <span className="text-pencil">–</span>;
}

/** A day with the share of futures that are ready by its close, where it was told. */
export function DayWithShare({
  on,
  share,
}: {
  readonly on: string | null | undefined;
  readonly share: number | undefined;
}) {
  return (
    <>
      <Day on={on} />
      {on && share !== undefined ? (
        <span className="block text-sm text-pencil">{toldShare(share, words.shares)}</span>
      ) : null}
    </>
  );
}

/** An instant on the shop's clock. */
export function Clock({ at }: { readonly at: string }) {
  return <span className="measure whitespace-nowrap">{clock(at)}</span>;
}

/** Who did it and when. */
export function ByAt({ by, at }: { readonly by: string; readonly at: string }) {
  return (
    <>
      {by}, <Clock at={at} />
    </>
  );
}

/** Pairs one after the other, none of them broken over two lines. */
export function PairLinks({ serials }: { readonly serials: readonly string[] }) {
  return serials.map((serial, index) => (
    <Fragment key={serial}>
      {/* The space stands outside of what does not break: there a line may end. */}
      {index > 0 ? " " : ""}
      <span className="whitespace-nowrap">
        <PairLink serial={serial} />
        {index < serials.length - 1 ? "," : ""}
      </span>
    </Fragment>
  ));
}
