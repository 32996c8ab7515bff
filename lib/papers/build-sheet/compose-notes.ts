/** What the maker must know beside the specification, in words. */
import words from "#content/copy/papers.json";
import { fill, textForPeople } from "#engine/units";
import type { PairNote } from "./facts";

const w = words.buildSheet.pairNotes;

export function noteText(note: PairNote): string {
  switch (note.kind) {
    case "other-species":
      return fill(w.otherSpecies, {
        position: note.position,
        species: note.species,
        insteadOf: note.insteadOf,
        change: change(note.thicknessMm),
      });
    case "other-thickness":
      return fill(w.otherThickness, {
        percent: textForPeople(note.modulusPercent, 1),
        change: change(note.thicknessMm),
      });
    case "one-ski":
      return fill(w.oneSki, { serial: note.serial, stations: note.stations.join(", ") });
    case "parked":
      return fill(w.parked, { serial: note.serial, location: note.location });
    case "extra-letters":
      return fill(w.extraLetters, { colour: note.colour });
    case "said":
      return note.text;
  }
}

/** "+0.35 mm" */
function change(thicknessMm: number): string {
  return fill(thicknessMm > 0 ? w.thicker : w.thinner, { thicknessMm: textForPeople(thicknessMm, 2) });
}
