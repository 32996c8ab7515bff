/** Words with places to fill: the one way in which a number gets into a text. */

/**
 * The text with each `{name}` replaced by its value; a number is written as it is, so hand over words where it is rounded.
 *
 * @throws RangeError when the text names a place that is not given
 */
export function fill(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replaceAll(/\{(\w+)\}/g, (_place, name: string) => {
    const value = values[name];
    if (value === undefined) throw new RangeError(`the words "${text}" need {${name}}, which is not given`);
    return String(value);
  });
}
