/** Reminds who has not said yes to this season's cautions; nothing for whoever has. */
import { Notice } from "#app/_ui/notice.tsx";
import words from "#content/copy/cautions.json";
import { type Context, readMyCautions } from "#services";

const w = words.reminder;

export async function CautionReminder({ ctx }: { readonly ctx: Context }) {
  const mine = await readMyCautions(ctx);
  if (!mine.ok || mine.value.state === "said") return null;
  return (
    <div className="no-print mb-6">
      <Notice tone="amber" title={w.title}>
        <p className="flex flex-wrap items-center gap-x-4">
          <a href="/shop/cautions" className="inline-flex min-h-12 items-center">
            {w.link}
          </a>
          <span className="text-sm text-pencil">{w.note}</span>
        </p>
      </Notice>
    </div>
  );
}
