/** Readings that do not fit the others, one form each, and the button that makes a book of what is left. */
import { ActionForm } from "#app/_ui/action-form.client.tsx";
import { Notice } from "#app/_ui/notice.tsx";
import { fill } from "#app/_ui/words.ts";
import words from "#content/copy/learning.json";
import type { Residual } from "#engine/calibration";
import { textForPeople } from "#engine/units";
import type { LearningView } from "#services";
import { approve, decide } from "./actions";
import { benchText } from "./figures";

const w = words.measured;

export function Suspects({ view, mayDecide }: { readonly view: LearningView; readonly mayDecide: boolean }) {
  const { suspects } = view.calibration;
  if (suspects.length === 0) return <p>{w.suspectsNone}</p>;
  return (
    <>
      <p className="mb-4 max-w-measure text-pencil">{w.suspectsNote}</p>
      <ul className="grid gap-4 *:min-w-0 md:grid-cols-2">
        {suspects.map((suspect) => (
          <li key={`${suspect.skiId} ${suspect.measure}`} className="grid gap-3 border border-control bg-sheet p-4">
            <Suspect view={view} suspect={suspect} mayDecide={mayDecide} />
          </li>
        ))}
      </ul>
    </>
  );
}

function Suspect(props: { readonly view: LearningView; readonly suspect: Residual; readonly mayDecide: boolean }) {
  const { skiId, measure, measured, predictedAfter, studentised } = props.suspect;
  const decision = props.view.decisions.find((each) => each.holds && each.serial === skiId && each.measure === measure);
  return (
    <>
      <div>
        <h3 className="font-semibold">
          <span className="measure">{skiId}</span>, {words.measures[measure].toLowerCase()}
        </h3>
        <p>
          {fill(w.suspectLine, {
            measured: benchText(measure, measured),
            predicted: benchText(measure, predictedAfter),
            times: textForPeople(Math.abs(studentised), 0),
          })}
        </p>
        {decision ? <p className="text-pencil">{fill(w.kept, { reason: decision.reason, by: decision.by })}</p> : null}
      </div>
      {props.mayDecide ? (
        <ActionForm
          action={decide}
          idPrefix={`${skiId}-${measure}-`}
          tone="plain"
          fields={[
            { kind: "hidden", name: "serial", value: skiId },
            { kind: "hidden", name: "measure", value: measure },
            { kind: "hidden", name: "value", value: String(measured) },
            {
              kind: "radio",
              name: "choice",
              label: w.choice,
              value: "leave-out",
              choices: [
                { value: "leave-out", label: w.choices["leave-out"] },
                { value: "keep", label: w.choices.keep },
              ],
            },
            { kind: "text", name: "reason", label: w.reason, hint: w.reasonHint, autoComplete: "off" },
          ]}
          submit={w.decide}
          busy={w.deciding}
        />
      ) : (
        <p className="text-sm text-pencil">{w.ownerDecides}</p>
      )}
    </>
  );
}

export function Approve(props: {
  readonly view: LearningView;
  readonly mayApprove: boolean;
  /** In words, what changes most; empty when nothing does. */
  readonly biggest: string;
}) {
  const { view, mayApprove, biggest } = props;
  const { calibration, leastPairs, undecided } = view;
  const { version } = calibration.corrections;
  const waits = !calibration.enoughPairs
    ? fill(w.approveWait, { pairs: calibration.pairs, least: leastPairs })
    : undecided.length > 0
      ? fill(w.approveUndecided, { count: undecided.length })
      : null;
  return (
    <div className="grid max-w-measure gap-4">
      <p>{w.approveEffect}</p>
      {biggest ? <p>{fill(w.approveBiggest, { list: biggest })}</p> : null}
      {waits ? <Notice tone="amber" title={waits} /> : null}
      {mayApprove ? (
        <ActionForm
          action={approve}
          idPrefix="approve-"
          fields={[{ kind: "hidden", name: "fingerprint", value: view.fingerprint }]}
          submit={fill(w.approveButton, { version })}
          busy={w.approving}
        />
      ) : (
        <p className="text-sm text-pencil">{w.approveOwner}</p>
      )}
    </div>
  );
}
