import type { Metadata } from "next";
import { Page, Part } from "#app/_ui/page.tsx";
import words from "#content/copy/site.json";
import { CheckTable } from "./check-table";
import { ChangesTable, FeelTable } from "./feel-table";
import { PredictedVersusMeasured } from "./predicted-versus-measured";

export const metadata: Metadata = { title: words.method.title };

export default function MethodPage() {
  const w = words.method;
  return (
    <Page title={w.title} lead={w.lead}>
      <nav aria-label="On this page" className="no-print mb-8">
        <ul className="flex flex-wrap gap-x-5">
          {w.parts.map((part) => (
            <li key={part.id}>
              <a className="inline-flex min-h-9 items-center" href={`#${part.id}`}>
                {part.title}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <p className="mb-8 max-w-measure">{w.checksLead}</p>
      {w.parts.map((part) => (
        <Part key={part.id} title={part.title} id={part.id}>
          <p className="measure mb-3 border-l-4 border-rule bg-sheet px-4 py-3 [overflow-wrap:anywhere]">
            <span className="sr-only">{w.labels.formula}: </span>
            {part.formula}
          </p>
          <p className="max-w-measure">{part.text}</p>
          <dl className="mt-3 grid max-w-measure gap-1 text-sm text-pencil">
            <div className="flex gap-3">
              <dt className="w-28 flex-none font-medium text-ink">{w.labels.source}</dt>
              <dd>{part.source}</dd>
            </div>
            <div className="flex gap-3">
              <dt className="w-28 flex-none font-medium text-ink">{w.labels.limit}</dt>
              <dd>{part.limit}</dd>
            </div>
          </dl>
          <CheckTable topics={part.checks} title={part.title} />
          {part.id === "learning" ? <PredictedVersusMeasured /> : null}
        </Part>
      ))}
      <Part title={w.feel.title} id="feel">
        <p className="mb-3 max-w-measure">{w.feel.lead}</p>
        <FeelTable />
        <p className="mt-6 mb-3 max-w-measure">{w.feel.changesLead}</p>
        <ChangesTable />
        <p className="mt-2 max-w-measure text-sm text-pencil">{w.feel.source}</p>
      </Part>
      <Part title={w.safetyTitle} id="safety">
        <ul className="grid max-w-measure list-disc gap-2 pl-5">
          {w.safety.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Part>
    </Page>
  );
}
