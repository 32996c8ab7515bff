import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { DateRange } from "#app/_ui/date-range.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/skier.json";
import { type ProgressView, settings } from "#services";
import { anotherLetter, confirmContact } from "../actions";
import { dayIn } from "./shop-day";

const w = words.pair.unconfirmed;

interface Props {
  readonly progress: ProgressView;
  readonly token: string;
  readonly canAnswer: boolean;
}

/** An order without a place: what that means, its day as if it had one, and what gives it one. */
export function Unconfirmed({ progress, token, canAnswer }: Props) {
  const { unconfirmed, dateRange, orderNumber } = progress;
  if (unconfirmed === null) return null;
  const { sentTo, codeUntil } = unconfirmed;
  const link = { kind: "hidden", name: "token", value: token } as const;
  return (
    <div className="grid gap-6">
      <Notice tone="amber" title={w.title}>
        <p>{fill(w.lead, { order: orderNumber })}</p>
        <p>{fill(w.ways, { phone: settings().shop.phone })}</p>
      </Notice>
      <div>
        <p className="text-lg">
          {w.date} <DateRange from={dateRange.p50} to={dateRange.p90} shares={dateRange.shares} withYear />.
        </p>
        <p className="mt-1 text-pencil">{w.dateNote}</p>
      </div>
      {sentTo === null ? (
        <p>{w.noAddress}</p>
      ) : (
        <div className="grid gap-4">
          <p>
            {codeUntil === null
              ? fill(w.noLetter, { address: sentTo })
              : fill(w.letter, { address: sentTo, until: dayIn(codeUntil) })}
          </p>
          {canAnswer && codeUntil !== null ? (
            <ActionForm
              action={confirmContact}
              idPrefix="code-"
              fields={[
                link,
                { kind: "text", name: "code", label: w.code, hint: w.codeHint, autoComplete: "one-time-code" },
              ]}
              submit={w.codeButton}
            />
          ) : null}
          {canAnswer ? (
            <ActionForm
              action={anotherLetter}
              idPrefix="letter-"
              tone="plain"
              fields={[link]}
              submit={w.again}
              done={w.againDone}
            />
          ) : null}
        </div>
      )}
    </div>
  );
}
