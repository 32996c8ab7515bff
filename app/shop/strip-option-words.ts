/** A way out in words. */
import type { Choice } from "#app/_ui/choice-group.tsx";
import { dayText } from "#app/_ui/date-range.tsx";
import { fill } from "#app/_ui/words.ts";
import copy from "#content/copy/rework.json";
import { textForPeople } from "#engine/units";
import type { StripOption } from "#services";

const w = copy.strips;

export function optionChoice(option: StripOption): Choice {
  const { label, detail } = wordsOf(option);
  return { value: option.id, label, ...(detail === undefined ? {} : { detail }) };
}

function wordsOf(option: StripOption): { readonly label: string; readonly detail?: string } {
  switch (option.kind) {
    case "other-species": {
      const figures = fill(w["other-speciesDetail"], {
        mass: signed(option.massG, 0),
        ratio: signed(option.ratioPercent, 1),
        thickness: signed(option.thicknessMm, 2),
      });
      const detail = option.isDenseOutside ? `${figures}. ${w.dense}` : figures;
      return { label: fill(w["other-species"], { ...option }), detail };
    }
    case "other-thickness":
      return {
        label: fill(w["other-thickness"], {
          modulus: signed(option.modulusPercent, 1),
          thickness: signed(option.thicknessMm, 2),
        }),
        detail: fill(w["other-thicknessDetail"], { mass: signed(option.massG, 0) }),
      };
    case "take-from":
      return {
        label:
          option.promisedOn === null
            ? fill(w["take-fromNone"], { serial: option.serial })
            : fill(w["take-from"], { serial: option.serial, on: dayText(option.promisedOn) }),
        detail:
          option.slackWorkingDays === null
            ? w["take-fromPlain"]
            : fill(w["take-fromDetail"], { slack: option.slackWorkingDays }),
      };
    default:
      return { label: w[option.kind] };
  }
}

function signed(value: number, decimals: number): string {
  const text = textForPeople(value, decimals).replace("-", "−");
  return value > 0 ? `+${text}` : text;
}
