/** One ski built again: asked first, shown with what it takes and what it does to the promise, then begun. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Button } from "#app/_ui/button.tsx";
import { dateRangeText } from "#app/_ui/date-range.tsx";
import { Facts } from "#app/_ui/facts.tsx";
import { SelectField } from "#app/_ui/field.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import { say } from "#app/shop/say.ts";
import copy from "#content/copy/rework.json";
import { type ReworkFault, reworkFaults } from "#engine/floor";
import { textForPeople } from "#engine/units";
import { type Context, type PairView, previewRework, type ReworkView } from "#services";
import { startAgain } from "./rework-actions";

const w = copy.rework;
const firstFault = reworkFaults[0].id;

/** What was asked for, as it stands in the address. */
export interface AskedRework {
  readonly side?: string;
  readonly fault?: string;
  readonly from?: string;
}

export async function Rework(props: { readonly ctx: Context; readonly pair: PairView; readonly asked: AskedRework }) {
  const { ctx, pair, asked } = props;
  const side = asked.side === "L" || asked.side === "R" ? asked.side : null;
  const fault = reworkFaults.find(({ id }) => id === asked.fault);
  const fromStation = asked.from || pair.reworkFrom[fault?.id ?? firstFault];
  const preview =
    side === null || fault === undefined
      ? null
      : await previewRework(ctx, { pairId: pair.pairId, side, fault: fault.id, fromStation });
  return (
    <div className="grid gap-6 *:min-w-0">
      <p className="max-w-measure text-pencil">{w.lead}</p>
      <Question pair={pair} asked={{ ...asked, from: fromStation }} />
      {preview === null ? null : preview.ok ? (
        <Answer view={preview.value} />
      ) : (
        <Notice tone="iron" title={say(preview.refusal)} live="polite" />
      )}
    </div>
  );
}

function Question({ pair, asked }: { readonly pair: PairView; readonly asked: AskedRework }) {
  const stations = [...new Map(pair.operations.map((each) => [each.station, each]))];
  const numberFor = (fault: ReworkFault) =>
    pair.operations.find(({ station }) => station === pair.reworkFrom[fault])?.stationNumber ?? "";
  return (
    <form method="get" action="#rework" className="flex flex-wrap items-start gap-4">
      <SelectField
        id="rework-side"
        name="side"
        label={w.side}
        defaultValue={asked.side ?? "L"}
        options={(["L", "R"] as const).map((value) => ({ value, label: w.sides[value] }))}
      />
      <SelectField
        id="rework-fault"
        name="fault"
        label={w.fault}
        defaultValue={asked.fault ?? firstFault}
        options={reworkFaults.map(({ id }) => ({ value: id, label: w.faults[id] }))}
      />
      <SelectField
        id="rework-from"
        name="from"
        label={w.from}
        hint={fill(w.fromHint, {
          core: numberFor("core-wrong"),
          base: numberFor("base-damaged"),
          topsheet: numberFor("topsheet-nicked"),
        })}
        defaultValue={asked.from ?? ""}
        options={stations.slice(1).map(([station, { stationNumber, stationName }]) => ({
          value: station,
          label: `${stationNumber} ${stationName}`,
        }))}
      />
      <p className="basis-full">
        <Button type="submit">{w.show}</Button>
      </p>
    </form>
  );
}

function Answer({ view }: { readonly view: ReworkView }) {
  return (
    <section aria-live="polite" className="grid gap-4 border border-control bg-sheet p-4">
      <Facts
        facts={[
          { name: w.scrapped, value: serial(view.scrappedSerial), measure: true },
          { name: fill(w.built, { from: view.fromNumber }), value: serial(view.newSerial), measure: true },
          { name: w.held, value: serial(view.heldSerial), measure: true },
          {
            name: w.stations,
            value: view.stations
              .map(({ number, isOneSki }) => (isOneSki ? String(number) : `${number} (${w.bothSkis})`))
              .join(", "),
          },
          { name: w.strips, value: stripsText(view) },
          ...(view.letters
            ? [
                {
                  name: w.letters,
                  value: fill(w.lettersText, { text: view.letters.text, colour: view.letters.sheetColour }),
                },
              ]
            : []),
          ...effectFacts(view),
        ]}
      />
      <ActionForm
        action={startAgain}
        idPrefix="rework-start-"
        tone="danger"
        size="floor"
        fields={[
          { kind: "hidden", name: "serial", value: view.serial },
          { kind: "hidden", name: "pairId", value: view.pairId },
          { kind: "hidden", name: "version", value: String(view.version) },
          { kind: "hidden", name: "side", value: view.side },
          { kind: "hidden", name: "fault", value: view.fault },
          { kind: "hidden", name: "fromStation", value: view.fromStation },
          { kind: "text", name: "location", label: w.location, autoComplete: "off" },
          { kind: "text", name: "note", label: w.note, autoComplete: "off" },
        ]}
        submit={w.start}
        busy={w.starting}
      />
    </section>
  );
}

/** Never broken at its hyphens. */
const serial = (text: string) => <strong className="whitespace-nowrap">{text}</strong>;

function stripsText({ strips }: ReworkView): string {
  if (strips === null) return w.coreKept;
  if (!strips.isFound) return fill(w.notFound, { percent: strips.limitPercent });
  const percent = textForPeople(Math.abs(strips.differencePercent), 2);
  return fill(w.found, { count: strips.count, percent, bins: strips.bins.join(", ") });
}

function effectFacts({ effect }: ReworkView) {
  const { own, ready, queue } = effect;
  const range = ready === null ? null : dateRangeText(ready.p50, ready.p90, true);
  const moves =
    own === null
      ? range === null
        ? w.noMove
        : fill(w.readyIn, { range })
      : fill(w.movesBy, { days: own.movedWorkingDays, range });
  const others = queue.crossing.filter(({ serial }) => serial !== own?.serial).map(({ serial }) => serial);
  return [
    { name: w.moves, value: moves },
    ...(own === null ? [] : [{ name: w.promise, value: w.standings[own.standingAfter] }]),
    { name: w.others, value: others.length === 0 ? w.none : others.join(", ") },
  ];
}
