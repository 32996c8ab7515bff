import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { moneyText } from "#app/_ui/money.ts";
import { Page, Part } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { listHref, type Query } from "#app/shop/(staff)/list-href.ts";
import { permit } from "#auth";
import words from "#content/copy/breakdowns.json";
import dateWords from "#content/copy/dates.json";
import { toldShare } from "#engine/units";
import { askWhatIf, listFloorChanges, settings, type WhatIfAnswer, type WhatIfKind } from "#services";
import type { Context } from "#services/context";
import { shopDay } from "#services/shop-clock";
import { Effect, EffectTable } from "../breakdown/effect";
import { fieldErrors, KindChoice, keptAnswers, WholeError } from "../question";
import { apply } from "./actions";
import { OneMoreStrips, SlackBars } from "./charts";
import { answersIn, WhatIfFields } from "./fields";
import { InForce } from "./in-force";
import { whatIfFields, whatIfSchema } from "./read-input";

const w = words.whatIf;
const here = "/shop/queue/what-if";
export const metadata: Metadata = { title: w.title };

const kinds = Object.keys(whatIfFields) as readonly WhatIfKind[];

export default async function WhatIfPage({ searchParams }: { readonly searchParams: Promise<Query> }) {
  const query = await searchParams;
  const ctx = await staffContext(listHref(here, query, {}));
  const changes = await listFloorChanges(ctx);
  if (!changes.ok) notFound();
  const kind = kinds.find((each) => each === query.kind);
  return (
    <Page title={w.title} lead={w.lead}>
      <Part title={w.choose} id="question">
        <KindChoice label={w.choose} href={here} kinds={kinds} chosen={kind} words={w.kinds} />
      </Part>
      {kind === undefined ? null : <Asked ctx={ctx} kind={kind} query={query} />}
      <Part title={w.inForce} id="in-force">
        <InForce changes={changes.value} mayWithdraw={permit(ctx.actor, "what-if.apply").ok} />
      </Part>
    </Page>
  );
}

async function Asked(props: { readonly ctx: Context; readonly kind: WhatIfKind; readonly query: Query }) {
  const { ctx, kind, query } = props;
  const answers = answersIn(kind, query);
  const parsed = Object.keys(query).length > 1 ? whatIfSchema.safeParse(answers) : null;
  const asked = parsed?.success ? await askWhatIf(ctx, parsed.data) : null;
  const errors = fieldErrors(parsed, asked);
  const today = shopDay(ctx.now, settings().shop.timeZone);
  return (
    <>
      <Part title={w.kinds[kind]} id="form">
        <WholeError errors={errors} />
        <WhatIfFields kind={kind} query={query} today={today} errors={errors} />
      </Part>
      {asked?.ok ? <Answer answer={asked.value} /> : null}
      {asked?.ok && asked.value.canApply && permit(ctx.actor, "what-if.apply").ok ? (
        <Part title={w.apply} id="apply">
          <p className="mb-3 max-w-measure text-pencil">{w.applyNote}</p>
          <ActionForm
            action={apply}
            idPrefix="apply-"
            tone="plain"
            fields={[
              ...keptAnswers(answers),
              { kind: "hidden", name: "changeId", value: ctx.newId() },
              { kind: "text", name: "reason", label: w.reason },
            ]}
            submit={w.apply}
            busy={w.applying}
            done={w.applied}
          />
        </Part>
      ) : null}
    </>
  );
}

/** Days on the calendar: a closure takes no working days away, but it takes days. */
function datesOf({ before, after }: NonNullable<WhatIfAnswer["effect"]["oneMore"]>) {
  return {
    halfBefore: dayText(before.p50),
    halfAfter: dayText(after.p50),
    before: dayText(before.p90),
    after: dayText(after.p90),
  };
}

/** The same days with the shares they were told with; before shares were told, as it was said then. */
function daysText({ before, after }: NonNullable<WhatIfAnswer["effect"]["oneMore"]>): string {
  const days = datesOf({ before, after });
  if (before.shares === undefined || after.shares === undefined) return fill(w.oneMoreDates, days);
  return fill(w.oneMoreShares, {
    ...days,
    firstBefore: toldShare(before.shares.p50, dateWords.shares),
    lastBefore: toldShare(before.shares.p90, dateWords.shares),
    firstAfter: toldShare(after.shares.p50, dateWords.shares),
    lastAfter: toldShare(after.shares.p90, dateWords.shares),
  });
}

function Answer({ answer }: { readonly answer: WhatIfAnswer }) {
  const { effect, costCentsPerWeek, ordersRescued } = answer;
  return (
    <Part title={w.answer} id="answer" arrives>
      <div className="grid grid-cols-1 gap-6">
        <p className="text-lg">
          {fill(w.rescued, { count: ordersRescued })}{" "}
          {costCentsPerWeek === null ? null : fill(w.cost, { cost: moneyText(costCentsPerWeek, "short") })}
        </p>
        {effect.oneMore === null ? null : (
          <>
            <h3 className="text-lg">{w.oneMore}</h3>
            <p>{daysText(effect.oneMore)}</p>
            <p className="max-w-measure text-pencil">{w.oneMoreNote}</p>
            <OneMoreStrips oneMore={effect.oneMore} />
          </>
        )}
        <h3 className="text-lg">{w.slack}</h3>
        <SlackBars slack={effect.slack} />
        <EffectTable caption={w.rescuedTitle} empty={w.nobodyRescued} rows={effect.rescued} />
        <Effect effect={effect} />
      </div>
    </Part>
  );
}
