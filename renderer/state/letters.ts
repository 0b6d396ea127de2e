/** How a chosen pair is told from the others: a letter, a colour and a dash pattern, always all three. */
export interface PairMark {
  readonly letter: 'A' | 'B' | 'C' | 'D';
  /** CSS colour that follows the theme. */
  readonly colour: string;
  /** SVG stroke-dasharray; undefined is a solid line. */
  readonly dash: string | undefined;
}

export const PAIR_MARKS: readonly PairMark[] = [
  { letter: 'A', colour: 'var(--pair-a)', dash: undefined },
  { letter: 'B', colour: 'var(--pair-b)', dash: '9 4' },
  { letter: 'C', colour: 'var(--pair-c)', dash: '2.5 3.5' },
  { letter: 'D', colour: 'var(--pair-d)', dash: '10 3.5 2 3.5' },
];
