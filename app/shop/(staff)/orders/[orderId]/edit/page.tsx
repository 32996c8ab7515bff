import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { staffContext } from "#app/_server/request.ts";
import { Button } from "#app/_ui/button.tsx";
import { CheckGroup } from "#app/_ui/choice-group.tsx";
import { NumberField, SelectField } from "#app/_ui/field.tsx";
import { Page } from "#app/_ui/page.tsx";
import { fill } from "#app/_ui/words.ts";
import { editQuery, flexText, withExactFlex } from "#app/shop/(staff)/orders/edit-fields.ts";
import words from "#content/copy/shop.json";
import { type BuildCatalog, coreLabel, type PairSpec } from "#engine/configuration";
import { idOf } from "#schemas/ids";
import { catalogOfRelease, readOrder } from "#services";
import { EditEffect } from "./effect";

const w = words.edit;
export const metadata: Metadata = { title: "Change a pair" };

interface Props {
  readonly params: Promise<{ readonly orderId: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[]>>>;
}

/** First the choices, as a plain form into the address; then what they would do; then the one button. */
export default async function EditPage({ params, searchParams }: Props) {
  const [{ orderId }, query] = await Promise.all([params, searchParams]);
  const ctx = await staffContext(`/shop/orders/${orderId}`);
  const read = await readOrder(ctx, { orderId: idOf("order", orderId) });
  if (!read.ok) notFound();
  const order = read.value;
  const pair = order.pairs.find((each) => each.pairId === query.pair) ?? order.pairs[0];
  const catalog = await catalogOfRelease(ctx, { hash: order.releaseHash, priceBook: order.price.priceBook });
  if (!pair || !catalog.ok) notFound();
  const parsed = editQuery.safeParse(query);
  const asked = parsed.success ? withExactFlex(parsed.data, pair.spec.flexRatio) : null;
  const problem = query.lengthCm !== undefined && !parsed.success ? parsed.error.issues[0]?.message : undefined;
  return (
    <Page title={fill(w.title, { serial: pair.serial })} lead={w.lead}>
      <p className="mb-6">
        <a href={`/shop/orders/${order.orderId}`}>{fill(words.order.title, { number: order.number })}</a>
      </p>
      <EditForm
        pairId={pair.pairId}
        spec={asked ? { ...pair.spec, ...asked } : pair.spec}
        build={catalog.value.engine.build}
        problem={problem}
      />
      {asked ? <EditEffect ctx={ctx} order={order} pair={pair} asked={asked} query={query} /> : null}
    </Page>
  );
}

function EditForm({
  pairId,
  spec,
  build,
  problem,
}: {
  readonly pairId: string;
  readonly spec: PairSpec;
  readonly build: BuildCatalog;
  readonly problem: string | undefined;
}) {
  const model = build.models.find((each) => each.id === spec.model);
  return (
    <form className="mb-8 grid max-w-measure gap-4">
      <input type="hidden" name="pair" value={pairId} />
      <SelectField
        name="lengthCm"
        label={w.length}
        defaultValue={String(spec.lengthCm)}
        options={(model?.lengths.map((length) => length.lengthCm) ?? [spec.lengthCm]).map((cm) => ({
          value: String(cm),
          label: `${cm} cm`,
        }))}
      />
      <SelectField
        name="core"
        label={w.core}
        defaultValue={spec.core}
        options={[...new Set([...build.blends.map((blend) => blend.id), spec.core])].map((core) => ({
          value: core,
          label: coreLabel(core, build),
        }))}
      />
      <NumberField name="flexRatio" label={w.flex} defaultValue={flexText(spec.flexRatio)} unit="×" error={problem} />
      <CheckGroup
        name="reinforcements"
        label={w.reinforcements}
        defaultValues={spec.reinforcements}
        choices={build.reinforcements.map((each) => ({ value: each.id, label: each.label }))}
      />
      <p>
        <Button type="submit" tone="plain">
          {w.preview}
        </Button>
      </p>
    </form>
  );
}
