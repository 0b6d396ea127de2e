/** Which of the two tables a run takes a heading row belongs to; both readers themselves take any heading. */

/** Whether the two headings name distance and height, as a slope profile has them. */
export function namesProfile(headings: readonly string[]): boolean {
  return named(headings, ['distance', 'horizontal', 'along'], ['height', 'altitude', 'elevation']);
}

/** Whether the two headings name time and edge angle, as a programme of turns has them. */
export function namesProgramme(headings: readonly string[]): boolean {
  return named(headings, ['time', 't', 'seconds'], ['edge', 'angle', 'edging']);
}

function named(headings: readonly string[], first: readonly string[], second: readonly string[]): boolean {
  if (headings.length !== 2) return false;
  return first.includes(firstWord(headings[0])) && second.includes(firstWord(headings[1]));
}

/** `Edge angle (deg)`, `edgeDeg` and `edge_deg` all begin with "edge". */
const firstWord = (heading: string): string =>
  /[a-z]+/.exec(
    heading
      .trim()
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .toLowerCase(),
  )?.[0] ?? '';
